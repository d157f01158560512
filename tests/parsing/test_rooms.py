"""The rooms of the parser stand in one order, and a room calls only those before it."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Final

import pytest

PARSING: Final = Path(__file__).resolve().parents[2] / "adminer" / "parsing"
ORDER: Final = (
    "text",
    "money",
    "terms",
    "prices",
    "segments",
    "sets",
    "tables",
    "items",
    "conditions",
    "house",
    "offers",
)


def _rooms_called(file: Path) -> set[str]:
    called = set()
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("adminer.parsing"):
            parts = (node.module or "").split(".")[2:]
            called |= set(parts[:1]) or {alias.name for alias in node.names}
    return called


def test_every_room_has_its_place_in_the_order() -> None:
    rooms = {path.parent.name for path in PARSING.glob("*/__init__.py")}
    assert rooms == set(ORDER)


@pytest.mark.parametrize("room", ORDER)
def test_a_room_calls_only_the_rooms_before_it(room: str) -> None:
    allowed = set(ORDER[: ORDER.index(room) + 1])
    wrong = {file.name: _rooms_called(file) - allowed for file in sorted((PARSING / room).glob("*.py"))}
    assert not {name: rooms for name, rooms in wrong.items() if rooms}
