"""Set lines of type as a reader would return them, for tests: no picture, only words with boxes."""

from __future__ import annotations

from functools import cache

from adminer.names.authority import Authorities, LineEntry, MakerEntry, NameUse, RetailerEntry
from adminer.parsing import parse_page
from adminer.parsing.text.text import AdvertText, text_of
from adminer.records import Advert, Block, Box, Note, PageReading, Region, Word

NO_NAMES = Authorities()  # one object, so that its pipeline is built once
Line = tuple[int, int, int, str]  # x, y of the top left corner, type size, text


def words_of(lines: list[Line], slope: float = 0.0) -> tuple[Word, ...]:
    """Set each line in letters 0.55 of the type size wide; `slope` is pixels down for each pixel to the right."""
    words = []
    for number, (x, y, px, text) in enumerate(lines):
        at = x
        for token in text.split(" "):
            width = max(round(0.55 * px * len(token)), 1)
            words.append(
                Word(
                    token,
                    Box(at, round(y + slope * (at + width / 2)), width, px),
                    float(px),
                    0.95,
                    "display",
                    line=number,
                )
            )
            at += width + round(0.3 * px)
    return tuple(words)


def advert_text(*lines: Line) -> AdvertText:
    """Return the text of an advert set from lines."""
    return text_of(words_of(list(lines)))


def reading_of(lines: list[Line], *, rules: tuple[Box, ...] = (), slope: float = 0.0) -> PageReading:
    """Return a reading of one advert that fills a page of 800 by 1000 pixels."""
    width, height = 800, 1000
    page = Box(0, 0, width, height)
    return PageReading(
        "0123456789abcdef",
        width,
        height,
        "newspaper",
        (Region(page, "advert", 0.9),),
        (Block(page, "text", 14.0),),
        words_of(lines, slope),
        rules,
    )


@cache
def some_names() -> Authorities:
    """Return a small authority file of the invented country."""
    return Authorities(
        lines=(
            LineEntry(
                id="tansy_morn",
                name="Tansy Morn",
                maker="marrowstone",
                first_year=1952,
                last_year=1958,
                names=(NameUse(name="Golden Buttons", used_by="decal_supplier"),),
            ),
            LineEntry(id="silverthaw", name="Silverthaw", maker="undine", first_year=1955),
            LineEntry(id="winter_sorrel", name="Winter Sorrel", maker="marrowstone"),
        ),
        makers=(
            MakerEntry(id="marrowstone", name="Marrowstone Pottery"),
            MakerEntry(id="undine", name="Undine China Works"),
        ),
        retailers=(
            RetailerEntry(
                id="penhallow", name="Penhallow Stores", kind="chain", names=("Penhallow",), branches=("Ferncliff",)
            ),
            RetailerEntry(id="quillfeather", name="Quillfeather's", kind="department_store"),
        ),
    )


def parse(*lines: Line, names: Authorities | None = None, notes: tuple[Note, ...] = ()) -> Advert:
    """Parse one advert set from lines."""
    (advert,) = parse_page(reading_of(list(lines)), names or NO_NAMES, notes)
    return advert
