"""What a set consists of: the number stated, the pieces listed, the number the trade's convention implies.

Listed pieces must add up to the stated number, counted as the trade counts (a lid is a piece; customs ruling
NY 813612 lists "Large Sugar W/Cover 2 PC.") or as resale lists do (a covered sugar is one piece). Where
neither closes, the claim stays and the likeliest misreading is named.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files
from itertools import product
from typing import Any, Final, Literal

from adminer.names.pieces import Piece, Vocabulary
from adminer.parsing.money.amounts import NUMBER_WORDS, number_of
from adminer.records import Composition, PieceCount

Closes = Literal["trade", "resale", "both", "neither"]

_TENS: Final = "twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
_BELOW_HUNDRED: Final = rf"(?:(?:{_TENS})[- ](?:one|two|three|four|five|six|seven|eight|nine)|{'|'.join(NUMBER_WORDS)})"
WORD_NUMBER: Final = rf"(?:(?:(?:one|a)[- ])?hundred(?:[- ](?:and[- ])?{_BELOW_HUNDRED})?|{_BELOW_HUNDRED})"
_STATED: Final = re.compile(
    rf"(?<![\w$.,/])(?P<n>\d{{1,3}}|{WORD_NUMBER})(?: ?- ?| )?"
    r"(?:pc|pcs|pce|p[il1][ec]{1,2}es?)\b\.?(?! ?(?:each|ea)\b)",
    re.IGNORECASE,
)
_SERVICE_FOR: Final = re.compile(
    r"\b(?:service for|serves|settings? for|set for|for) (?P<n>4|6|8|12|four|six|eight|twelve)\b(?! ?(?:¢|c\b|"
    r"cents|\$|years?\b|months?\b|weeks?\b|days?\b|hours?\b))(?!\d)",
    re.IGNORECASE,
)
_SET_OF: Final = re.compile(rf"\bsets? of (?P<n>\d{{1,2}}|{WORD_NUMBER})\b(?! of\b)", re.IGNORECASE)
_COUNT_BEFORE: Final = re.compile(
    rf"(?:^|[\s,;:(&+.])(?P<n>\d{{1,2}}|{WORD_NUMBER}|one each|each of|an?)[ \n]?(?:x[ \n])?(?:(?:only|each:?|each of|"
    rf"large|small|medium|oval|round|\d{{1,2}}[- ]?(?:in\.?|inch|\"|oz\.?)|deep|flat|full[- ]size|footed|"
    rf"hollow|handled?|[a-z]{{3,}}-[a-z]{{3,}})[ \n]?)*$",
    re.IGNORECASE,
)
_OF: Final = re.compile(r"\bof $")
_LIST_GOES_ON: Final = re.compile(r"(?:[,;&(:.]|\band|\bwith)\s*$")
_PLURAL: Final = re.compile(r"(?<!s)s$", re.IGNORECASE)
_CONFUSED: Final = {
    frozenset(p)
    for p in (
        "27",
        "17",
        "38",
        "56",
        "08",
        "68",
        "49",
        "35",
        "01",
        "06",
        "09",
        "39",
        "14",
        "58",
        "69",
        "89",
        "23",
        "47",
        "79",
        "25",
    )
}


@dataclass(frozen=True, slots=True)
class Listed:
    """Hold one piece name found in a text, with its count where one is printed before it."""

    start: int
    end: int
    piece: str
    count: int
    counted: bool
    text: str
    each: bool = False  # its count was said of several pieces at once


def stated_pieces(text: str) -> tuple[int, tuple[int, int]] | None:
    """Return the number of pieces a text states ("45-piece set") and its characters."""
    best: tuple[int, tuple[int, int]] | None = None
    for m in _STATED.finditer(text):
        number = number_of(m["n"])
        if 2 <= number <= 200 and (best is None or number > best[0]):
            best = (number, m.span())
    return best


def service_for(text: str) -> int | None:
    """Return how many a set serves ("service for 8"), None where it does not say."""
    m = _SERVICE_FOR.search(text)
    return number_of(m["n"]) if m else None


def set_of(text: str) -> int | None:
    """Return the number of "set of 4 cups and saucers"."""
    m = _SET_OF.search(text)
    return number_of(m["n"]) if m else None


def list_pieces(
    text: str, spans: Sequence[tuple[int, int, str]], prices: Sequence[tuple[int, int]] = ()
) -> list[Listed]:
    """Return the pieces named in a text with their counts; `spans` are (start, end, piece id), left to right.

    A figure inside one of `prices` (start, end) counts nothing.
    """
    listed: list[Listed] = []
    previous_end = 0
    for start, end, piece in spans:
        m = _COUNT_BEFORE.search(text, max(previous_end, start - 30), start)
        count, begin = 1, start
        if m and (any(a < m.end("n") and m.start("n") < b for a, b in prices) or _counts_other(text, m)):
            m = None
        if m and listed and _is_price(text, listed[-1].end, m, end):
            m = None
        if m:
            word = m["n"].lower()
            count = 1 if word in {"a", "an", "one each", "each of"} else number_of(word)
            begin = m.start("n")
        listed.append(Listed(begin, end, piece, max(count, 1), m is not None, " ".join(text[begin:end].split())))
        previous_end = end
    return listed


def _counts_other(text: str, count: re.Match[str]) -> bool:
    """Say whether a figure before a piece belongs to what stands before it: "set of 2", or alone at a line's end."""
    before = text[max(0, count.start("n") - 6) : count.start("n")]
    broken = "\n" in text[count.end("n") : count.end()]
    return bool(_OF.search(before)) or (broken and not _LIST_GOES_ON.search(before))


def _is_price(text: str, before: int, count: re.Match[str], end: int) -> bool:
    """Say whether a figure right after a piece is its price that lost its sign: "Saucer 45 Soup Bowl 80c"."""
    alone = not text[before : count.start("n")].strip() and "\n" not in text[before : count.start("n")]
    return alone and count["n"].isdigit() and int(count["n"]) > 1 and not _PLURAL.search(text[:end])


def sums(listed: Sequence[PieceCount], pieces: Vocabulary) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Return every sum the listed pieces can make by the trade's counting and by resale counting, usual one first."""
    return _sums(listed, pieces, "trade"), _sums(listed, pieces, "resale")


def _sums(listed: Sequence[PieceCount], pieces: Vocabulary, way: Literal["trade", "resale"]) -> tuple[int, ...]:
    fallback = Piece(id="other")
    choices: list[tuple[int, ...]] = []
    for item in listed:
        piece = pieces.pieces.get(item.piece, fallback)
        counts = piece.trade if way == "trade" else piece.resale
        choices.append(tuple(item.count * n for n in counts))
    return tuple(dict.fromkeys(sum(choice) for choice in product(*choices)))


def compose(
    stated: int | None,
    served: int | None,
    listed: Sequence[PieceCount],
    pieces: Vocabulary,
    setting: int | None = None,
) -> Composition:
    """Weigh what is stated, listed and implied against each other; `setting` is the pieces of one place setting."""
    trade, resale = sums(listed, pieces) if listed else ((), ())
    closes: Closes | None = None
    total: int | None = None
    likely = None
    if listed:
        total = trade[0]
        if stated is not None:
            by_trade, by_resale = stated in trade, stated in resale
            closes = "both" if by_trade and by_resale else "trade" if by_trade else "resale" if by_resale else "neither"
            total = stated if closes != "neither" else _nearest(stated, trade)
            if closes == "neither":
                likely = likely_misreading(stated, listed, pieces)
    return Composition(stated, served, tuple(listed), total, _implied(stated, served, setting), closes, likely)


def as_listed(parts: Sequence[Listed], title: str, pieces: Vocabulary) -> list[Listed]:
    """Return the pieces of a list one kind each: a cup and saucer as two, bare "plates" by the title of the set."""
    found = []
    plates = next((piece for word, piece in _conventions()["plates"].items() if word in title.lower()), None)
    for part in parts:
        piece = plates if plates and part.text.lower().split()[-1] == "plates" and len(part.text.split()) < 3 else None
        kinds = (piece,) if piece else pieces.pieces[part.piece].parts or (part.piece,)
        found += [replace(part, piece=kind) for kind in kinds]
    return found


def fill_counts(
    parts: Sequence[Listed], stated: int | None, served: int | None, pieces: Vocabulary
) -> tuple[tuple[PieceCount, ...], str | None]:
    """Return the pieces of a list with their counts, and a note where a count that could not be read was supplied.

    "8 dinner plates, & cups, 8 saucers": several of a piece without a figure are as many as the others, or as the set
    serves, where that makes the stated number; else they count as one, as printed.
    """
    plain = tuple(PieceCount(p.piece, p.count, p.text) for p in parts)
    bare = [i for i, p in enumerate(parts) if not p.counted and _PLURAL.search(p.text)]
    if stated is None or not bare or stated in {n for way in sums(plain, pieces) for n in way}:
        return plain, None
    counts = [p.count for p in parts if p.counted and p.count > 1]
    for count in dict.fromkeys(n for n in (max(counts, key=counts.count) if counts else None, served) if n):
        filled = tuple(PieceCount(p.piece, count if i in bare else p.count, p.text) for i, p in enumerate(plain))
        if stated in {n for way in sums(filled, pieces) for n in way}:
            words = ", ".join(f"“{parts[i].text}”" for i in bare)
            return filled, f"no figure was read before {words}; {count} each makes the stated {stated}"
    return plain, None


def _implied(stated: int | None, served: int | None, setting: int | None) -> int | None:
    if served is None:
        return None
    if setting is not None:
        return served * setting
    if stated is not None and _conventions()["serves"].get(str(stated)) == served:
        return stated
    return _conventions()["service"].get(str(served))


@cache
def _conventions() -> dict[str, dict[str, Any]]:
    text = files("adminer.names").joinpath("data", "sets.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def _nearest(stated: int, totals: Sequence[int]) -> int:
    return min(totals, key=lambda n: (abs(n - stated), -n))


def likely_misreading(stated: int, listed: Sequence[PieceCount], pieces: Vocabulary) -> str:
    """Say which figure was probably misread when stated and listed pieces disagree."""
    trade, resale = sums(listed, pieces)
    total = _nearest(stated, trade)
    head = f"claimed {stated}, listed {total}"
    counts = [item.count for item in listed]
    usual = max(set(counts), key=lambda n: (counts.count(n), n))
    fixes = []
    for i, item in enumerate(listed):
        if item.count == usual or counts.count(usual) < 3:
            continue
        changed = [*listed[:i], PieceCount(item.piece, usual, item.text), *listed[i + 1 :]]
        if stated in {n for way in sums(changed, pieces) for n in way}:
            fixes.append(f"{head}: “{item.text}” probably reads {usual}")
    if len(fixes) == 1:
        return fixes[0]
    for other in dict.fromkeys((*trade, *resale)):
        if _one_figure_apart(stated, other):
            return f"claimed {stated}, listed {other}: probable misreading of {other}"
    return fixes[0] if fixes else f"{head}: pieces are missing from the list, or a figure is misread"


def _one_figure_apart(one: int, other: int) -> bool:
    a, b = str(one), str(other)
    if len(a) != len(b):
        return False
    different = [frozenset((x, y)) for x, y in zip(a, b, strict=True) if x != y]
    return len(different) == 1 and different[0] in _CONFUSED
