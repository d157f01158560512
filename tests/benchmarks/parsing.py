"""How fast adverts are parsed and names linked anew: python -m tests.benchmarks.parsing [--adverts N] [--offers N].

Parsing is told beside the price pattern alone on the same adverts in the same run: the ratio says what the rest
(terms, items, names, dates, the assignment) costs. One process, one core.
"""

from __future__ import annotations

import argparse
import cProfile
import pstats
import random
import time

from adminer.names.authority import Authorities, LineEntry, MakerEntry, RetailerEntry
from adminer.names.relink import Unlinked, relink
from adminer.parsing import parse_page
from adminer.parsing.money.amounts import find_amounts
from adminer.parsing.text.text import text_of
from adminer.records import Block, Box, PageReading, Region, Word

PIECES = (
    "Dinner plate",
    "Salad plate",
    "Cup and saucer",
    "Fruit dish",
    "Oval platter, 13-in.",
    "Sugar and cover",
    "Creamer",
)
FOODS = ("Family Flour 10 lbs", "Tomato Soup can", "Fresh Butter", "New Potatoes", "Soap Flakes large box", "Bananas")
FILLER = """a fresh and dainty pattern on a smooth ivory body begin with one setting and add to it as your
budget allows""".split()  # noqa: SIM905 -- reads as the sentence it is
LINES = ("Tansy Morn", "Silverthaw", "Copperwheat", "Winter Sorrel", "Quince Arbor", "Harvest Lane")


def some_names(count: int = 60) -> Authorities:
    """Return authority files of the invented country, with as many lines as a collector keeps."""
    lines = [
        LineEntry(id=f"line{i}", name=LINES[i] if i < len(LINES) else f"Invented Line {chr(65 + i % 26)}{i}")
        for i in range(count)
    ]
    return Authorities(
        lines=tuple(lines),
        makers=(MakerEntry(id="marrowstone", name="Marrowstone Pottery"),),
        retailers=(RetailerEntry(id="penhallow", name="Penhallow Stores", branches=("Ferncliff",)),),
    )


def advert(number: int, draw: random.Random, words: int = 100) -> PageReading:
    """Return the reading of an advert of about `words` words: heading, rows of items and prices, terms, signature."""
    lines = [(40, f"{draw.choice(LINES)}"), (14, "by Marrowstone Pottery"), (14, "Thurs., Fri., Sat., March 12-13-14")]
    used = 12
    while used < words - 20:
        item = draw.choice(PIECES + FOODS)
        price = (
            f"{draw.randrange(9, 99)}¢" if draw.random() < 0.7 else f"${draw.randrange(1, 9)}.{draw.randrange(10, 99)}"
        )
        lines.append((14, f"{item} . . . {price}"))
        used += len(item.split()) + 4
        if draw.random() < 0.15:
            lines.append((14, " ".join(draw.sample(FILLER, 8))))
            used += 8
    lines += [
        (14, "with each $5.00 purchase. Limit two to a customer. Plus tax."),
        (36, "Penhallow Stores"),
        (14, "114 Harbor Street, Ferncliff"),
    ]
    placed, y = [], 20
    for line, (px, text) in enumerate(lines):
        x = 20
        for token in text.split():
            width = round(0.55 * px * len(token))
            placed.append(Word(token, Box(x, y, width, px), float(px), 0.95, "display", line=line))
            x += width + px // 3
        y += round(1.6 * px)
    page = Box(0, 0, 800, y + 20)
    return PageReading(
        f"{number:016x}",
        800,
        y + 20,
        "newspaper",
        (Region(page, "advert", 0.9),),
        (Block(page, "text", 14.0),),
        tuple(placed),
    )


def main() -> None:
    """Print the two tables."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--adverts", type=int, default=1000)
    asked.add_argument("--offers", type=int, default=100_000)
    asked.add_argument("--profile", action="store_true", help="show where parsing spends its time")
    given = asked.parse_args()
    draw = random.Random(1952)
    names = some_names()
    readings = [advert(i, draw) for i in range(given.adverts)]
    parse_page(readings[0], names)

    begun = time.process_time()
    found = sum(len(find_amounts(text_of(reading.words).text)) for reading in readings)
    pattern = time.process_time() - begun
    profile = cProfile.Profile()
    if given.profile:
        profile.enable()
    begun = time.process_time()
    offers = sum(len(a.offers) for reading in readings for a in parse_page(reading, names))
    parsing = time.process_time() - begun
    profile.disable()
    words = sum(len(r.words) for r in readings) / len(readings)
    print(f"adverts {len(readings)}, words an advert {words:.0f}, prices {found}, offers {offers}")
    print(f"price pattern alone  {len(readings) / pattern:8.0f} adverts a CPU second")
    print(
        f"whole parsing        {len(readings) / parsing:8.0f} adverts a CPU second   {parsing / pattern:.1f} "
        f"times the pattern"
    )
    if given.profile:
        pstats.Stats(profile).sort_stats("tottime").print_stats(12)

    spelled = [name.replace("a", "o") if draw.random() < 0.2 else name for name in draw.choices(LINES, k=given.offers)]
    unlinked = [
        Unlinked(f"o{i}", f"Dinner plate {i % 997}", name if i % 3 else None, 1953, 1953)
        for i, name in enumerate(spelled)
    ]
    begun = time.process_time()
    linked = relink(unlinked, names)
    seconds = time.process_time() - begun
    print(f"re-linked {len(linked)} offers with {len(names.lines)} lines in {seconds:.2f} CPU seconds; aim: under 5")


if __name__ == "__main__":
    main()
