"""The words of each part of a page, also of lines that were read across the white between two parts."""

from __future__ import annotations

from itertools import groupby

from adminer.records import Box, PageReading, Region, Word


def words_by_region(reading: PageReading) -> dict[int, tuple[Word, ...]]:
    """Part the words of a page by the region they stand in, keeping reading order.

    A line read across two columns belongs to one of them; those of its words that stand in the other go there.
    """
    parted: dict[int, list[Word]] = {}
    strays: list[tuple[int, Word]] = []
    for word in reading.words:
        home = _home_of(word, reading.regions)
        if home == word.region:
            parted.setdefault(home, []).append(word)
        else:
            strays.append((home, word))
    for (home, _), group in groupby(strays, key=lambda stray: (stray[0], stray[1].line)):
        _insert(parted.setdefault(home, []), [word for _, word in group])
    return {region: tuple(words) for region, words in sorted(parted.items())}


def _home_of(word: Word, regions: tuple[Region, ...]) -> int:
    """Return the region a word stands in, its line's own where it stands in that or in none."""
    if word.region >= len(regions) or _holds(regions[word.region].box, word):
        return word.region
    homes = [n for n, region in enumerate(regions) if _holds(region.box, word)]
    return min(homes, key=lambda n: regions[n].box.area, default=word.region)


def _holds(box: Box, word: Word) -> bool:
    x, y = word.box.centre
    return box.x <= x <= box.right and box.y <= y <= box.bottom


def _insert(words: list[Word], strays: list[Word]) -> None:
    """Put words of one line after the last that stands on their height or over it."""
    low = max(word.box.centre[1] for word in strays) + strays[0].type_px / 2
    at = max((n + 1 for n, word in enumerate(words) if word.box.centre[1] <= low), default=0)
    words[at:at] = strays
