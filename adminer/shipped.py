"""Find the folders that travel with the program: queries, pipelines and the demo corpus."""

from __future__ import annotations

from pathlib import Path
from typing import Final, Literal

from adminer.errors import MachineError

Shipped = Literal["queries", "pipelines", "corpus_demo"]
_PACKAGE: Final = Path(__file__).resolve().parent


def shipped(name: Shipped) -> Path:
    """Return the folder of that name: inside the installed package, else at the top of a source tree.

    Raises MachineError where the installation lacks it.
    """
    for folder in (_PACKAGE / "_shipped" / name, _PACKAGE.parent / name):
        if folder.is_dir():
            return folder
    raise MachineError(
        f"the folder '{name}' of the program is missing",
        why="the installation is incomplete",
        remedy="install adminer again",
    )
