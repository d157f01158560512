"""Match printed names with authority entries, through OCR errors, hyphens and display type.

A missing link is better than a wrong one: a name must be nearly whole, and two entries that fit about equally
well leave it ambiguous with its candidates.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from rapidfuzz import fuzz, process
from rapidfuzz.distance import Levenshtein

from adminer.names.authority import LineEntry, MakerEntry, RetailerEntry

SURE: Final = 0.86  # below this a name stays unlinked; common practice, no source
CLEAR: Final = 0.05  # the best entry must be this much better than the next one
NEAR: Final = 0.76  # share of equal letters from which letters that look alike may make up for the rest
_BUILDS: Final = str.maketrans("ltjfbeouryw", "iiiihccnnvv")  # thin, tall, round, arched and pointed letters
_LOOKALIKES: Final = str.maketrans({"0": "o", "1": "l", "5": "s", "8": "b", "|": "l", "!": "l", "$": "s", "@": "a"})
_HOUSE_WORDS: Final = re.compile(
    r"\b(?:the|co|company|inc|incorporated|ltd|limited|corp|corporation|bros|brothers|and|mfg|pattern|design|dinnerware|line)\b"
)


@dataclass(frozen=True, slots=True)
class Match:
    """Hold how a printed text fits one entry: score 0 to 1 and why, or several candidates and no entry."""

    entry_id: str | None
    name: str
    spelling: str  # the authority's spelling that fitted
    score: float
    why: str
    candidates: tuple[str, ...] = ()
    warning: str | None = None


@dataclass(frozen=True, slots=True)
class Spelling:
    """Hold one folded spelling of an entry's name, with the years it was in use."""

    folded: str
    printed: str
    entry_id: str
    preferred: str
    from_year: int | None
    to_year: int | None
    used_by_id: str | None = None


@lru_cache(maxsize=65536)
def fold_name(text: str) -> str:
    """Fold case, accents, punctuation and figures read for letters; "Silver-\\nthaw" becomes "silverthaw"."""
    text = re.sub(r"-\s*\n\s*", "", text)
    if not text.isascii():
        text = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    text = text.lower()
    text = re.sub(r"['’`]s?(?![a-z])", "", text).replace("&", " and ")
    text = text.translate(_LOOKALIKES).replace("rn", "m").replace("vv", "w")
    return " ".join(re.sub(r"[^a-z ]", " ", text).split())


@lru_cache(maxsize=65536)
def fold_house(text: str) -> str:
    """Fold a retailer's or maker's name, leaving out "the", "company" and the like."""
    folded = fold_name(text)
    return " ".join(_HOUSE_WORDS.sub(" ", folded).split()) or folded


def line_spellings(lines: Iterable[LineEntry]) -> list[Spelling]:
    """Return every spelling of every line."""
    made = []
    for line in lines:
        made.append(Spelling(fold_name(line.name), line.name, line.id, line.name, line.first_year, line.last_year))
        made += [
            Spelling(fold_name(u.name), u.name, line.id, line.name, u.from_year, u.to_year, u.used_by_id)
            for u in line.names
        ]
    return [s for s in made if s.folded]


def house_spellings(houses: Iterable[RetailerEntry | MakerEntry]) -> list[Spelling]:
    """Return every spelling of every retailer or maker."""
    return [
        Spelling(fold_house(name), name, house.id, house.name, house.from_year, house.to_year)
        for house in houses
        for name in (house.name, *house.names)
        if fold_house(name)
    ]


def best_match(folded: str, spellings: Sequence[Spelling], *, sure: float = SURE) -> Match | None:
    """Return the entry a folded text names, or an ambiguous match, or None where nothing is near."""
    if len(folded) < 3 or not spellings:
        return None
    scored: dict[str, tuple[float, Spelling]] = {}
    for _, _, index in process.extract(
        folded, [s.folded for s in spellings], scorer=fuzz.ratio, score_cutoff=100 * NEAR, limit=8
    ):
        spelling = spellings[index]
        score = min(likeness(folded, spelling.folded), words_agree(folded, spelling.folded))
        if score < sure - CLEAR:
            continue
        if spelling.entry_id not in scored or score > scored[spelling.entry_id][0]:
            scored[spelling.entry_id] = (score, spelling)
    ranked = sorted(scored.values(), key=lambda pair: (-pair[0], pair[1].entry_id))
    if not ranked or ranked[0][0] < sure:
        return None
    score, best = ranked[0]
    rivals = [s.entry_id for value, s in ranked[1:] if value > score - CLEAR]
    if rivals:
        names = (best.entry_id, *rivals)
        return Match(None, best.printed, best.printed, score, f"fits {len(names)} entries about equally well", names)
    edits = Levenshtein.distance(folded, best.folded)
    how = (
        "spelled as in the authority file"
        if not edits
        else f"{edits} letter{'s' * (edits > 1)} away from {best.printed!r}"
    )
    return Match(best.entry_id, best.preferred, best.printed, round(score, 3), how)


def likeness(one: str, other: str) -> float:
    """Return how alike two folded names are: letters of one build, which readers confuse, count half ("Winten")."""
    plain = fuzz.ratio(one, other) / 100
    return max(plain, (plain + fuzz.ratio(one.translate(_BUILDS), other.translate(_BUILDS)) / 100) / 2)


def words_agree(one: str, other: str) -> float:
    """Return 0 where a word of one is another word in the other ("Laurel" for "Sorrel"), whatever the whole is like."""
    mine, theirs = one.split(), other.split()
    if len(mine) != len(theirs):
        joined = fuzz.ratio(one.replace(" ", ""), other.replace(" ", "")) / 100
        return joined if joined > 0.93 else joined - 0.1
    for a, b in zip(mine, theirs, strict=True):
        edits = Levenshtein.distance(a, b)
        if edits > 1 and len(b) > 3 and a.translate(_BUILDS) == b.translate(_BUILDS):
            edits = 1
        if edits > (0 if len(b) <= 3 else 1 if len(b) <= 6 else 2):
            return 0.0
    return 1.0


def date_warning(line: LineEntry, spelling: str, earliest_year: int | None, latest_year: int | None) -> str | None:
    """Return a warning where an advert is older than the line, or than the name it is called by."""
    use = next((u for u in line.names if u.name == spelling), None)
    begun = use.from_year if use and use.from_year else line.first_year
    ended = use.to_year if use and use.to_year else line.last_year
    if begun and latest_year and latest_year < begun:
        return f"not introduced before {begun}, but the advert is of {latest_year} at the latest"
    if ended and earliest_year and earliest_year > ended:
        return f"not used after {ended}, but the advert is of {earliest_year} at the earliest"
    return None
