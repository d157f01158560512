"""What an advert says, before anyone sets it in type: frozen records that the story writes and the styles set."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import Literal

from adminer.records import Condition, PriceForm, PriceRole

Source = Literal["newsprint", "microfilm", "photocopy", "magazine", "catalogue", "phone"]
Motif = Literal["tansy", "frost", "wheat", "sorrel", "quince", "star", "band", "plain"]


@dataclass(frozen=True, slots=True)
class Tag:
    """Hold one printed price; the amount is dollars for the whole quantity."""

    amount: Decimal
    quantity: int = 1
    unit: str | None = None  # lb, doz, each, pair, set, week, month
    condition: Condition = "everyone"
    label: str = ""  # the printed words of the condition ("with Penhallow card")
    role: PriceRole = "price"
    form: PriceForm | None = None  # None lets the look choose
    item: str | None = None  # printed words this price is for, where they differ from the item's


@dataclass(frozen=True, slots=True)
class SetOf:
    """Hold what a set is said and listed to contain; listed pairs are (piece id, count, printed words)."""

    stated: int | None
    listed: tuple[tuple[str, int, str], ...] = ()
    words: str = ""  # as printed, where no list is printed


@dataclass(frozen=True, slots=True)
class Item:
    """Hold one thing on offer with its prices."""

    text: str
    tags: tuple[Tag, ...]
    line: str | None = None  # line id
    line_text: str | None = None  # the name as printed
    blurb: str = ""
    composition: SetOf | None = None
    number: str = ""  # catalogue number
    size: str = ""  # part of what is bought: "10-lb. bag"
    shipping: str = ""  # mail order: weight or postage
    piece: str = ""  # piece id of the vocabulary
    department: str = ""  # meats, produce, dairy, grocery, housewares


@dataclass(frozen=True, slots=True)
class Term:
    """Hold one printed condition: kind as in records.ConditionText (or "notice"), the words, and its value."""

    kind: str
    text: str
    value: str | None = None


@dataclass(frozen=True, slots=True)
class When:
    """Hold printed words of a date with what they mean in EDTF; None where no reader could know the year."""

    text: str
    edtf: str | None


@dataclass(frozen=True, slots=True)
class AdvertSpec:
    """Hold one advert: who, where, when, what, on which terms, and the style that sets it."""

    style: str
    retailer: str  # retailer id
    retailer_text: str  # as printed
    items: tuple[Item, ...]
    headline: str
    town: str | None = None
    valid: tuple[date, date] | None = None
    when: When | None = None
    expiry: When | None = None
    kicker: str = ""
    copy: tuple[str, ...] = ()  # paragraphs of selling copy
    terms: tuple[Term, ...] = ()
    line: str | None = None
    line_text: str | None = None
    maker_text: str = ""
    addresses: tuple[str, ...] = ()
    schedule: tuple[tuple[str, str, str], ...] = ()  # (week, piece id, printed piece)
    schedule_title: str = ""
    motif: Motif = "plain"
    continued: str = ""  # "Continued on next page"
    slogan: str = ""


@dataclass(frozen=True, slots=True)
class Wear:
    """Hold what happened to one sheet between the press and the scanner."""

    source: Source
    skew: float = 0.0  # degrees
    curl: float = 0.0  # pixels of displacement at the gutter
    fold: float | None = None  # height of a fold as a share of the page
    tear: bool = False
    spread: float = 0.35  # ink spread, 0 none to 1 heavy
    show_through: float = 0.0
    light: float = 0.15  # unevenness of light
    grain: float = 0.05
    perspective: float = 0.0
    blackout: bool = False  # beyond reading


@dataclass(frozen=True, slots=True)
class ScanSpec:
    """Hold one sheet: its adverts, its look, its wear, its file and what the owner noted about it."""

    file: str
    adverts: tuple[AdvertSpec, ...]
    seed: int
    width: int  # pixels of the finished sheet before wear
    base: float  # pixels of one em of body type
    wear: Wear
    published: date | None  # the true date; None only where nobody could say
    publication: str | None = None
    city: str | None = None
    page: str = ""
    noted: bool = True  # whether notes.csv gives the date
    sheet: str = "single"  # single, two_up, page (adverts beside news), page_foot (below news)
    look: str | None = None
    ad_type: str = "dinnerware promotion"
    found_in: str = ""
    remark: str = ""
    recipe: str = ""
    continues: str = ""
    readable: bool = True
    leaf_of: str | None = None  # file this sheet is a later leaf of
    remarks: tuple[str, ...] = field(default=())
