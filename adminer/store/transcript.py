"""The words of a page as a person copies them out: without the leaders that run up to the figures of a row.

The parser sees leaders, for they tell what a price is for; who reads or searches the text has no use for what is left
of them on worn paper. Common practice of transcribers, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import islice, takewhile
from typing import Final

from adminer.records import Word

_LED: Final = re.compile(r"[.·…_]{2,}(?=[$£]?\.?[\d½¼¾⅓⅔])")  # "....9½d."
_LEADING: Final = re.compile(r"[.·…_]{2,}$|^[.…_]$")  # "butter....", or leaders alone
_FIGURES: Final = re.compile(r"[.·…_]*[$£]?\.?[\d½¼¾⅓⅔]")
_UNIT: Final = re.compile(r"[a-z]{1,6}\W*")  # "lb. 29c", "each 10c"


def transcript(words: Sequence[Word]) -> Iterator[tuple[int, Word]]:
    """Yield each word with its number in the reading, and no leaders where figures follow them on their line."""
    for number, word in enumerate(words):
        text = _LED.sub("", word.text) if _LED.match(word.text) else word.text
        if _LEADING.search(text) and _runs_up_to_figures(words, number):
            text = _LEADING.sub("", text)
        if text:
            yield number, word if text == word.text else replace(word, text=text)


def _runs_up_to_figures(words: Sequence[Word], number: int) -> bool:
    rest = takewhile(lambda word: word.line == words[number].line, islice(words, number + 1, None))
    after = [*islice((word.text for word in rest if word.text.strip(".·…_")), 2), "", ""]
    return bool(_FIGURES.match(after[0]) or (_UNIT.fullmatch(after[0]) and _FIGURES.match(after[1])))
