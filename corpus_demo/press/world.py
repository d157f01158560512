"""Another invented country for a held-out story: its towns, shops, makers, lines, and the run of each card programme."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from random import Random
from typing import get_args

from .era import Town
from .facts import Motif

TOWN_HEADS = (
    "Alder",
    "Brack",
    "Cinder",
    "Eller",
    "Fallow",
    "Garn",
    "Hazel",
    "Ivel",
    "Kestrel",
    "Lorn",
    "Mallow",
    "Nether",
    "Pell",
    "Rudd",
    "Sedge",
    "Vetch",
    "Yarrow",
)
TOWN_TAILS = ("combe", "ferry", "holt", "mere", "stead", "thwaite", "bourne", "ness", "garth", "wick")
SHOP_HEADS = (
    "Ormsgill",
    "Tredlow",
    "Larkhope",
    "Sallowby",
    "Bexholme",
    "Corriden",
    "Dapplewood",
    "Fenwither",
    "Gorsedene",
    "Hartlow",
    "Ketterby",
    "Mossgrave",
    "Nunwick",
    "Pettigarth",
    "Roxendale",
    "Stannerby",
)
CHAIN_TAILS = ("Stores", "Markets", "Food Stores", "Grocery Co.", "Food Markets")
MAKER_HEADS = (
    "Cloverside",
    "Brindlestone",
    "Wyvern Hill",
    "Saltfleet",
    "Heronsgate",
    "Amberley Ford",
    "Quarrendon",
    "Stonecrop",
    "Thistledown",
    "Peverel",
)
MAKER_TAILS = ("Pottery", "China Company", "China Works", "Potteries", "Ceramic Company")
LINE_HEADS = (
    "Dappled",
    "Larkrise",
    "Candlewick",
    "Silver",
    "Golden",
    "Evening",
    "Meadow",
    "Garland",
    "Russet",
    "Autumn",
    "Dewy",
    "Harvest",
    "Lantern",
    "Midsummer",
    "Pearl",
    "Rambling",
    "Sunlit",
    "Velvet",
    "Woodland",
    "Blue",
)
LINE_TAILS = (
    "Teasel",
    "Bryony",
    "Sedge",
    "Plover",
    "Catkin",
    "Spindle",
    "Mallow",
    "Heron",
    "Vetch",
    "Campion",
    "Burdock",
    "Linnet",
    "Medlar",
    "Hawthorn",
    "Rowan",
    "Fescue",
    "Damson",
    "Clover",
    "Sage",
    "Tamarisk",
)
PAPERS = ("Courier", "Ledger", "Sentinel", "Advertiser", "Evening News", "Gazette")


@dataclass(frozen=True, slots=True)
class Shop:
    """Hold an invented shop."""

    id: str
    name: str
    kind: str
    towns: tuple[Town, ...]


@dataclass(frozen=True, slots=True)
class Line:
    """Hold an invented line with the years it was made, and those a researcher's file gives for it."""

    id: str
    name: str
    maker: str
    first_year: int
    last_year: int
    known: tuple[int, int]
    decal: str
    motif: Motif
    other_name: str | None  # what the decal supplier or another shop called it


@dataclass(frozen=True, slots=True)
class Programme:
    """Hold a card programme: weekly from its first day."""

    shop: Shop
    line: Line
    labels: tuple[str, str]
    start: date
    weeks: int
    dear: float  # price against the usual


@dataclass(frozen=True, slots=True)
class World:
    """Hold everything a story draws on."""

    towns: tuple[Town, ...]
    shops: tuple[Shop, ...]
    makers: tuple[tuple[str, str], ...]
    lines: tuple[Line, ...]
    programmes: tuple[Programme, ...]
    papers: dict[str, str]


def _id(name: str) -> str:
    return "_".join("".join(c if c.isalnum() else " " for c in name.lower()).split())


def make_world(seed: int, size: int) -> World:
    """Draw a world large enough for a story of `size` scans."""
    rng = Random(f"world {seed}")
    heads = rng.sample(TOWN_HEADS, 4)
    towns = tuple(
        Town(
            head + rng.choice(TOWN_TAILS),
            k == 0,
            f"{rng.randint(10, 89)}{rng.randint(100, 999)}",
            rng.randint(1931, 1957),
            rng.randint(1958, 1968),
        )
        for k, head in enumerate(heads)
    )
    names = rng.sample(SHOP_HEADS, 6)
    chains = tuple(
        Shop(_id(n), f"{n} {tail}", "chain", tuple(rng.sample(towns, 3)))
        for n, tail in zip(names, rng.sample(CHAIN_TAILS, 4), strict=False)
    )
    stores = (
        Shop(_id(names[4]), f"{names[4]}'s", "department_store", towns[:1]),
        Shop(_id(names[5]), f"{names[5]} & Daughters", "mail_order", towns[1:2]),
    )
    makers = tuple((_id(n), f"{n} {rng.choice(MAKER_TAILS)}") for n in rng.sample(MAKER_HEADS, 3))
    lines = _lines(rng, makers, max(6, size // 10))
    programmes = tuple(_programme(rng, line, chains) for line in lines for _ in range(rng.choice((1, 1, 2))))
    papers = {town.name: f"The {town.name} {rng.choice(PAPERS)}" for town in towns}
    return World(towns, (*chains, *stores), makers, lines, programmes, papers)


def _lines(rng: Random, makers: tuple[tuple[str, str], ...], count: int) -> tuple[Line, ...]:
    pairs = [f"{head} {tail}" for head in LINE_HEADS for tail in LINE_TAILS]
    drawn = rng.sample(pairs, min(2 * count, len(pairs)))
    found = []
    for k in range(min(count, len(drawn) // 2)):
        first = rng.randint(1937, 1962)
        last = first + rng.randint(2, 12)
        other = drawn[len(drawn) // 2 + k] if rng.random() < 0.35 else None
        motif = rng.choice(get_args(Motif)[:6])
        found.append(
            Line(
                _id(drawn[k]),
                drawn[k],
                rng.choice(makers)[0],
                first,
                last,
                _known(first, last, rng),
                str(rng.randint(1100, 9899)),
                motif,
                other,
            )
        )
    return tuple(found)


def _known(first: int, last: int, rng: Random) -> tuple[int, int]:
    """Draw the years a file gives: those of catalogues and marks seen, so late and short as often as right, a few wrong.

    Common practice, no source.
    """
    if rng.random() < 0.05:
        shift = rng.choice((-5, -3, 3, 5))
        return first + shift, last + shift
    start = first + rng.choice((0, 0, 1, 2))
    return start, max(start, last - rng.choice((0, 0, 1, 2)))


def _programme(rng: Random, line: Line, chains: tuple[Shop, ...]) -> Programme:
    shop = rng.choice(chains)
    short = shop.name.split()[0]
    labels = rng.choice(
        (
            (f"with {short} card", "without card"),
            ("card price", "regular price"),
            ("with your card", "without card"),
            ("to card holders", "to others"),
        )
    )
    year = rng.randint(max(1938, line.first_year), min(1964, line.last_year))
    if line.last_year < 1962 and rng.random() < 0.12:
        # chains bought up discontinued patterns ("close-out", trade.md E.2); how often is common practice, no source
        year = line.last_year + rng.choice((1, 1, 2))
    start = date(year, 1, 1) + timedelta(rng.randint(0, 230))
    start += timedelta((3 - start.weekday()) % 7)
    return Programme(shop, line, labels, start, rng.randint(8, 18), rng.uniform(0.8, 1.25))


def names_files(world: World) -> dict[str, str]:
    """Write the authority files of the world."""
    lines = []
    for line in world.lines:
        own = [
            f'[[line]]\nid = "{line.id}"\nname = "{line.name}"\nmaker = "{line.maker}"\nfirst_year = {line.known[0]}\nlast_year = {line.known[1]}\ndecal = "{line.decal}"'
        ]
        if line.other_name:
            own.append(
                f'names = [{{ name = "{line.other_name}", used_by = "retailer", from = {line.known[0]}, to = {line.known[1]}, source = "adverts" }}]'
            )
        lines.append("\n".join(own))
    makers = [f'[[maker]]\nid = "{key}"\nname = "{name}"\n' for key, name in world.makers]
    shops = []
    for shop in world.shops:
        branches = ", ".join(f'"{town.name}"' for town in shop.towns)
        shops.append(
            f'[[retailer]]\nid = "{shop.id}"\nname = "{shop.name}"\nkind = "{shop.kind}"\nbranches = [{branches}]\n'
        )
    return {
        "lines.toml": "\n\n".join(lines) + "\n",
        "makers.toml": "\n".join(makers),
        "retailers.toml": "\n".join(shops),
    }
