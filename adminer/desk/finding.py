"""Find words in all that was read, forgiving what readers of old type confuse.

Every distinct word of the file is folded to a skeleton in which the usual confusions fall together, and
compared with the folded words asked for; what is near enough is then looked up with its line of text.
"""

from __future__ import annotations

import re
import threading
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import Levenshtein

from adminer.desk.shelf import Shelf
from adminer.records import Box

MOST_WORDS: Final = 8  # of a search
MOST_FOUND: Final = 60
MOST_CANDIDATES: Final = 4000  # lines of the rarest word that are looked at
NEAR: Final = 0.74  # likeness from which a word counts as the one asked for
_PAIRS: Final = (("rn", "m"), ("vv", "w"), ("cl", "d"), ("ii", "u"), ("li", "h"), ("ﬁ", "fi"), ("ﬂ", "fl"), ("ſ", "s"))
_SINGLE: Final = str.maketrans(
    {"0": "o", "1": "l", "i": "l", "|": "l", "!": "l", "5": "s", "$": "s", "8": "b", "6": "b"}
)
REACH: Final = 60  # rows on each side of a word in which the rest of its line lies; a line has far fewer words
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
    _skeletons: dict[str, list[tuple[str, int]]] = field(default_factory=dict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def find(self, asked: str) -> list[Found]:
        """Return the lines of text that hold the words asked for, the best first."""
        words = [word for word in (_EDGE.sub("", w) for w in asked.split()) if word][:MOST_WORDS]
        if not words or not self.shelf.exists:
            return []
        skeletons = self._vocabulary()
        near: dict[str, tuple[int, float]] = {}
        common: dict[int, int] = {}
        for number, word in enumerate(words):
            for skeleton, likeness in _near(word, skeletons):
                for text, count in skeletons[skeleton]:
                    # a word spelt as asked comes before one that is so only after folding
                    sure = likeness if text.casefold() != word.casefold() else 1.05
                    common[number] = common.get(number, 0) + count
                    if sure > near.get(text, (0, 0.0))[1]:
                        near[text] = (number, sure)
        if not near:
            return []
        rarest = min(common, key=lambda number: common[number])
        return self._places(near, [text for text, (number, _) in near.items() if number == rarest])

    def make_ahead(self) -> None:
        """Make the list of distinct words and bring the table of words to hand before anyone searches."""
        words = [each for alike in self._vocabulary().values() for each in alike]
        common = sorted(words, key=lambda each: -each[1])[:2]
        self.find(" ".join(text for text, _ in common))

    def _vocabulary(self) -> dict[str, list[tuple[str, int]]]:
        with self._lock:
            stamp = self.shelf.stamp()
            if stamp != self._stamp:
                gathered: dict[str, list[tuple[str, int]]] = defaultdict(list)
                for row in self.shelf.rows("SELECT text, count(*) AS n FROM words GROUP BY text"):
                    gathered[skeleton_of(row["text"])].append((row["text"], row["n"]))
                gathered.pop("", None)
                self._skeletons, self._stamp = dict(gathered), stamp
            return self._skeletons

    def _places(self, near: dict[str, tuple[int, float]], rarest: list[str]) -> list[Found]:
        first = self.shelf.rows(
            "SELECT rowid, clipping_id, line_no, text FROM words "
            "SEMI JOIN (SELECT unnest(?) AS text) USING (text) LIMIT ?",
            [rarest, MOST_CANDIDATES],
        )
        found = {(row["clipping_id"], row["line_no"], row["text"]) for row in first}
        rows_of = {(row["clipping_id"], row["line_no"]): row["rowid"] for row in first}
        others = [text for text in near if text not in set(rarest)]
        if others and first:
            clippings = sorted({row["clipping_id"] for row in first})
            rows = self.shelf.rows(
                "SELECT rowid, clipping_id, line_no, text FROM words SEMI JOIN (SELECT unnest(?) AS text) USING (text) "
                "SEMI JOIN (SELECT unnest(?) AS clipping_id) USING (clipping_id) LIMIT ?",
                [others, clippings, 5 * MOST_CANDIDATES],
            )
            found |= {(row["clipping_id"], row["line_no"], row["text"]) for row in rows}
            rows_of |= {(row["clipping_id"], row["line_no"]): row["rowid"] for row in rows}
        lines: dict[tuple[str, int], dict[int, float]] = {}
        for clipping_id, line_no, text in found:
            number, likeness = near[text]
            best = lines.setdefault((clipping_id, line_no), {})
            best[number] = max(best.get(number, 0.0), likeness)
        scored = [(len(best), sum(best.values()) / len(best), place) for place, best in lines.items()]
        scored.sort(key=lambda entry: (-entry[0], -entry[1], entry[2]))
        return self._found(scored[:MOST_FOUND], rows_of)

    def _found(
        self, scored: list[tuple[int, float, tuple[str, int]]], rows_of: Mapping[tuple[str, int], int]
    ) -> list[Found]:
        """Return the best places with their whole line of text; the words of a line are rows one after another."""
        near = {row + by for _, _, place in scored for row in [rows_of[place]] for by in range(-REACH, REACH + 1)}
        lines = self.shelf.rows(
            "SELECT w.clipping_id, w.line_no, c.file, c.publication, c.published, any_value(w.advert_id) AS advert_id, "
            "string_agg(w.text, ' ' ORDER BY w.word_no) AS text, min(w.x) AS x, min(w.y) AS y, "
            "max(w.x + w.w) - min(w.x) AS w, max(w.y + w.h) - min(w.y) AS h "
            "FROM words w SEMI JOIN (SELECT unnest(?) AS row_no) ON w.rowid = row_no "
            "SEMI JOIN (SELECT unnest(?) AS clipping_id, unnest(?) AS line_no) USING (clipping_id, line_no) "
            "JOIN clippings c USING (clipping_id) GROUP BY ALL",
            [sorted(near), [place[0] for _, _, place in scored], [place[1] for _, _, place in scored]],
        )
        by_place = {(line["clipping_id"], line["line_no"]): line for line in lines}
        found = []
        for words, likeness, place in scored:
            line = by_place[place]
            box = Box(line["x"], line["y"], line["w"], line["h"])
            about = (line["file"], line["publication"], line["published"], line["advert_id"], line["text"])
            found.append(Found(place[0], *about, box, words, min(1.0, likeness)))
        return found


def skeleton_of(word: str) -> str:
    """Return a word with the usual confusions folded together: rn as m, 0 as o, 1 and i as l."""
    folded = _EDGE.sub("", word.casefold())
    for pair, single in _PAIRS:
        folded = folded.replace(pair, single)
    return folded.translate(_SINGLE)


def _near(word: str, skeletons: Mapping[str, object]) -> list[tuple[str, float]]:
    asked = skeleton_of(word)
    if not asked:
        return []
    # short words would match anything: they must agree
    cutoff = NEAR if len(asked) > 3 else 1.0
    found = process.extract(
        asked, skeletons.keys(), scorer=Levenshtein.normalized_similarity, score_cutoff=cutoff, limit=40
    )
    return [(text, likeness) for text, likeness, _ in found]
