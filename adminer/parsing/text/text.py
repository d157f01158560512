"""The text of one advert as a string that remembers where every character stands on the scan."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Final

from adminer.parsing.text.lexicon import word_list
from adminer.parsing.text.slope import LEVEL, Slope, flattened, slope_of
from adminer.records import Box, Word

_BESIDE: Final = 2.0  # type sizes between two parts of a broken line
_WAITING: Final = word_list("waiting")
_LETTER: Final = 0.55  # type sizes across a letter
_OPENS_FIGURES: Final = frozenset("0123456789.$")


@dataclass(frozen=True)
class TextLine:
    """Hold one printed line: its words and the characters it takes up in the advert's text."""

    number: int
    start: int
    end: int
    words: tuple[Word, ...]
    box: Box  # in pixels of the scan
    flat: Box  # the same with the slope of the type taken out, for comparing rows
    type_px: float
    block: int


@dataclass(frozen=True)
class AdvertText:
    """Hold the text of one advert, lines parted by newlines, words by single spaces."""

    text: str
    words: tuple[Word, ...]
    starts: tuple[int, ...]  # first character of each word
    lines: tuple[TextLine, ...]
    slope: Slope = LEVEL
    rules: tuple[Box, ...] = ()  # printed on its page, in pixels of the scan

    def printed(self, line: TextLine) -> str:
        """Return the text of one line."""
        return self.text[line.start : line.end]

    def flat(self, box: Box) -> Box:
        """Return a box with the slope of the type taken out."""
        return flattened(box, self.slope)

    @cached_property
    def body_px(self) -> float:
        """Return the middle type size of the advert, weighed by letters, in pixels."""
        return _middle_size(self.words, 1.0)

    @cached_property
    def _line_starts(self) -> list[int]:
        return [line.start for line in self.lines]

    @cached_property
    def joined(self) -> str:
        """Return the text with a newline turned into a space wherever a sentence may run on into the next line."""
        characters = list(self.text)
        for above, below in pairwise(self.lines):
            if _runs_on(self.text, above, below):
                characters[above.end] = " "
        return "".join(characters)

    def word_range(self, start: int, end: int) -> tuple[int, int]:
        """Return the first word and the one after the last that touch the characters start to end."""
        first = max(bisect_right(self.starts, start) - 1, 0)
        last = first
        while last < len(self.words) and self.starts[last] < end:
            last += 1
        return first, last

    def words_of(self, start: int, end: int) -> tuple[Word, ...]:
        """Return the words that touch the characters start to end."""
        first, last = self.word_range(start, end)
        return self.words[first:last]

    def box_of(self, start: int, end: int) -> Box:
        """Return the box around the characters start to end, words cut in proportion to their letters."""
        first, last = self.word_range(start, end)
        boxes = []
        for i in range(first, max(last, first + 1)):
            word, at = self.words[i], self.starts[i]
            boxes.append(_cut(word, max(start - at, 0), min(end - at, len(word.text))))
        box = boxes[0]
        for other in boxes[1:]:
            box = box.joined(other)
        return box

    def line_at(self, position: int) -> TextLine:
        """Return the line that holds a character."""
        return self.lines[max(bisect_right(self._line_starts, position) - 1, 0)]

    def type_px_of(self, start: int, end: int) -> float:
        """Return the largest type size among the characters, in pixels."""
        words = self.words_of(start, end)
        return max((w.type_px for w in words), default=self.body_px)

    def usual_type_px_of(self, start: int, end: int) -> float:
        """Return the middle type size among the characters, weighed by letters, in pixels."""
        return _middle_size(self.words_of(start, end), self.body_px)

    def confidence_of(self, start: int, end: int) -> float:
        """Return the mean confidence of the words touched, weighed by letters."""
        words = self.words_of(start, end)
        letters = sum(len(w.text) for w in words)
        return sum(w.confidence * len(w.text) for w in words) / letters if letters else 0.0


def _middle_size(words: tuple[Word, ...], none: float) -> float:
    """Return the middle type size of words, weighed by letters, at least a pixel; `none` where there are no words."""
    sizes = sorted((w.type_px, len(w.text)) for w in words)
    half, seen = sum(n for _, n in sizes) / 2, 0
    for size, letters in sizes:
        seen += letters
        if seen >= half:
            return max(size, 1.0)
    return none


def _runs_on(text: str, above: TextLine, below: TextLine) -> bool:
    """Say whether a sentence may run on: one size of type, and no fresh start in the line below or beside."""
    if _is_beside(above, below):
        return True
    if above.block != below.block or not 0.75 < above.type_px / max(below.type_px, 1.0) < 1.34:
        return False
    first, last = text[below.start], text[above.end - 1]
    if last in ".!?:;":
        return False
    return not first.isupper() or last in ",-–—&" or text[above.start : above.end].lower().split()[-1] in _WAITING


def _is_beside(one: TextLine, other: TextLine) -> bool:
    """Say whether a line goes on in another on the same row, a word space or two away."""
    shared = min(one.flat.bottom, other.flat.bottom) - max(one.flat.y, other.flat.y)
    gap = other.flat.x - one.flat.right
    return shared > 0.6 * min(one.flat.h, other.flat.h) and 0 <= gap < _BESIDE * min(one.type_px, other.type_px)


def _cut(word: Word, start: int, end: int) -> Box:
    letters = len(word.text)
    if letters == 0 or (start <= 0 and end >= letters) or end <= start:
        return word.box
    if start > 0 and word.box.w > letters * word.type_px and word.text[start] in _OPENS_FIGURES:
        # leaders taken into a word leave its figures at the right
        right, letter = word.box.right, _LETTER * word.type_px
        return Box(round(right - (letters - start) * letter), word.box.y, round((end - start) * letter), word.box.h)
    left = word.box.x + round(word.box.w * start / letters)
    right = word.box.x + round(word.box.w * end / letters)
    return Box(left, word.box.y, max(right - left, 1), word.box.h)


def text_of(words: tuple[Word, ...], rules: tuple[Box, ...] = ()) -> AdvertText:
    """Join words in reading order into the text of an advert; a change of line number starts a line."""
    parts: list[str] = []
    starts: list[int] = []
    lines: list[TextLine] = []
    kept: list[Word] = []
    run: list[Word] = []
    position = 0
    slope = slope_of(words)

    def close() -> None:
        if run:
            box = _around([w.box for w in run])
            sizes = sorted(w.type_px for w in run)
            lines.append(
                TextLine(
                    len(lines),
                    starts[-len(run)],
                    position,
                    tuple(run),
                    box,
                    _around([flattened(w.box, slope) for w in run]),
                    sizes[len(sizes) // 2],
                    run[0].block,
                )
            )
            run.clear()

    for word in words:
        if not word.text.strip():
            continue
        if run and (word.line != run[-1].line or word.block != run[-1].block):
            close()
            parts.append("\n")
            position += 1
        elif run:
            parts.append(" ")
            position += 1
        starts.append(position)
        kept.append(word)
        run.append(word)
        parts.append(word.text)
        position += len(word.text)
    close()
    return AdvertText("".join(parts), tuple(kept), tuple(starts), tuple(lines), slope, rules)


def _around(boxes: list[Box]) -> Box:
    box = boxes[0]
    for other in boxes[1:]:
        box = box.joined(other)
    return box
