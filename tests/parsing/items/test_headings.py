"""Texts that tell nothing but a size: the heading they are sizes of. All invented."""

from __future__ import annotations

from typing import Any

import pytest

from adminer.parsing import assemble
from adminer.parsing.items.assign import Pairing
from adminer.parsing.items.headings import headed
from tests.parsing.pages import Line, parse

LINES: list[Line] = [
    (50, 304, 17, "Thistledown Combed Muslin Sheets"),
    (50, 330, 12, "Bleached snow-white. Firm balanced weave"),
    (150, 425, 12, "72×108"),
    (265, 426, 12, "$2.89"),
]


def test_a_size_is_one_of_the_goods_in_the_heading_and_not_of_what_describes_them(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    named: list[str] = []

    def note(advert: Any, _groups: Any, pairings: Any, segments: Any, *_: Any) -> Any:
        (size,) = (s for s in segments if s.bare)
        named.append(headed(advert, size.text, Pairing(size, 0.0, "on its row"), size, list(segments)))
        return pairings

    monkeypatch.setattr(assemble, "reconsidered", note)
    parse(*LINES)
    assert named == ["Thistledown Combed Muslin Sheets 72×108"]
