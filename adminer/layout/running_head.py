"""The row at the head of a paper's page: its title, its date and the number of the page, over all else."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from adminer.layout.rules import Rect
from adminer.layout.type_lines import TypeLine, middle_of

_MONTH: Final = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_WEEKDAY: Final = r"(?:mon|tues|wednes|thurs|fri|satur|sun)day"
# "Thursday, March 3, 1921", "Oct. 5, 1954", "21 May, 1907", "Vol. XII No. 8": what stands under the title of a paper
DATELINE: Final = re.compile(
    rf"\b{_MONTH}[.,]? ?\d{{1,2}}[.,]? ?1[89]\d\d|\b\d{{1,2}}(?:st|nd|rd|th)?[.,]? {_MONTH}[.,]{{0,2}} ?1[89]\d\d|"
    rf"\bvol(?:\.|ume)\b|\b{_WEEKDAY}\W{{1,2}}\w{{3,9}}\W{{1,2}}\d{{1,2}}\W{{1,2}}1[89]\d\d",  # its month misread
    re.IGNORECASE,
)
_DAY: Final = re.compile(rf"\b(?:{_WEEKDAY}|{_MONTH}[.,]? ?\d{{1,2}}|\d{{1,2}} {_MONTH})\b", re.IGNORECASE)
_TITLE: Final = re.compile(
    r"\b(?:advocate|argus|banner|bulletin|chronicle|courier|democrat|dispatch|echo|enquirer|enterprise|examiner|gazette|"
    r"herald|independent|intelligencer|journal|leader|ledger|mercury|messenger|news|observer|press|record|register|"
    r"reporter|republican|review|sentinel|telegraph|telegram|times|tribune|weekly|daily)\b",
    re.IGNORECASE,
)
_ONES: Final = "one|two|three|four|five|six|seven|eight|nine"
_SPELLED: Final = (
    rf"(?:{_ONES}|ten|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen|(?:twenty|thirty|forty)(?:-(?:{_ONES}))?)"
)
_PAGE: Final = re.compile(
    rf"\bpage \w{{1,9}}|^\W*(?:{_SPELLED}|\d{{1,2}}(?:-?[a-d])?|[a-d]-?\d{{1,2}})\W*$", re.IGNORECASE
)
_TOP: Final = 0.09  # of the height of a page, from its first line
_SIGNS: Final = 2  # of title, date and number
_LEVEL: Final = 0.8  # type sizes by which lines of one row may differ


def running_head(lines: Sequence[TypeLine], whole: Rect) -> list[TypeLine]:
    """Return the lines of the row with the paper's title, its date and the number of the page; none without two."""
    first = min((line.rect[1] for line in lines), default=0.0)
    for line in sorted(lines, key=lambda n: n.rect[1]):
        if line.rect[1] > first + _TOP * whole[3]:
            break
        row = [n for n in lines if abs(middle_of(n) - middle_of(line)) < _LEVEL * line.height]
        said = [n.text for n in row]
        signs = (_DAY, _TITLE, _PAGE)
        if sum(any(sign.search(text) for text in said) for sign in signs) >= _SIGNS:
            return [n for n in lines if n in row or n.rect[3] < min(r.rect[1] for r in row)]
    return []
