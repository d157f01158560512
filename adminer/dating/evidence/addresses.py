"""Postal zones, ZIP codes and state abbreviations in an advert's addresses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Final

from adminer.dating.evidence.base import Case, Clue, Context, Sign, find_signs
from adminer.dating.evidence.shapes import spell

KIND: Final = "address"
_STATE = (
    r"(?:A[LKZR]|C[AOT]|DE|FL|GA|HI|I[DLNA]|K[SY]|LA|M[EDAINSOT]|N[BEVHJMYCD]|O[HKR]|PA|RI|"
    r"S[CD]|T[NX]|UT|V[TA]|W[AVIY])"
)
# as addresses wrote them before the two letters: names and their abbreviations, from memory
_WRITTEN = (
    "Ala|Alabama|Alaska|Ariz|Arizona|Ark|Arkansas|Cal|Calif|California|Colo|Colorado|Conn|Connecticut|Del|Delaware|"
    "Fla|Florida|Ga|Georgia|Hawaii|Ida|Idaho|Ill|Illinois|Ind|Indiana|Ia|Iowa|Kan|Kans|Kansas|Ky|Kentucky|La|Louisiana|"
    "Me|Maine|Md|Maryland|Mass|Massachusetts|Mich|Michigan|Minn|Minnesota|Miss|Mississippi|Mo|Missouri|Mont|Montana|"
    "Neb|Nebr|Nebraska|Nev|Nevada|Ohio|Okla|Oklahoma|Ore|Oreg|Oregon|Pa|Penn|Penna|Pennsylvania|Tenn|Tennessee|Tex|"
    "Texas|Utah|Vt|Vermont|Va|Virginia|Wash|Washington|Wis|Wisc|Wisconsin|Wyo|Wyoming"
)
_STATE_WORD = (
    rf"(?:(?:{_WRITTEN}|{_WRITTEN.upper()})\b\.?|(?:New|No\.|So\.|North|South|West|Rhode) ?[A-Z][a-z]+|"
    r"[A-Z]\. ?[A-Z]\.|W\. ?Va\.?|O\.)"
)
_TOWN_WORD = r"(?:[A-Z][a-z]{1,12}\.?|[A-Z]\. ?[A-Z]\.|[A-Z]{2,4}\.)"
_NO_TOWN = (
    r"(?!(?:Box|Bulletin|Dept|Drawer|Form|Highway|Lot|Model|No|Number|Order|Page|Pattern|Phone|Route|Style|Tel)\b)"
)
_ZONES = "Post Office history of the postal zones, 1 May 1943 (coxsackie.com/reference/btc.htm)"
_ZIP = "introduction of the ZIP code, 1 July 1963 (coxsackie.com/reference/btc.htm; net54baseball.com)"
_ABBREVIATIONS = "Publication 59, 1 October 1963 (list of abbreviations, mirrored at piglix.com)"

_ZONED: Final = spell(date(1943, 5, 1), date(1963, 7, 1))
_ZONE: Final = "postal zones began on 1 May 1943 and gave way to ZIP codes in 1963"

SIGNS: Final = (
    Sign(
        _ZONE,
        re.compile(rf"\b{_NO_TOWN}[A-Z][A-Za-z]+[ ,]+(?:[1-9]|[1-9]\d)\s*,\s*{_STATE_WORD}(?![\w%¢])(?!\s*\d)"),
        _ZONED,
        _ZONES,
        date(1943, 5, 1),
    ),
    Sign(
        "five-figure ZIP codes began on 1 July 1963",
        re.compile(rf"\b{_NO_TOWN}(?:{_STATE}|{_TOWN_WORD})\s*,?\s+\d{{5}}(?:-\d{{4}})?(?!\d)"),
        spell(date(1963, 7, 1)),
        _ZIP,
        date(1963, 7, 1),
    ),
    Sign(
        "two-letter states before a ZIP code began in October 1963",
        re.compile(rf"\b{_STATE}\s+\d{{5}}(?!\d)"),
        spell(date(1963, 10, 1), misread=0.2),
        _ABBREVIATIONS,
        date(1963, 10, 1),
    ),
    Sign(
        "Nebraska was NB only from 1963 to November 1969",
        re.compile(r"\bNB\s+6[89]\d{3}(?!\d)"),
        spell(date(1963, 10, 1), date(1969, 11, 30)),
        _ABBREVIATIONS,
        date(1963, 10, 1),
        date(1969, 11, 30),
    ),
)


def find(case: Case, _context: Context) -> Iterator[Clue]:
    """Yield the clues of an advert's addresses; a zone may stand behind the advert's own town without its state."""
    found = list(find_signs(case, KIND, SIGNS))
    yield from found
    if case.city and not any(clue.log_likelihood is _ZONED for clue in found):
        local = rf"(?<=[\w.], )\b{re.escape(case.city)} (?:[1-9]|[1-9]\d)(?![\w%¢/:.-]|\s*(?:miles?|stores?|for)\b)"
        yield from find_signs(case, KIND, (Sign(_ZONE, re.compile(local), _ZONED, _ZONES, date(1943, 5, 1)),))
