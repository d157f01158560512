"""No pattern of the package hangs on a long line of the same: a line of worn type is as long as the page is wide."""

from __future__ import annotations

import importlib
import pkgutil
import re
import signal
from collections.abc import Iterator
from types import FrameType
from typing import Final

import pytest

import adminer

_REPEATED: Final = (
    "a", "A", "aa ", "Aa ", "A. ", "1", "1 ", "1.", "1/", "½", ".", ". ", "-", "a-", "a'", "& ", "a, ", " ", "\n",
    "a\n", "the ", "of ", "any ", "new ", "no ", "Co. ", "Mr. ", "$1 ", "lb ", "per ", "June ", "each ", '"', "(", "c",
)  # fmt: skip
_ENDS: Final = ("!", "a", "1")
_LONG: Final = 250  # characters
_SECONDS: Final = 0.5  # a good pattern takes a few thousandths


def _patterns() -> Iterator[tuple[str, re.Pattern[str]]]:
    for module in pkgutil.walk_packages(adminer.__path__, "adminer."):
        for name, value in vars(importlib.import_module(module.name)).items():
            for one in value if isinstance(value, tuple | list) else [value]:
                if isinstance(one, re.Pattern) and isinstance(one.pattern, str):
                    yield f"{module.name}.{name}", one


class _HangsError(Exception):
    pass


def _stop(_number: int, _frame: FrameType | None) -> None:
    raise _HangsError


def _hangs(pattern: re.Pattern[str]) -> str | None:
    """Return the line on which a pattern takes too long, None where there is none."""
    for repeated in _REPEATED:
        for end in _ENDS:
            line = (repeated * _LONG)[:_LONG] + end
            signal.setitimer(signal.ITIMER_REAL, _SECONDS)
            try:
                pattern.match(line)
                pattern.search(line)
            except _HangsError:
                return line
            finally:
                signal.setitimer(signal.ITIMER_REAL, 0)
    return None


@pytest.mark.skipif(not hasattr(signal, "setitimer"), reason="only a timer can interrupt a pattern")
def test_no_pattern_hangs_on_a_long_line() -> None:
    before = signal.signal(signal.SIGALRM, _stop)
    try:
        assert _hangs(re.compile(r"^(?:[a-z]\w* ?)*$")) is not None  # the test itself can see one
        hanging = {name: line[:20] for name, pattern in _patterns() if (line := _hangs(pattern))}
    finally:
        signal.signal(signal.SIGALRM, before)
    assert hanging == {}
