"""The vocabulary of pieces: what the trade called each plate, dish, glass and spoon, and how it counts them."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from adminer.errors import FolderError

_SHIPPED: Final = "pieces.toml"


class Piece(BaseModel):
    """Hold one kind of piece: its names, and how many pieces the trade and a collector's list count it as."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: str = Field(pattern=r"^[a-z][a-z0-9_]*$")
    kind: str = "dinnerware"
    trade: tuple[int, ...] = (1,)
    resale: tuple[int, ...] = (1,)
    names: tuple[str, ...] = ()
    loose: tuple[str, ...] = ()
    short: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()


@dataclass(frozen=True)
class Vocabulary:
    """Hold all pieces by id, and the id of every name in its folded spelling."""

    pieces: Mapping[str, Piece]
    by_name: Mapping[str, str]

    def find(self, text: str) -> str | None:
        """Return the piece id of a printed name, None where no piece has it."""
        return self.by_name.get(fold(text))

    def kind_of(self, piece: str) -> str:
        """Return the kind of a piece by its id."""
        return self.pieces[piece].kind


def fold(text: str) -> str:
    """Fold case, hyphens, ampersands and full stops, so that "B. & B. plate" and "b&b plate" agree."""
    text = text.lower().replace("&", " and ").replace("’", "'")
    return " ".join(re.sub(r"[-.,/]", " ", text).split())


def load_vocabulary(own: Path | None = None) -> Vocabulary:
    """Return the shipped vocabulary, extended by a user's names/pieces.toml where there is one."""
    shipped = _shipped()
    if own is None or not own.exists():
        return shipped
    pieces = dict(shipped.pieces)
    for piece in _read(own.read_text(encoding="utf-8-sig"), f"{own.parent.name}/{own.name}"):
        known = pieces.get(piece.id)
        given = piece.model_fields_set
        if known is not None:
            own_values = {key: getattr(piece, key) for key in given}
            names = {key: _both(getattr(known, key), getattr(piece, key)) for key in ("names", "loose", "short")}
            piece = known.model_copy(update={**own_values, **names})  # noqa: PLW2901 -- the joined entry takes the place of the user's
        pieces[piece.id] = piece
    return _vocabulary(pieces)


def _both(known: tuple[str, ...], own: tuple[str, ...]) -> tuple[str, ...]:
    return (*known, *(name for name in own if name not in known))


@cache
def _shipped() -> Vocabulary:
    text = files("adminer.names").joinpath("data", _SHIPPED).read_text(encoding="utf-8")
    return _vocabulary({piece.id: piece for piece in _read(text, _SHIPPED)})


def _vocabulary(pieces: dict[str, Piece]) -> Vocabulary:
    by_name = {fold(name): piece.id for piece in pieces.values() for name in (*piece.short, *piece.loose, *piece.names)}
    return Vocabulary(MappingProxyType(pieces), MappingProxyType(by_name))


def _read(text: str, shown: str) -> list[Piece]:
    try:
        data: dict[str, Any] = tomllib.loads(text)
        return [Piece.model_validate(row) for row in data.get("piece", [])]
    except (tomllib.TOMLDecodeError, ValidationError) as error:
        raise FolderError(
            "the vocabulary of pieces cannot be read",
            file=shown,
            why=str(error).splitlines()[0],
            remedy="each entry is a [[piece]] with id, kind, counts, resale and names",
        ) from error
