"""Recipes: which cleaning and which scales suit a kind of source; data in pipelines/*.toml, and a measured guess."""

from __future__ import annotations

import tomllib
from functools import lru_cache, reduce
from pathlib import Path
from typing import Annotated

import cv2
import numpy as np
from numpy.typing import NDArray
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from adminer.errors import FolderError
from adminer.shipped import shipped


class Recipe(BaseModel):
    """Hold the settings for one kind of source; every field is explained in pipelines/README.md."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]*$")]
    about: str
    even_light: bool = True
    straighten: bool = True
    denoise: bool = False


def load_recipes(folder: Path | None = None) -> dict[str, Recipe]:
    """Read every recipe of a folder (by default the shipped ones), by name.

    Raises FolderError with file and reason for a recipe that cannot be understood.
    """
    recipes = {}
    for path in sorted((folder or shipped("pipelines")).glob("*.toml")):
        try:
            recipe = Recipe.model_validate(tomllib.loads(path.read_text(encoding="utf-8")))
        except (tomllib.TOMLDecodeError, ValidationError, UnicodeDecodeError) as error:
            raise FolderError(
                "this recipe cannot be understood",
                file=str(path),
                why=_reason(error),
                remedy="compare it with one of the recipes that came with adminer",
            ) from error
        recipes[recipe.name] = recipe
    return recipes


def _reason(error: Exception) -> str:
    if isinstance(error, ValidationError):
        first = error.errors()[0]
        return f"{'.'.join(str(part) for part in first['loc'])}: {first['msg'].lower()}"
    return str(error)


@lru_cache(maxsize=1)
def default_recipes() -> dict[str, Recipe]:
    """Return the shipped recipes, read once a process."""
    return load_recipes()


def guess_recipe(pixels: NDArray[np.uint8]) -> tuple[str, str]:
    """Guess the kind of source from the picture and say what was measured.

    Takes (H, W) gray or (H, W, 3) RGB. Colour under uneven light says phone photo; a near two-tone picture photocopy;
    gray paper or uneven light microfilm; else a magazine page.
    """
    small = _thumbnail(pixels)
    planes = cv2.split(small)
    gray, darkest = reduce(np.maximum, planes), reduce(np.minimum, planes)
    colour = float(np.mean(gray - darkest))
    paper = cv2.GaussianBlur(cv2.dilate(gray, np.ones((15, 15), np.uint8)).astype(np.float32), (0, 0), 12)
    dark, light = np.percentile(paper, (5, 95))
    unevenness = float(light - dark) / 255
    middle = float(np.mean((gray > 48) & (gray < 208)))
    bright = float(np.percentile(gray, 90)) / 255
    if colour > 12 and unevenness > 0.12:
        return "phone_photo", f"colour {colour:.0f} of 255 and light uneven by {unevenness:.0%}"
    if middle < 0.12:
        return "photocopy", f"only {middle:.0%} of the picture is between black and white"
    if bright < 0.9 or unevenness > 0.2:
        return "microfilm_print", f"paper at {bright:.0%} of white, light uneven by {unevenness:.0%}"
    return "magazine_page", f"paper at {bright:.0%} of white, {middle:.0%} of the picture is gray"


def _thumbnail(pixels: NDArray[np.uint8]) -> NDArray[np.uint8]:
    scale = min(1.0, 800 / max(pixels.shape[:2]))
    if scale == 1.0:
        return pixels
    return np.asarray(cv2.resize(pixels, None, fx=scale, fy=scale, interpolation=cv2.INTER_AREA), np.uint8)
