"""Find the fenced blocks of a document: commands, programs, and files to be written."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

_FENCE: Final = re.compile(r"^```(?P<kind>[a-z]+)(?: (?P<file>\S+))?\n(?P<body>.*?)^```$", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True, slots=True)
class Fence:
    """Hold one fenced block: its kind (sh, python, toml, sql ...), the file it stands for, its text."""

    kind: str
    file: str | None
    body: str


def fences(document: Path) -> tuple[Fence, ...]:
    """Return the fenced blocks of a document in order."""
    found = _FENCE.finditer(document.read_text(encoding="utf-8"))
    return tuple(Fence(m["kind"], m["file"], m["body"]) for m in found)


def commands(document: Path) -> tuple[str, ...]:
    """Return the command lines of a document in order, comments left out."""
    lines = (line.strip() for fence in fences(document) if fence.kind == "sh" for line in fence.body.splitlines())
    return tuple(line for line in lines if line and not line.startswith("#"))
