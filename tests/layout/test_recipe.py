"""Recipes: what is shipped, what a broken one gets, what a picture is guessed to be."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from adminer.errors import FolderError
from adminer.layout.recipe import guess_recipe, load_recipes


def test_the_five_kinds_of_source_are_shipped() -> None:
    assert set(load_recipes()) == {
        "microfilm_print",
        "photocopy",
        "magazine_page",
        "catalogue_page",
        "phone_photo",
    }


def test_a_broken_recipe_names_file_and_field(tmp_path: Path) -> None:
    (tmp_path / "odd.toml").write_text('name = "odd"\nabout = "x"\nstraightne = true\n', encoding="utf-8")
    with pytest.raises(FolderError) as caught:
        load_recipes(tmp_path)
    assert "odd.toml" in str(caught.value)
    assert "straightne" in str(caught.value)


def test_a_two_tone_picture_is_a_photocopy() -> None:
    picture = np.full((400, 300), 255, np.uint8)
    picture[::7, 20:280] = 0
    name, why = guess_recipe(picture)
    assert name == "photocopy"
    assert "between black and white" in why


def test_coloured_uneven_light_is_a_phone_photo() -> None:
    light = np.linspace(90, 240, 300, dtype=np.float32)[None, :, None] * np.array([1.0, 0.9, 0.7], np.float32)
    picture = np.repeat(light, 400, axis=0).astype(np.uint8)
    assert guess_recipe(picture)[0] == "phone_photo"


def test_gray_paper_is_a_microfilm_print() -> None:
    picture = np.full((400, 300), 180, np.uint8)
    assert guess_recipe(picture)[0] == "microfilm_print"
