"""What the dictionary is worth to a line of small, worn type: character errors with it, beside the greedy decoding.

    python -m tests.benchmarks.likely_words --sheets 8
    python -m tests.benchmarks.likely_words --unknown -18 -16 -14 --names -16 -14 -12

The press prints lines of goods, news, makers and shops, some of names that no dictionary has, and wears them; each is
cut out where it stands and read. With several values every choice of them is tried on the same answers of the
network: so the constants of adminer/reading/likely_words.py were chosen. Chromium and the faces are needed.
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from html import escape
from itertools import product
from random import Random
from unittest import mock

import numpy as np
from numpy.typing import NDArray
from playwright.sync_api import Browser
from rapidfuzz.distance import Levenshtein
from rich.console import Console
from rich.table import Table

from adminer.reading import likely_words, recognise
from adminer.reading.letters import ReadLine
from corpus_demo.press.browser import document, press_browser, proof
from corpus_demo.press.copyfit import TABLEWARE, sentence
from corpus_demo.press.facts import Source, Wear
from corpus_demo.press.looks import FINES, ROMANS, draw_look
from corpus_demo.press.pressroom import verso
from corpus_demo.press.wares.copybook import NOTES, SLOGANS, TALK, brand, trades, ware
from corpus_demo.press.wear import scan
from corpus_demo.press.world import make_world

LINES = 60  # of a sheet
WIDTH = 700  # pixels of a scan
SIZES = (12.0, 17.0)  # pixels to the em, least and most: type of six points at 150 to 200 dots an inch
SOURCES: tuple[Source, ...] = ("newsprint", "microfilm", "photocopy", "phone")

Line = tuple[NDArray[np.uint8], str]  # what was cut out, and what was set


@dataclass(frozen=True, slots=True)
class Answered:
    """Hold a line as the greedy decoding reads it, the network's answers, the width it read, in pixels."""

    greedy: ReadLine
    answers: NDArray[np.float32]
    width: int
    said: Mapping[str, float]  # by the lines read with it


def copy(rng: Random) -> str:
    """Draw what one line says; a third of the lines hold a name that no dictionary has."""
    kind = rng.choice(("news", "ware", "ware", "detail", "talk", "house", "line", "head"))
    match kind:
        case "news":
            text = sentence(rng)
        case "ware":
            text = ware(rng, rng.choice(list(trades())), told=0.5, former=0).item.text
        case "detail":
            text = ", ".join(rng.sample(trades()[rng.choice(list(trades()))]["details"], 2))
        case "talk":
            text = rng.choice((*TABLEWARE, *TALK, *NOTES))
        case "house":
            world = make_world(rng.randint(1, 999), 8)
            text = f"{rng.choice(world.shops).name}, {rng.choice(world.towns).name}"
        case "line":
            world = make_world(rng.randint(1, 999), 8)
            text = f"{rng.choice(world.lines).name} by {rng.choice(world.makers)[1]}"
        case _:
            text = f"{brand(rng)} {rng.choice(SLOGANS)}".upper()
    words = text.split()
    first = rng.randint(0, max(0, len(words) - 9))
    return " ".join(words[first : first + 9])


def lines(browser: Browser, seed: int, sheets: int) -> Iterator[list[Line]]:
    """Print sheets of lines, each line in a face and size of its own, and cut the lines out."""
    back = verso(browser)
    for turn in range(sheets):
        rng = Random(f"likely words {seed} {turn}")
        texts = {f"t{k}": copy(rng) for k in range(LINES)}
        rows = "".join(_row(fact, text, rng) for fact, text in texts.items())
        html = document(f'<div class="ad" data-f="a0">{rows}</div>', draw_look(turn), WIDTH, 10, turn)
        wear = Wear(SOURCES[turn % len(SOURCES)], spread=rng.uniform(0.2, 0.7), grain=rng.uniform(0.03, 0.08))
        picture, boxes = scan(proof(browser, html, WIDTH), back, wear, seed * 1009 + turn, colour=False)
        yield [(_cut(picture, *boxes[fact]), text) for fact, text in texts.items() if fact in boxes]


def _row(fact: str, text: str, rng: Random) -> str:
    face, size = rng.choice((*ROMANS, *FINES)), rng.uniform(*SIZES)
    style = f"font:{size:.1f}px '{face}';white-space:nowrap;padding:2px"
    return f'<div style="{style}"><span data-f="{fact}">{escape(text)}</span></div>'


def _cut(picture: NDArray[np.uint8], x: int, y: int, w: int, h: int) -> NDArray[np.uint8]:
    room = max(1, round(0.15 * h))
    return np.ascontiguousarray(picture[max(0, y - room) : y + h + room, max(0, x - 2 * room) : x + w + 2 * room])


def greedily(strips: list[NDArray[np.uint8]]) -> list[Answered]:
    """Read strips by the greedy decoding alone and keep the answers of the network with what it made of them."""
    kept: dict[int, Answered] = {}

    def keep(read: ReadLine, answers: NDArray[np.float32], width: int, said: Mapping[str, float]) -> ReadLine:
        kept[id(read)] = Answered(read, answers, width, said)
        return read

    with mock.patch.multiple(recognise, with_likely_words=keep, is_doubtful=lambda _: True):
        return [kept[id(read)] for read in recognise.read_strips(strips)]


def tally(read: list[ReadLine], printed: list[Line]) -> NDArray[np.int64]:
    """Count wrong characters, wrong words and characters."""
    counts = np.zeros(3, np.int64)
    for one, (_, text) in zip(read, printed, strict=True):
        wrong = sum((Counter(text.split()) - Counter(one.text.split())).values())
        counts += (Levenshtein.distance(one.text, text), wrong, len(text))
    return counts


def with_choice(answered: list[Answered], unknown: float, name: float) -> list[ReadLine]:
    """Decode answers with other frequencies of unknown words and names."""
    with mock.patch.multiple(likely_words, UNKNOWN=unknown, NAME=name):
        return [likely_words.with_likely_words(one.greedy, one.answers, one.width, one.said) for one in answered]


def main() -> None:
    """Print sheets, read them with each choice, print the table."""
    parser = argparse.ArgumentParser(description="Character errors of small worn type with and without a dictionary.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--sheets", type=int, default=8)
    parser.add_argument("--unknown", type=float, nargs="+", default=[likely_words.UNKNOWN])
    parser.add_argument("--names", type=float, nargs="+", default=[likely_words.NAME])
    asked = parser.parse_args()
    choices = list(product(asked.unknown, asked.names))
    counts = np.zeros((1 + len(choices), 3), np.int64)
    with press_browser() as browser:
        for printed in lines(browser, asked.seed, asked.sheets):
            answered = greedily([strip for strip, _ in printed])
            counts[0] += tally([one.greedy for one in answered], printed)
            for k, choice in enumerate(choices):
                counts[k + 1] += tally(with_choice(answered, *choice), printed)
    table = Table("unknown", "name", "character errors", "ratio", "wrong words", "ratio")
    for choice, (errors, wrong, length) in zip([("greedy", ""), *choices], counts, strict=True):
        told = [f"{errors / length:.4f}", f"{errors / counts[0, 0]:.3f}", str(wrong), f"{wrong / counts[0, 1]:.3f}"]
        table.add_row(*map(str, choice), *told)
    Console().print(table)


if __name__ == "__main__":
    main()
