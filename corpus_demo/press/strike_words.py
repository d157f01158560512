"""What the numeral strikes say: prices in every form, and words and figures that are none."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Literal

Level = Literal["full", "raised", "above", "below"]
SYLLABLES = ("pla", "te", "cup", "sau", "cer", "din", "ner", "bow", "ls", "ea", "ch", "per", "on", "ly", "set", "of")
UNITS = ("lbs", "lb", "oz", "in", "ft", "pc", "th", "st", "nd", "pt", "qt", "doz", "yds", "A", "x", "X", "K", "%", "\"")  # fmt: skip


@dataclass(frozen=True, slots=True)
class Piece:
    """Hold glyphs set at one size; `space` is white before them in parts of the body."""

    text: str
    level: Level = "full"
    space: float = 0.0


@dataclass(frozen=True, slots=True)
class Struck:
    """Hold the pieces of one crop, what a reader should say of them, and the form."""

    pieces: tuple[Piece, ...]
    label: str
    form: str
    rule: bool = False


def _cents(rng: Random) -> str:
    return f"{rng.randint(1, 99)}" if rng.random() < 0.75 else rng.choice(("5", "9", "10", "19", "25", "29", "39", "49", "50", "59", "69", "79", "89", "98", "99"))  # fmt: skip


def _two(rng: Random) -> str:
    return f"{rng.randint(0, 99):02d}" if rng.random() < 0.6 else rng.choice(("00", "25", "50", "75", "95", "98", "49", "99"))  # fmt: skip


def _whole(rng: Random) -> str:
    size = rng.choices((9, 99, 999, 9999), (60, 30, 8, 2))[0]
    text = str(rng.randint(1, size))
    return f"{text[:-3]},{text[-3:]}" if len(text) > 3 else text


def _sign(rng: Random) -> str:
    return "c" if rng.random() < 0.4 else "¢"


def _plain(text: str, form: str, tail: str = "") -> Struck:
    return Struck((Piece(text + tail),), text + (tail if tail in ".,-" else ""), form)


def _fraction(rng: Random) -> tuple[tuple[Piece, ...], str]:
    """Return the pieces of a fraction and its character."""
    char, (above, below) = rng.choice((("½", "12"), ("½", "12"), ("¼", "14"), ("¾", "34"), ("⅓", "13")))
    if char != "⅓" and rng.random() < 0.45:
        return (Piece(char),), char
    return (Piece(above, "above", 0.03), Piece("/" if rng.random() < 0.5 else "⁄"), Piece(below, "below", -0.12)), char


def draw_struck(rng: Random) -> Struck:
    """Draw what one crop says."""
    tail = rng.choice(("", "", "", "", ".", ",", ";", ")", ":", "-"))
    kind = rng.choices(
        ("point", "cents", "raised", "raised_bare", "raised_sign", "multiple", "fraction", "figures", "sterling", "whole", "word", "mixed"),
        (18, 19, 13, 6, 9, 7, 6, 9, 6, 5, 9, 9),
    )[0]  # fmt: skip
    match kind:
        case "point":
            sign = "$" if rng.random() < 0.8 else ""
            return _plain(f"{sign}{'' if rng.random() < 0.1 else _whole(rng)}.{_two(rng)}", "dollars_point", tail)
        case "cents":
            count, sign = _cents(rng), _sign(rng)
            if rng.random() < 0.2:
                return Struck((Piece(count), Piece(sign, space=rng.uniform(0.05, 0.2))), count + sign, "cents_sign")
            return _plain(count + sign, "cents_sign", tail)
        case "raised":
            whole, cents = _whole(rng), _two(rng)
            pieces: tuple[Piece, ...] = (Piece("$" + whole), Piece(cents, "raised"))
            if rng.random() < 0.3:
                pieces = (Piece("$", "raised"), Piece(whole), Piece(cents, "raised"))
            return Struck(pieces, f"${whole}^{cents}", "raised_cents", rng.random() < 0.4)
        case "raised_bare":
            whole, cents = _whole(rng), _two(rng)
            return Struck((Piece(whole), Piece(cents, "raised")), f"{whole}^{cents}", "raised_cents_bare", rng.random() < 0.4)  # fmt: skip
        case "raised_sign":
            count, sign = _cents(rng), _sign(rng)
            return Struck((Piece(count), Piece(sign, "raised")), f"{count}^{sign}", "raised_cent_sign")
        case "multiple":
            return _multiple(rng)
        case "fraction":
            parts, char = _fraction(rng)
            count = str(rng.randint(1, 60))
            sign = rng.choice((_sign(rng), _sign(rng), "", "d"))
            end = (Piece(sign),) if sign else ()
            return Struck((Piece(count), *parts, *end), f"{count}{char}{sign}", "fraction")
        case "figures":
            return _plain(str(rng.randint(0, 10 ** rng.randint(1, 4))), "bare", tail)
        case "sterling":
            text = rng.choice((f"{rng.randint(1, 60)}/{rng.randint(0, 11)}", f"{rng.randint(1, 99)}/-", f"{rng.randint(1, 11)}d", f"£{rng.randint(1, 30)}", f"{rng.randint(1, 30)}/{rng.randint(1, 11)}d"))  # fmt: skip
            return _plain(text, "sterling", "" if text.endswith("-") else tail.replace("-", ""))
        case "whole":
            return _plain(f"${_whole(rng)}", "dollars_whole", tail)
        case "word":
            word = "".join(rng.choice(SYLLABLES) for _ in range(rng.randint(1, 3)))
            word = rng.choice((word, word.capitalize(), word.upper()))
            return Struck((Piece(word),), "?", "other")
        case _:
            return _mixed(rng)


def _multiple(rng: Random) -> Struck:
    quantity = str(rng.randint(2, 12))
    amount = rng.choice((_cents(rng) + _sign(rng), f"${rng.randint(1, 5)}", f"${rng.randint(1, 5)}.{_two(rng)}"))
    if rng.random() < 0.5:
        return _plain(f"{quantity}/{amount}", "multiple")
    pieces = (Piece(quantity), Piece(rng.choice(("for", "for", "FOR")), rng.choice(("full", "below", "below")), 0.2), Piece(amount, space=0.2))  # fmt: skip
    return Struck(pieces, f"{quantity}f{amount}", "multiple")


def _mixed(rng: Random) -> Struck:
    """Return figures that are no price: sizes, weights, model numbers, years."""
    figures = str(rng.randint(1, 400))
    unit = rng.choice(UNITS)
    match rng.randint(0, 4):
        case 0 | 1:
            return Struck((Piece(figures + unit),), f"{figures}?", "other")
        case 2:
            other = rng.randint(2, 99)
            return Struck((Piece(f"{figures}{rng.choice('xX×')}{other}"),), f"{figures}?{other}", "other")
        case 3:
            return Struck((Piece(rng.choice(("No.", "No. ", "#", "'", "Lot ", "P.T. "))), Piece(figures)), f"?{figures}", "other")  # fmt: skip
        case _:
            return _plain(str(rng.randint(1890, 1979)), "bare", rng.choice(("", ".", ",")))
