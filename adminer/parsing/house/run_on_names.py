"""Names that sign an advert in its running text: "... Agents wanted. THE BRACKEN MOP / COMPANY, Box 17, Osterby, O."

Small adverts of magazines close so: the name follows the last sentence, or a dash in British ones ("Post free.—J.
CORBELLE, Seedsman, Mill / Row, Osterby."), goes on in the next line, and an address ends the advert. Common practice,
no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from adminer.parsing.house.house_lines import STREET_LINE, Candidate
from adminer.parsing.house.shop_places import is_place, starts_address
from adminer.parsing.text.text import AdvertText

_SIGNED: Final = re.compile(
    r"(?<=[.!?;] )(?<!\b[A-Z]\. )(?<!\b[A-Z][A-Za-z]\. )(?<!\bM[Rr][Ss]\. )"  # no initial or title of the name
    r"(?P<name>(?:(?:The|THE|Dr|Prof|Mrs?|Miss)\.? )?"
    r"[A-Z][\w'’.-]*(?: (?:&|and|of|[A-Z][\w'’.-]*)){1,6})(?P<after>, .+)$"
)
_SHORTENED: Final = r"(?i:mrs?|messrs|wm|jas|jno|thos|chas|geo|robt|dr|prof|st|bros|co|cie|mfg|ltd|[a-z])\."
_WORD: Final = rf"(?:{_SHORTENED}|[A-Z][\w'’-]+|&)"
_DASHED: Final = re.compile(
    rf"(?:(?<![A-Za-z0-9] )(?<![A-Za-z])--?|(?<![A-Za-z0-9] )[—–]) ?(?P<name>{_WORD}(?: (?:{_WORD}|and|of|et)){{0,5}}?)"
    r"(?P<after>[,.] .*[,.] ?[A-Z][A-Za-z ]+(?:[,.] ?[A-Z][A-Za-z.]{0,7})?\.?)$"
)
_BY_POST: Final = re.compile(r", (?:Dept|Desk|Box|Drawer|Route|Room|Station|Sta)\b", re.IGNORECASE)
_MOST_LINES: Final = 4  # that a name and its address take up
_MOST_WORDS: Final = 12  # of an address


def find_run_on_names(advert: AdvertText) -> Iterator[Candidate]:
    """Yield each name in the last lines of an advert that begins after a sentence within a line of text."""
    lines = advert.lines
    for first in range(max(0, len(lines) - _MOST_LINES), len(lines)):
        tail = lines[first:]
        if any(line.block != tail[0].block for line in tail):
            continue
        printed = [advert.printed(line).strip() for line in tail]
        said, opens = " ".join(printed), len(printed[0])
        for found in (*_SIGNED.finditer(said), *_DASHED.finditer(said)):
            after, dashed = found["after"], found.re is _DASHED
            placed = dashed or _BY_POST.match(after) or starts_address(after[2:]) or is_place(after[2:])
            begins = found.start("name") - dashed < opens  # the dash may end the line before
            if begins and placed and not STREET_LINE.search(found["name"]) and len(after.split()) <= _MOST_WORDS:
                starts = tail[1] if found.start("name") > opens else tail[0]
                last = tail[1] if found.end("name") > opens else tail[0]
                # the rest of its line is of the offer: only what of the name stands on it is its place
                at = starts.start + found.start("name") - (opens + 1) * (starts is not tail[0])
                own = replace(starts, box=advert.box_of(at, min(at + len(found["name"]), starts.end)))
                yield Candidate(own, last, found["name"], after, has_folio=False, dashed=dashed, signs=not dashed)
