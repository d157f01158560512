"""The word lists of the parser, kept as data (data/words.toml)."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files


@cache
def word_list(name: str) -> frozenset[str]:
    """Return one of the word lists, lower case."""
    return frozenset(_lists()[name].split())


@cache
def _lists() -> dict[str, str]:
    return tomllib.loads(files("adminer.parsing").joinpath("data", "words.toml").read_text(encoding="utf-8"))
