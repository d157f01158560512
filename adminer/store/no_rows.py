"""Why a question got no answer: a name the file does not have, with its nearest names, or nothing of the kind."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Final

from rapidfuzz import fuzz, process

from adminer.store.queries import Question, open_readonly

_KNOWN: Final[Mapping[str, str]] = {
    "line": "SELECT line_id FROM lines UNION SELECT line FROM lines UNION SELECT name FROM line_names "
    "UNION SELECT line FROM offers",
    "retailer": "SELECT retailer_id FROM retailers UNION SELECT retailer FROM retailers "
    "UNION SELECT retailer FROM adverts",
    "city": "SELECT city FROM adverts UNION SELECT city FROM clippings",
    "clipping": "SELECT clipping_id FROM clippings UNION SELECT file FROM clippings",
}
_NEAR: Final = 60.0  # of 100; below it two names are not taken for one misspelt
_SHOWN: Final = 3


def why_no_rows(database: Path, question: Question, given: Mapping[str, str]) -> str:
    """Return one sentence on why a question had no rows with these values."""
    needed = [param.name for param in question.params if param.default == "" and not given.get(param.name)]
    if needed:
        return f"No row: the question needs --{needed[0].replace('_', '-')}."
    for name, value in given.items():
        if name in _KNOWN and value:
            known = known_names(database, name)
            if not any(value.casefold() in other.casefold() for other in known):
                return f"No row: this file has no {name} '{value}'.{nearest(value, known)}"
    if given:
        return "No row: the file has nothing of this kind with these values; ask with fewer."
    return "No row: the file has nothing of this kind."


def known_names(database: Path, kind: str) -> list[str]:
    """Return the names of a kind (line, retailer, city, clipping) that a file knows, in order."""
    with open_readonly(database) as connection:
        rows = connection.execute(_KNOWN[kind]).fetchall()
    return sorted(row[0] for row in rows if row[0])


def nearest(value: str, known: list[str]) -> str:
    """Return a sentence with the names nearest to a value, with a blank before it; nothing where none is near."""
    found = process.extract(value, known, scorer=fuzz.WRatio, processor=str.casefold, limit=_SHOWN, score_cutoff=_NEAR)
    return f" Near: {', '.join(name for name, _, _ in found)}." if found else ""
