"""The nouns that pass between the stages: frozen records without behaviour.

Every box is in pixels of the original scan (as decoded and turned upright by its EXIF tag), origin
top left. Amounts are Decimal, never float. Confidences are probabilities between 0 and 1.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import Final, Literal, get_args

from adminer.box import Box as Box  # noqa: PLC0414 - the nouns are imported from here, and it is one of them

Reader = Literal["tesseract", "display", "numeral", "person"]
RegionKind = Literal["advert", "editorial", "masthead"]
BlockKind = Literal["text", "reversed", "picture", "table"]
PriceForm = Literal[
    "dollars_point",  # $1.39
    "dollars_whole",  # $5
    "cents_sign",  # 69¢, 69c, 69 cents
    "multiple",  # 2/25¢, 2 for 25¢
    "raised_cents",  # $1 followed by small raised 39
    "raised_cents_bare",  # 1 followed by small raised 39, no dollar sign
    "raised_cent_sign",  # 69 followed by a small raised ¢
    "fraction",  # 12½¢
    "bare",  # 1.39 or 39 in a row or table, no sign
    "words",  # seventy cents
    "sterling",  # 2/9, 11½d., 30/-
    "piastres",  # P.T. 20
]
Condition = Literal[
    "everyone",
    "cardholder",
    "without_card",
    "coupon",
    "with_purchase",
    "stamps",
    "former",
    "comparison",
]
_OF_OFFERS: Final = (
    "punch_card limit expiry mail_order postage deposit instalments tax while_they_last rain_check free open_stock "
    "schedule cash guarantee saving trade_in combination fixed_price"
)
CONDITION_KINDS: Final = frozenset([*get_args(Condition), *_OF_OFFERS.split()])  # of printed conditions
PriceRole = Literal[
    "price", "range_low", "range_high", "from", "up_to", "down_payment", "instalment", "postage", "reference", "saving"
]
OfferStatus = Literal["read", "confirmed", "corrected", "rejected"]


@dataclass(frozen=True, slots=True)
class Note:
    """Hold one row of notes.csv: what the owner of the file wrote about a scan."""

    file: str
    publication: str | None = None
    published: str | None = None  # EDTF
    city: str | None = None
    state: str | None = None
    page: str | None = None
    found_in: str | None = None
    rights: str | None = None
    remark: str | None = None
    recipe: str | None = None
    continues: str | None = None  # file whose advert goes on here


@dataclass(frozen=True, slots=True)
class Clipping:
    """Hold one picture of the file: a scan, or one leaf of a scan with several."""

    clipping_id: str  # first 16 hex digits of the content hash, "-2" and so on for later leaves
    file: str  # path below scans/, with forward slashes
    sha256: str
    leaf: int  # 1 for the first page of the file
    width: int
    height: int
    kind: str  # recipe name used
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True, slots=True)
class Word:
    """Hold one word as read, with its place and how sure the reader was."""

    text: str
    box: Box
    type_px: float  # capital (or figure) height of its type in pixels of the original scan
    confidence: float
    reader: Reader
    region: int = 0  # index into PageReading.regions
    block: int = 0  # index into PageReading.blocks
    line: int = 0  # text lines of the page numbered in reading order; the cells of a row of a table share theirs
    form: PriceForm | None = None  # set where geometry settled a numeral (raised cents and the like)


@dataclass(frozen=True, slots=True)
class Block:
    """Hold one block of type: text of one size and column, or a dark panel."""

    box: Box
    kind: BlockKind
    type_px: float
    region: int = 0


@dataclass(frozen=True, slots=True)
class Region:
    """Hold one advert (or piece of editorial matter) found on a page."""

    box: Box
    kind: RegionKind
    confidence: float


@dataclass(frozen=True, slots=True)
class PageReading:
    """Hold all that layout and reading found on one picture; what .readings/ stores."""

    clipping_id: str
    width: int
    height: int
    recipe: str
    regions: tuple[Region, ...]
    blocks: tuple[Block, ...]
    words: tuple[Word, ...]  # in reading order
    rules: tuple[Box, ...] = ()  # printed rules (thin lines), long side along the rule
    dpi: float | None = None
    remarks: tuple[str, ...] = ()  # what went wrong or was guessed, in plain words


@dataclass(frozen=True, slots=True)
class Price:
    """Hold one printed price of an offer."""

    amount: Decimal  # in the currency's main unit for the whole per_quantity ("2 for 25c" is 0.25 with 2)
    currency: str  # USD, GBP, EGP-piastre, AUP
    box: Box
    confidence: float
    text: str  # as printed
    form: PriceForm
    per_quantity: Decimal = Decimal(1)
    per_unit: str | None = None  # lb, doz, each, pair, set, week ...
    condition: Condition = "everyone"
    condition_text: str | None = None
    role: PriceRole = "price"


@dataclass(frozen=True, slots=True)
class PieceCount:
    """Hold one kind of piece in a set: how many of which."""

    piece: str  # piece id of the vocabulary, for instance "dinner_plate"
    count: int
    text: str  # as printed


@dataclass(frozen=True, slots=True)
class Composition:
    """Hold what a set consists of, keeping stated, listed and implied apart."""

    stated: int | None = None  # "45-piece set"
    service_for: int | None = None
    listed: tuple[PieceCount, ...] = ()
    listed_sum: int | None = None  # by the counting rule that closes, else the trade's
    implied: int | None = None  # what the trade's convention gives for the service
    closes: Literal["trade", "resale", "both", "neither"] | None = None
    likely: str | None = None  # "claimed 57, listed 52: probable misreading of 52"


@dataclass(frozen=True, slots=True)
class Link:
    """Hold the match of a printed name with an authority entry."""

    entry_id: str | None  # None when the name stays ambiguous or unknown
    name: str  # preferred name, or the printed one where unknown
    text: str  # as printed
    box: Box
    score: float
    why: str
    candidates: tuple[str, ...] = ()
    warning: str | None = None  # "not introduced before 1949"
    kind: Literal["line", "maker"] = "line"  # what a name without an entry is proposed as


@dataclass(frozen=True, slots=True)
class ConditionText:
    """Hold one printed condition of an offer or advert ("limit one", "coupon expires Sat.")."""

    kind: str  # one of CONDITION_KINDS
    text: str
    box: Box
    confidence: float
    value: str | None = None  # the minimum purchase, the limit, the expiry as EDTF


@dataclass(frozen=True, slots=True)
class Offer:
    """Hold what was offered: an item or set with its prices and terms."""

    offer_id: str
    advert_id: str
    item: str
    box: Box  # around item text and prices
    confidence: float
    prices: tuple[Price, ...]
    piece_or_set: str | None = None  # piece id, "set:<n>", "place_setting", "open_stock" ...
    pieces: int | None = None
    composition: Composition | None = None
    quantity: Decimal | None = None
    unit: str | None = None
    line: Link | None = None
    maker: Link | None = None
    conditions: tuple[ConditionText, ...] = ()
    why: str = ""  # the rule that paired item and price, in plain words
    status: OfferStatus = "read"


@dataclass(frozen=True, slots=True)
class DateFact:
    """Hold one date read from an advert or page."""

    kind: Literal["validity", "dateline", "expiry", "printed"]
    text: str
    edtf: str | None  # "XXXX-11-08" where the year stays unknown; None where no day is, or one is misread
    earliest: date | None
    latest: date | None
    box: Box
    confidence: float
    weekdays: tuple[int, ...] = ()  # Monday is 0, as printed
    month_days: tuple[tuple[int, int], ...] = ()  # (month, day) pairs as printed, year unknown


@dataclass(frozen=True, slots=True)
class Advert:
    """Hold one advert of one clipping with everything read from it."""

    advert_id: str  # clipping id, "-a", number from 1 in reading order
    clipping_id: str
    box: Box
    confidence: float
    retailer: Link | None = None
    city: str | None = None
    addresses: tuple[str, ...] = ()
    dates: tuple[DateFact, ...] = ()
    valid_from: date | None = None
    valid_to: date | None = None
    dated_by: str | None = None  # printed, note, estimate
    offers: tuple[Offer, ...] = ()
    conditions: tuple[ConditionText, ...] = ()
    schedule: tuple[tuple[int, str], ...] = ()  # (week number, piece id) of a printed schedule of weeks
    unknown_names: tuple[Link, ...] = ()  # names proposed by grammar or type, without an entry


@dataclass(frozen=True, slots=True)
class ParsedPage:
    """Hold one clipping with its adverts, ready for loading."""

    clipping: Clipping
    reading: PageReading
    adverts: tuple[Advert, ...]
    word_adverts: tuple[str | None, ...] = field(default=())  # advert id of each word of reading.words
