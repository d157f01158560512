"""Makers that no authority file knows: found by grammar ("by Marrowstone Pottery", "made by ... China Co.").

Like unknown lines they are only proposed to a person, never linked by themselves.
"""

from __future__ import annotations

import re
from typing import Final

from spacy.tokens import Doc

from adminer.names.matching import fold_house
from adminer.parsing.terms.pipeline import MAKERS, names_of
from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.text import AdvertText
from adminer.records import Link

_WORD: Final = r"(?:[A-Z][A-Za-z'’-]+|[A-Z]\.)"
_CO: Final = r"(?: ?(?:Co\b\.?|Company|Corp\b\.?|Works|Mfg\. Co\.?))"
_HOUSE: Final = (
    rf"(?:Potter(?:y|ies){_CO}?|China{_CO}?|Porcelain{_CO}?|Glass{_CO}|Silver{_CO}|Silversmiths|Ceramics?{_CO}?|"
    rf"Stoneware{_CO}|Kilns|Crockery{_CO}|Manufacturing{_CO}|Works)"
)
_FULL: Final = rf"(?P<name>{_WORD}(?: (?:& |and )?{_WORD}){{0,3}}? {_HOUSE})"
_MADE: Final = re.compile(
    r"\b(?:(?:now )?(?:made|created|designed|fashioned|produced|manufactured|decorated) (?:for us )?(?:by|at)|by|"
    rf"from the kilns of|(?:a )?product of|guaranteed by)(?: the)? {_FULL}(?![A-Za-z])"
)
_ALONE: Final = re.compile(rf"^{_FULL}\.?$", re.MULTILINE)
_BY_LINE: Final = re.compile(rf"^(?:now )?(?:made )?by (?P<name>{_WORD}(?: (?:& |and )?{_WORD}){{1,3}})$", re.MULTILINE)
_SCORES: Final = (
    (_MADE, 0.7, "stands after a word like “made by”"),
    (_BY_LINE, 0.5, "stands alone after “by”"),
    (_ALONE, 0.5, "stands alone and ends like the name of a pottery"),
)
_SLOGAN: Final = word_list("slogan") - {"pottery", "porcelain", "stoneware", "china", "crystal", "ironstone"}


def find_unknown_makers(doc: Doc, advert: AdvertText) -> tuple[Link, ...]:
    """Return names that may be makers without an entry, the surest first, each once an advert."""
    known = [(n.start, n.end) for n in names_of(doc, MAKERS)]
    found: dict[str, Link] = {}
    for pattern, score, why in _SCORES:
        for m in pattern.finditer(doc.text):
            start, end = m.span("name")
            key = fold_house(m["name"])
            words = [word.lower() for word in m["name"].split()[:-1]] or [m["name"].lower()]
            if key in found or any(start < b and a < end for a, b in known) or words[0] in _SLOGAN:
                continue
            name = " ".join(m["name"].split())
            found[key] = Link(None, name, name, advert.box_of(start, end), score, why, kind="maker")
    return tuple(found.values())
