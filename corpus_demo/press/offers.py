"""Draws the offers of a random story: pieces and sets at prices of their year, with and without the card."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from random import Random

from .facts import Item, SetOf, Tag
from .staples import level
from .world import Line, Programme


@dataclass(frozen=True, slots=True)
class Piece:
    """Hold a piece of tableware: its id, the words it goes by, and a price in cents of about 1953."""

    id: str
    words: tuple[str, ...]
    plural: str
    cents: float


PIECES = (
    Piece("dinner_plate", ("Dinner plate", "Large plate", "10-inch plate"), "dinner plates", 39),
    Piece("salad_plate", ("Salad plate", "7-inch plate"), "salad plates", 29),
    Piece("bread_and_butter", ("Bread and butter plate", "Bread & butter"), "bread and butters", 19),
    Piece("cup", ("Cup", "Tea cup"), "cups", 25),
    Piece("saucer", ("Saucer", "Tea saucer"), "saucers", 18),
    Piece("fruit_dish", ("Fruit dish", "Sauce dish", "Dessert dish"), "fruits", 19),
    Piece("soup_plate", ("Soup plate", "Rim soup"), "soup plates", 35),
    Piece("coupe_soup", ("Coupe soup",), "coupe soups", 35),
    Piece("cereal_dish", ("Cereal bowl", "Oatmeal"), "cereals", 27),
    Piece("platter", ("Oval platter", "Platter, 13-in."), "platter", 119),
    Piece("chop_plate", ("Chop plate",), "chop plate", 139),
    Piece("vegetable_dish", ("Open vegetable", "Round vegetable"), "vegetable", 98),
    Piece("creamer", ("Creamer", "Cream pitcher"), "creamer", 69),
    Piece("covered_sugar", ("Covered sugar", "Sugar and cover"), "covered sugar", 98),
    Piece("gravy_boat", ("Gravy boat", "Fast-stand gravy"), "gravy boat", 129),
    Piece("covered_vegetable", ("Covered casserole", "Covered vegetable"), "covered vegetable", 225),
    Piece("butter_dish", ("Covered butter dish",), "covered butter", 125),
    Piece("salt_and_pepper", ("Salt and pepper set", "Salt & pepper shakers"), "salt and pepper", 89),
    Piece("teapot", ("Teapot with cover",), "teapot", 195),
    Piece("cake_plate", ("Cake plate", "Handled cake plate"), "cake plate", 115),
    Piece("tidbit_tray", ("Tid-bit tray", "3-tier tray"), "tid-bit tray", 245),
)
BY_ID = {piece.id: piece for piece in PIECES}
SETTINGS = {
    4: ("dinner_plate", "bread_and_butter", "cup", "saucer"),
    5: ("dinner_plate", "salad_plate", "bread_and_butter", "cup", "saucer"),
}
SERVING = (("platter", 1), ("vegetable_dish", 1), ("creamer", 1), ("covered_sugar", 1))


def charm(cents: float, rng: Random) -> Decimal:
    """Round to a figure a shop would print."""
    whole = round(cents)
    if whole < 15:
        return Decimal(max(whole, 3)) / 100
    ending = rng.choice((9, 9, 9, 8, 5, 7))
    value = whole // 10 * 10 + ending
    if value - whole > 5:
        value -= 10
    return Decimal(value) / 100


def price_level(year: int) -> float:
    """Return how dear tableware was against 1953; it moved less than food did."""
    return float((level(year) / level(1953)) ** 0.6)


def carded_item(
    words: str, cents: float, programme: Programme, year: int, rng: Random, piece: str, composition: SetOf | None = None
) -> Item:
    """Draw an item of a programme at its two prices."""
    low = charm(cents * programme.dear * price_level(year), rng)
    high = charm(float(low) * 100 * rng.uniform(1.4, 1.9), rng)
    tags = (
        Tag(low, 1, None, "cardholder", programme.labels[0]),
        Tag(high, 1, None, "without_card", programme.labels[1]),
    )
    return Item(words, tags, line=programme.line.id, composition=composition, piece=piece)


def single(piece: Piece, programme: Programme, year: int, rng: Random) -> Item:
    """Draw one piece of open stock."""
    return carded_item(rng.choice(piece.words), piece.cents, programme, year, rng, piece.id)


def service(stated: int, rng: Random) -> tuple[str, str, SetOf, float]:
    """Draw a set by its number of pieces; return its words, piece id, contents and price in cents of about 1953."""
    if stated in SETTINGS:
        ids = SETTINGS[stated]
        listed = tuple((piece, 1, BY_ID[piece].words[0].lower()) for piece in ids)
        words = rng.choice((f"{stated}-pc. place setting", f"{stated}-piece place setting"))
        return words, "place_setting", SetOf(stated, listed), sum(BY_ID[p].cents for p in ids) * 0.9
    each = {16: (4, 4), 20: (4, 5), 32: (6, 5), 45: (8, 5), 53: (8, 6)}[stated]
    five = ("dinner_plate", "bread_and_butter", "fruit_dish", "cup", "saucer", "soup_plate")
    kinds = ("dinner_plate", "fruit_dish", "cup", "saucer") if each[1] == 4 else five[: each[1]]
    listed = tuple((piece, each[0], f"{each[0]} {BY_ID[piece].plural}") for piece in kinds)
    if stated == 32:
        listed += tuple((piece, 1, BY_ID[piece].plural) for piece, _ in SERVING[:2])
    elif stated > 32:
        listed += tuple((piece, count, BY_ID[piece].plural) for piece, count in SERVING)
    cents = sum(BY_ID[piece].cents * count for piece, count, _ in listed) * 0.75
    kind = "starter_set" if stated == 16 else "dinner_set"
    endings = {16: "starter set", 20: "set, service for 4", 32: "set, service for 6"}
    return f"{stated}-piece {endings.get(stated, 'service for 8')}", kind, SetOf(stated, listed), cents


def set_item(stated: int, programme: Programme, year: int, rng: Random) -> Item:
    """Draw a set of a programme."""
    words, kind, contents, cents = service(stated, rng)
    return carded_item(words, cents, programme, year, rng, kind, contents)


def store_item(line: Line, year: int, rng: Random, words: tuple[str, str], stated: int | None) -> Item:
    """Draw a department store's offer with a former or comparable price."""
    if stated:
        text, kind, contents, cents = service(stated, rng)
        composition: SetOf | None = contents
    else:
        piece = rng.choice(PIECES)
        text, kind, composition, cents = rng.choice(piece.words), piece.id, None, piece.cents * 1.3
    now = charm(cents * price_level(year) * rng.uniform(0.8, 1.3), rng)
    was = charm(float(now) * 100 * rng.uniform(1.3, 1.7), rng)
    former = words[1].lower() in ("formerly", "was", "reg.", "regularly", "usually")
    tags = (
        Tag(now, 1, None, "everyone", words[0]),
        Tag(was, 1, None, "former" if former else "comparison", words[1], "reference"),
    )
    return Item(text, tags, line=line.id, line_text=line.name, composition=composition, piece=kind)
