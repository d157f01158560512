"""Columns of classified advertisements: small notices under heads such as "For Rent", one advert of many hands."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.layout.paper import Paper
from adminer.layout.rules import Rect, centre
from adminer.layout.type_lines import TypeLine, middle_of

_THINGS: Final = (
    r"(?:autos?|automobiles|used cars|trucks|tractors|apartments?|flats?|rooms?|board|houses?|homes?|furnished rooms|"
    r"farms?|farm land|lots?|real estate|property|live ?stock|cattle|horses|poultry|pets|dogs|plants|seeds|hay|feed|"
    r"household goods|furniture|musical|pianos?|machinery|implements|merchandise|miscellaneous|services?|repairs?|"
    r"business (?:services?|cards|chances|opportunities)|situations?|positions?|employment|help|male|female|agents|"
    r"personals?|notices?|cards? of thanks|lost|found|strayed|auctions?|legal|money|loans?)"
)
_MATTER: Final = (
    r"(?:wanted|vacant|for (?:sale|rent|hire|exchange)|to (?:let|rent|loan|buy|trade)|classified(?: ads?)?)"
)
_HEAD: Final = re.compile(
    rf"\W*(?:(?:the|want) )?(?:{_THINGS}|{_MATTER})(?:(?:\W+| and | or )(?:{_THINGS}|{_MATTER}))*\W*", re.IGNORECASE
)
_TITLE: Final = 4  # lines of a title and what a word costs
_LETTERS: Final = 5  # of a headline, at least
_FEWEST: Final = 3  # heads that make a column of them
_TALL: Final = 0.5  # of the height of all type: a rule between columns
_FROM_THE_LEFT: Final = 0.1  # of the measure: where its heads begin, the notices begin further left


def is_classified(lines: Sequence[TypeLine]) -> bool:
    """Say whether a stretch of a column is classified advertisements: notices under several of their heads."""
    if not lines:
        return False
    left, right = min(n.rect[0] for n in lines), max(n.rect[2] for n in lines)
    heads = [n for n in lines if _HEAD.fullmatch(n.text) and n.rect[0] > left + _FROM_THE_LEFT * (right - left)]
    return len(heads) >= _FEWEST


def parted_from_text(lines: Sequence[TypeLine], paper: Paper) -> list[list[TypeLine]]:
    """Part a column with classified advertisements in it into the articles over them, themselves and those under them.

    They begin with the title over their first head, and end where a headline in capitals stands over running text.
    """
    ordered = sorted(lines, key=middle_of)
    heads = [n for n, line in enumerate(ordered) if _HEAD.fullmatch(line.text)]
    begin = heads[0]
    while begin and id(ordered[begin - 1]) not in paper.running and heads[0] - begin < _TITLE:
        begin -= 1
    after = range(heads[-1] + 1, len(ordered))
    end = next((n for n in after if _is_headline(ordered[n]) and paper.has_text(ordered[n:])), len(ordered))
    parts = [ordered[:begin], ordered[begin:end], ordered[end:]]
    if not paper.has_text(parts[0]):
        parts[:2] = [ordered[:end]]
    return [part for part in parts if part]


def _is_headline(line: TypeLine) -> bool:
    return line.text.isupper() and sum(map(str.isalpha, line.text)) > _LETTERS and not _HEAD.fullmatch(line.text)


def columns_of(lines: Sequence[TypeLine], rules: Sequence[Rect]) -> list[list[TypeLine]]:
    """Part lines by the tall rules between columns, those right of each to the next."""
    if not lines:
        return []
    top, bottom = min(n.rect[1] for n in lines), max(n.rect[3] for n in lines)
    tall = sorted(centre(r)[0] for r in rules if r[3] - r[1] > _TALL * (bottom - top) and r[2] - r[0] < r[3] - r[1])
    columns: dict[int, list[TypeLine]] = {}
    for line in lines:
        middle = centre(line.rect)[0]
        columns.setdefault(sum(edge < middle for edge in tall), []).append(line)
    return list(columns.values())
