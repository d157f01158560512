"""Sets an advert without a browser: words and boxes as a perfect reader would hand them on, for dating and parsing.

A monospaced compositor: rows, columns and large figures stand where a simple newspaper advert has them.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field
from random import Random
from string import ascii_letters

from adminer.records import Block, Box, PageReading, Reader, Region, Word

from .copyfit import selling
from .facts import AdvertSpec, Item, ScanSpec, Tag
from .looks import draw_look
from .sheet import Row, Sheet
from .styles.parts import unit_words
from .truth import truth_row

WIDTH = 900
SET_WIDTH = 0.5  # of an em, of the average figure of the type
CAPITAL = 0.72
LEADING = 1.3
RAISED = ("raised_cents", "raised_cents_bare", "raised_cent_sign")
# what a worn letter or figure is taken for: figures for those of like shape, letters for the commonest; common practice
_TAKEN_FOR = dict.fromkeys(ascii_letters, "aceilnorstu") | {
    "0": "689",
    "1": "74",
    "2": "73",
    "3": "85",
    "4": "19",
    "5": "36",
    "6": "58",
    "7": "12",
    "8": "369",
    "9": "48",
}


@dataclass(slots=True)
class _Galley:
    """Collect words line by line."""

    sheet: Sheet
    words: list[Word] = field(default_factory=list)
    boxes: dict[str, Box] = field(default_factory=dict)
    y: float = 24.0
    line: int = 0
    block: int = 0

    def put(self, text: str, x: float, size: float, fact: str | None = None, raised: bool = False) -> float:
        """Set words from x on the current line; return where they end."""
        for token in text.split():
            width = len(token) * size * SET_WIDTH
            box = Box(round(x), round(self.y), max(1, round(width)), max(1, round(size * CAPITAL)))
            form = self.sheet.facts[fact]["form"] if fact and raised else None
            reader: Reader = "numeral" if raised else "display"
            self.words.append(Word(token, box, size * CAPITAL, 0.97, reader, 0, self.block, self.line, form))
            if fact:
                self.boxes[fact] = self.boxes[fact].joined(box) if fact in self.boxes else box
            x += width + size * SET_WIDTH * 0.6
        return x

    def feed(self, size: float) -> None:
        """Go to the next line."""
        self.y += size * LEADING
        self.line += 1

    def centre(self, text: str, size: float, fact: str | None = None) -> None:
        """Set a line in the middle."""
        if text:
            width = (
                sum(len(t) for t in text.split()) * size * SET_WIDTH + (len(text.split()) - 1) * size * SET_WIDTH * 0.6
            )
            self.put(text, max(8.0, (WIDTH - width) / 2), size, fact)
            self.feed(size)

    def price(self, tag: Tag, item: Item, x: float, size: float, *, small: bool) -> float:
        """Set a price and its unit; return where it ends."""
        self.sheet.price(tag, item, small=small)
        fact = self.sheet.last
        row = self.sheet.facts[fact]
        raised = row["form"] in RAISED
        text = row["text_as_printed"]
        if row["form"] in ("raised_cents", "raised_cents_bare"):
            text = text.replace(" ", ".")
        x = self.put(text, x, size, fact, raised)
        return self.put(unit_words(tag), x, 18) if tag.unit else x


def _rows(galley: _Galley, items: list[Item]) -> None:
    sheet = galley.sheet
    columns = [WIDTH - 310.0, WIDTH - 140.0]
    galley.block += 1
    if items and len(items[0].tags) > 1 and items[0].tags[0].label:
        for x, tag in zip(columns, items[0].tags, strict=False):
            sheet.label(tag)
            galley.put(tag.label, x, 14, sheet.last if tag.condition != "everyone" else None)
        galley.feed(14)
    for item in items:
        sheet.text(item.text)
        x = galley.put(item.text, 30, 18, sheet.last)
        if item.size:
            galley.put(item.size, x, 16)
        places = columns if len(item.tags) > 1 else columns[1:]
        for place, tag in zip(places, item.tags, strict=False):
            galley.price(tag, item, place, 18, small=True)
        galley.feed(18)
        _contents(galley, item, 14)


def _feature(galley: _Galley, item: Item) -> None:
    sheet = galley.sheet
    galley.block += 1
    if item.line_text:
        sheet.line(item.line_text, item.line)
        galley.centre(item.line_text, 34, sheet.last)
    sheet.text(item.text)
    galley.centre(item.text, 34, sheet.last)
    _contents(galley, item, 16)
    sizes = [90.0, 52.0, 52.0]
    starts = [90.0, 420.0, 660.0]
    for tag, size, x in zip(item.tags, sizes, starts, strict=False):
        galley.price(tag, item, x, size, small=False)
    galley.feed(90)
    for tag, x in zip(item.tags, starts, strict=False):
        sheet.label(tag)
        galley.put(tag.label, x, 18, sheet.last if tag.condition != "everyone" and tag.label else None)
    galley.feed(22)


def _contents(galley: _Galley, item: Item, size: float) -> None:
    if item.composition:
        galley.sheet.set_words(item.composition, item)
        words = item.composition.words or ", ".join(text for _, _, text in item.composition.listed)
        _fill(galley, words, size, galley.sheet.last)


def _fill(galley: _Galley, text: str, size: float, fact: str | None = None) -> None:
    room = int((WIDTH - 60) / (size * SET_WIDTH * 1.1))
    line = ""
    for word in text.split():
        if len(line) + len(word) > room:
            galley.put(line, 30, size, fact)
            galley.feed(size)
            line = ""
        line += f"{word} "
    if line:
        galley.put(line, 30, size, fact)
        galley.feed(size)


def _advert(galley: _Galley, spec: AdvertSpec) -> None:
    sheet = galley.sheet
    sheet.open_advert(spec)
    galley.centre(spec.kicker, 18)
    sheet.text(spec.headline)
    galley.centre(spec.headline, 52, sheet.last)
    if spec.line_text:
        sheet.line(spec.line_text, spec.line)
        galley.centre(spec.line_text, 48, sheet.last)
    galley.centre(spec.maker_text, 18)
    for when, kind in ((spec.when, "validity"), (spec.expiry, "expiry")):
        if when:
            sheet.date(when, kind)
            galley.centre(when.text, 20, sheet.last)
    items = list(spec.items)
    if spec.style in ("store", "mailorder"):
        for item in items:
            _feature(galley, item)
    elif spec.style in ("grocery", "handbill", "clearance"):
        _rows(galley, [item for item in items if item.department != "housewares"])
        _rows(galley, [item for item in items if item.department == "housewares"])
    else:
        _feature(galley, items[0])
        _rows(galley, items[1:])
    galley.block += 1
    for paragraph in spec.copy or selling(spec):
        _fill(galley, paragraph, 17)
    for term in spec.terms:
        sheet.term(term)
        galley.centre(term.text, 17, sheet.last)
    galley.block += 1
    sheet.retailer(spec.retailer_text)
    galley.centre(spec.retailer_text, 60, sheet.last)
    for text in spec.addresses:
        sheet.text(text)
        galley.centre(text, 16, sheet.last)


def read_plain(spec: ScanSpec, misread: float = 0.0) -> tuple[PageReading, Row]:
    """Set a sheet of one advert and return what a reader would find, with the truth.

    `misread` is the chance that a letter or figure comes out as another, in words, dates, addresses and prices alike.
    """
    galley = _Galley(Sheet(draw_look(spec.seed, spec.look), WIDTH / 18))
    _advert(galley, spec.adverts[0])
    height = round(galley.y + 30)
    whole = Box(6, 6, WIDTH - 12, height - 12)
    boxes = {fact: (b.x, b.y, b.w, b.h) for fact, b in galley.boxes.items()}
    boxes["a0"] = (whole.x, whole.y, whole.w, whole.h)
    lines = dict.fromkeys(boxes, 1)
    truth = truth_row(spec, galley.sheet, boxes, lines, (WIDTH, height)) | {"leaf": 1}
    rng = Random(f"misread {spec.seed}")
    words = tuple(_smudge(word, misread, rng) for word in galley.words)
    name = hashlib.sha256(f"{spec.file} {spec.seed}".encode()).hexdigest()[:16]
    reading = PageReading(name, WIDTH, height, "plain", (Region(whole, "advert", 0.99),), _blocks(words), words)
    return reading, truth


def _blocks(words: tuple[Word, ...]) -> tuple[Block, ...]:
    found: dict[int, Box] = {}
    size: dict[int, float] = {}
    for word in words:
        found[word.block] = found[word.block].joined(word.box) if word.block in found else word.box
        size[word.block] = max(size.get(word.block, 0.0), word.type_px)
    last = max(found, default=-1)
    empty = Box(0, 0, 1, 1)
    return tuple(Block(found.get(k, empty), "text", size.get(k, 1.0)) for k in range(last + 1))


def _smudge(word: Word, misread: float, rng: Random) -> Word:
    if not misread:
        return word
    text = "".join(rng.choice(_TAKEN_FOR[c]) if c in _TAKEN_FOR and rng.random() < misread else c for c in word.text)
    return Word(
        text, word.box, word.type_px, word.confidence, word.reader, word.region, word.block, word.line, word.form
    )
