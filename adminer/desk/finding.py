"""Find words in all that was read, forgiving what readers of old type confuse.

Every distinct word of the file is folded to a skeleton in which the usual confusions fall together, and
compared with the folded words asked for; what is near enough is then looked up with its line of text.
"""

from __future__ import annotations

import re
import threading
from collections import defaultdict
from dataclasses import dataclass, field
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import Levenshtein

from adminer.desk.shelf import Row, Shelf
from adminer.records import Box

MOST_WORDS: Final = 8  # of a search
MOST_FOUND: Final = 60
NEAR: Final = 0.74  # likeness from which a word counts as the one asked for
_PAIRS: Final = (("rn", "m"), ("vv", "w"), ("cl", "d"), ("ii", "u"), ("li", "h"), ("ﬁ", "fi"), ("ﬂ", "fl"), ("ſ", "s"))
_SINGLE: Final = str.maketrans(
    {"0": "o", "1": "l", "i": "l", "|": "l", "!": "l", "5": "s", "$": "s", "8": "b", "6": "b"}
)
_EDGE: Final = re.compile(r"^\W+|\W+$")


@dataclass(frozen=True, slots=True)
class Found:
    """Hold one place where words were found: the clipping, the line of text, its box, and how alike it is."""

    clipping_id: str
    file: str
    publication: str | None
    published: str | None
    advert_id: str | None
    text: str
    box: Box
    words: int  # how many of the words asked for stand here
    likeness: float


@dataclass(slots=True)
class Finder:
    """Search the words of a shelf; the list of distinct words is made once for each snapshot."""

    shelf: Shelf
    _stamp: tuple[int, int] = (-1, -1)
    _skeletons: dict[str, list[str]] = field(default_factory=dict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def find(self, asked: str) -> list[Found]:
        """Return the lines of text that hold the words asked for, the best first."""
        words = [word for word in (_EDGE.sub("", w) for w in asked.split()) if word][:MOST_WORDS]
        if not words or not self.shelf.exists:
            return []
        skeletons = self._vocabulary()
        near: dict[str, tuple[int, float]] = {}
        for number, word in enumerate(words):
            for skeleton, likeness in _near(word, skeletons):
                for text in skeletons[skeleton]:
                    # a word spelt as asked comes before one that is so only after folding
                    sure = likeness if text.casefold() != word.casefold() else 1.05
                    if sure > near.get(text, (0, 0.0))[1]:
                        near[text] = (number, sure)
        return self._places(near) if near else []

    def _vocabulary(self) -> dict[str, list[str]]:
        with self._lock:
            stamp = self.shelf.stamp()
            if stamp != self._stamp:
                gathered: dict[str, list[str]] = defaultdict(list)
                for row in self.shelf.rows("SELECT DISTINCT text FROM words"):
                    gathered[skeleton_of(row["text"])].append(row["text"])
                gathered.pop("", None)
                self._skeletons, self._stamp = dict(gathered), stamp
            return self._skeletons

    def _places(self, near: dict[str, tuple[int, float]]) -> list[Found]:
        rows = self.shelf.rows(
            "SELECT clipping_id, line_no, list(text) AS texts FROM words "
            "WHERE list_contains(?, text) GROUP BY ALL LIMIT 20000",
            [list(near)],
        )
        scored: list[tuple[int, float, Row]] = []
        for row in rows:
            best: dict[int, float] = {}
            for text in row["texts"]:
                number, likeness = near[text]
                best[number] = max(best.get(number, 0.0), likeness)
            scored.append((len(best), sum(best.values()) / len(best), row))
        scored.sort(key=lambda entry: (-entry[0], -entry[1], entry[2]["clipping_id"], entry[2]["line_no"]))
        return [self._found(*entry) for entry in scored[:MOST_FOUND]]

    def _found(self, words: int, likeness: float, row: Row) -> Found:
        line = self.shelf.rows(
            "SELECT c.file, c.publication, c.published, any_value(w.advert_id) AS advert_id, "
            "string_agg(w.text, ' ' ORDER BY w.word_no) AS text, min(w.x) AS x, min(w.y) AS y, "
            "max(w.x + w.w) - min(w.x) AS w, max(w.y + w.h) - min(w.y) AS h "
            "FROM words w JOIN clippings c USING (clipping_id) "
            "WHERE w.clipping_id = ? AND w.line_no = ? GROUP BY ALL",
            [row["clipping_id"], row["line_no"]],
        )[0]
        return Found(
            row["clipping_id"],
            line["file"],
            line["publication"],
            line["published"],
            line["advert_id"],
            line["text"],
            Box(line["x"], line["y"], line["w"], line["h"]),
            words,
            min(1.0, likeness),
        )


def skeleton_of(word: str) -> str:
    """Return a word with the usual confusions folded together: rn as m, 0 as o, 1 and i as l."""
    folded = _EDGE.sub("", word.casefold())
    for pair, single in _PAIRS:
        folded = folded.replace(pair, single)
    return folded.translate(_SINGLE)


def _near(word: str, skeletons: dict[str, list[str]]) -> list[tuple[str, float]]:
    asked = skeleton_of(word)
    if not asked:
        return []
    # short words would match anything: they must agree
    cutoff = NEAR if len(asked) > 3 else 1.0
    found = process.extract(
        asked, skeletons.keys(), scorer=Levenshtein.normalized_similarity, score_cutoff=cutoff, limit=40
    )
    return [(text, likeness) for text, likeness, _ in found]
