"""What stands about a line that may name the house: behind it, under it, beside it, over it.

Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from adminer.parsing.house.house_lines import Candidate
from adminer.parsing.text.text import AdvertText, TextLine

_NEXT: Final = 1.5  # type sizes from a name to the line under it
_DISPLAY: Final = 1.25  # times the body


def behind(advert: AdvertText, candidate: Candidate) -> str:
    """Return what follows a name: on its line, and on the next where a comma ends that."""
    under = candidate.last.number + 1
    if not candidate.after.rstrip().endswith(",") or under >= len(advert.lines):
        return candidate.after
    return f"{candidate.after.strip()} {advert.printed(advert.lines[under])}"


def around(advert: AdvertText, candidate: Candidate) -> list[TextLine]:
    """Return the lines right under a name and beside it on its row."""
    return [
        n for n in advert.lines if not candidate.holds(n) and (_under(candidate.last, n) or beside(candidate.line, n))
    ]


def stands_first(advert: AdvertText, candidate: Candidate) -> bool:
    """Say whether a name in large type stands over all other words of its advert, or beside some."""
    over = [n for n in advert.lines if not candidate.holds(n) and n.flat.centre[1] < candidate.line.flat.y]
    large = candidate.line.type_px > _DISPLAY * advert.body_px
    return large and not any(re.search(r"[A-Za-z]{3}", advert.printed(n)) for n in over)


def beside(line: TextLine, other: TextLine) -> bool:
    """Say whether one line stands left or right of another, on its row."""
    apart = other.flat.x >= line.flat.right or other.flat.right <= line.flat.x
    return apart and line.flat.y - 0.3 * line.flat.h < other.flat.centre[1] < line.flat.bottom + 0.3 * line.flat.h


def _under(line: TextLine, other: TextLine) -> bool:
    over = line.flat.across(other.flat) > 0
    gap = other.flat.y - line.flat.bottom
    return over and other.flat.y > line.flat.centre[1] and gap < _NEXT * line.type_px
