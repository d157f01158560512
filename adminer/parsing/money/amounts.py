"""The price grammar: find every printed amount in a text, with its currency, quantity and typographic form.

The grammar knows the forms of American grocery and department-store adverts of 1890 to 1980
("$1.39", "69¢", "2 for 25c", "3/$1", "12½¢", "seventy cents"); shillings, pence and piastres are in
`foreign`. It finds spans; what a price is for and on which terms is settled later.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from price_parser import Price as CleanPrice

from adminer.parsing.text.stretches import is_taken
from adminer.records import PriceForm


@dataclass(frozen=True, slots=True)
class Amount:
    """Hold one amount found in a text by its characters start to end."""

    start: int
    end: int
    amount: Decimal  # main unit of the currency, for the whole quantity
    currency: str
    form: PriceForm
    trust: float  # how sure the form alone makes it, 0 to 1
    quantity: Decimal = Decimal(1)
    unit: str | None = None
    spaced: bool = False  # dollars and cents parted by a space: geometry must confirm
    listed: bool = False  # gets its sign from a later figure of the same list ("9, 18 and 25 P.T.")


FRACTIONS: Final[dict[str, Decimal]] = {
    "½": Decimal("0.5"),
    "¼": Decimal("0.25"),
    "¾": Decimal("0.75"),
    "⅓": Decimal(1) / 3,
    "⅔": Decimal(2) / 3,
    "⅛": Decimal("0.125"),
    "⅜": Decimal("0.375"),
    "⅝": Decimal("0.625"),
    "⅞": Decimal("0.875"),
}
FRACTION: Final = r"(?:[½¼¾⅓⅔⅛⅜⅝⅞]|(?<=[ \-])[1-7]/[2-8](?!\d))"
NUMBER_WORDS: Final[dict[str, int]] = {
    word: number
    for number, word in enumerate(
        [
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen",
            "twenty",
        ]
    )
} | {"thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "dozen": 12}
_WORD_NUMBER: Final = r"(?:" + "|".join(NUMBER_WORDS) + r")(?:[ \-](?:one|two|three|four|five|six|seven|eight|nine))?"
# A misread ¢ comes as c, C, e-free forms only: "25e" is left to the reader of the numerals.
# The letter c with figures after it belongs to a stock number ("38C1402").
CENT_SIGN: Final = r"(?:[¢ç]|(?:cents?|cts?|c)(?:(?![a-z]|\d{2})|(?=(?:to|lb|doz|ea|yd)\b)|(?-i:(?<=c)(?=[A-Z]{4}))))"

_NAMED: Final = {"half": "½", "quarter": "¼", "three": "¾"}
_WORN_CENTS: Final = r"(?:[ce][eco][nro]t[sz:]|ets|[ce]emts|eents?)"  # "eents", "conts", "ceots"

_DOLLARS: Final = re.compile(
    # the points before a sign are leaders ("Peat moss......$3.45"); after a figure they are part of a number
    r"(?<!\d)(?<!\d[.,])(?:(?P<sign>\$)(?:\.(?=\d{1,3}\.\d\d(?!\d)))?|"  # a speck behind the sign is no point
    r"(?<![A-Za-z0-9.,])[S§](?=\d{1,3}[.,]\d\d(?!\d)|\d{1,2}-\d\d(?![\d-]))) ?"
    # a point before three figures, the last a nought, is a comma that lost its tail: "$4.200"
    r"(?:(?P<whole>\d{1,3}(?:,\d{3})+(?!\d)|\d{1,3}\.\d\d0(?![\d/])|\d{1,6})"
    r"(?:(?P<sep>[.,·:]|(?:(?<=[S§]\d)|(?<=[S§]\d\d))-|"
    r"(?<=\d) (?!\d\d(?: ?¢| ?(?:piece|pc|pcs|lbs?|oz|inch|in|x)\b|-(?:pc|piece|in))))"
    r"(?P<cents>\d\d)(?P<frac>[½¼¾⅛⅜⅝⅞]|(?P<worn>12(?!\d)|%|1/2))?(?![\d%/½]|[.,]\d))?"
    r"|\.(?P<only>\d\d)(?!\d))",
)
_CENTS: Final = re.compile(
    rf"(?<![\d,$])(?<!\d\.)\.?(?P<cents>\d{{1,3}}(?:(?<=\d\d)\.9)?)(?P<frac>[ \-]?{FRACTION})? ?"  # petrol: "28.9c"
    rf"(?P<sign>{CENT_SIGN}|(?<!\d\d\d)°(?! ?[FC]\b)|(?<= ){_WORN_CENTS}(?!\w))",
    re.IGNORECASE,
)
_SLASHED: Final = re.compile(r"(?<![\w$£.,/])(?P<q>[2-9])[1lI|](?P<cents>[1-9]\d)(?:¢|cts?\b|c\b)")  # a slash read as 1
_POINT: Final = re.compile(
    r"(?:(?<![\w$£.,/])|(?<=\b[2-9]/))\.(?P<cents>\d\d)(?P<frac>[½¼¾])?(?![\d%]| ?(?:(?:in|inch|oz)\b|[x×] ?\d))"
)
_BARE: Final = re.compile(
    r"(?:(?<![\w$£.,:/#\-])|(?<=\.\.)|(?<=\b[2-9]/)|(?<=[A-Za-z]{3}-))(?<![x×])(?<![x×] )"  # "33 x 6.00" is a tyre
    r"(?P<whole>\d{1,3}(?:,\d{3})*|\d{4,6})\.(?P<cents>\d\d)(?P<frac>[½¼¾])?"
    r"(?![\d%°]|\.\d| ?(?:a\.? ?m\b|p\.? ?m\b|in\b|inch|ft\b|oz\b|[x×] ?\d|per cent|o'clock|P\.? ?T\b))",
    re.IGNORECASE,
)
_WORDS: Final = re.compile(
    rf"\b(?:(?P<number>{_WORD_NUMBER}|half a|a half|a)[ \n-](?:and[ \n-]a[ \n-](?P<part>half|quarter)[ \n-])?"
    rf"(?P<unit>[ce]ents?|dollars?)"
    rf"(?:[ \n]and[ \n](?:a[ \n])?(?P<half>half|quarter)|(?<=rs|ar)[ \n]and[ \n](?P<odd>{_WORD_NUMBER})[ \n]cents|"
    rf"(?<=dollar)[ \n](?:and[ \n])?(?P<cents>{_WORD_NUMBER})"
    r"(?=[ \n]*(?:[,.;:)!?]|$|(?:a|the|per|each|or|and|for)\b)))?)(?!\w)",
    re.IGNORECASE,
)
_STARRED: Final = re.compile(  # a raised $ read as a star: "2 pr. *1"
    r"(?:(?<=\d/)|(?<=[ \n]for )|(?<=\d pr )|(?<=\d pr\. ))\*(?P<whole>[1-9]\d?)(?![\w%.,½/])", re.IGNORECASE
)
_FOR_BARE: Final = re.compile(
    r"(?<![\d$.])(?P<q>[2-9]|[1-4]\d|50) ?for ?(?P<cents>\d{2})(?![\d%½/]|[.,]\d| ?(?:lb|oz|pc|year|day|week))",
    re.IGNORECASE,
)
_CAN_SIZE: Final = re.compile(
    r"(?<![A-Za-z])(?:N[o0]|[o0]|#)[.,]? ?$", re.IGNORECASE
)  # "No. 2½", its N lost in the fold
# letters for figures, only where the other figures or signs leave no doubt: "$l.88", "St.39", "5lc", "ll9.00"
_LETTERS: Final = re.compile(
    r"(?:(?<=\sS)|(?<=^S))t(?=[.,]\d\d(?!\d))|(?<=\$)\](?=\d\d(?!\d))|"
    r"(?<=\$)(?=[.,\w|]*\d)[\dlI|tLSBOoZ]{1,3}(?:[.,][\dlISBOoZ]{2})?(?!\w)|(?<=\$)[lIi|](?![\w.,])|(?<!\S)\d{1,2}\.[Oo0]{2}(?!\w)|(?<!\S)[lI|]{1,2}(?=\d{1,2}\.\d\d(?!\d))|"
    r"(?<!\S)(?=[lI|zsQ]?\d|\d[lI|zsQ]|zs)[\dlI|zsQ]{2}(?=[c¢](?!\w))"
)
AS_FIGURES: Final = str.maketrans("lIi|]tLJzZsSBQOog", "11111111225580009")  # the figures that letters are read for
_QUANTITY: Final = re.compile(
    rf"(?<![\d,/$])(?<!\d\.)(?P<q>\d{{1,2}}|{_WORD_NUMBER})(?P<unit> ?(?:lbs?\.?|cans|pkgs?\.?|doz\.?|pairs?|pieces|"
    rf"yds?\.?|qts?\.?|boxes|bottles|bars|rolls|heads|bunches|jars))?"
    r"(?:[ \n]?for(?: only)?[ \n]?| (?:tor|fot|f0r|ior) |[ \n]?/ ?)$",
    re.IGNORECASE,
)


def find_amounts(text: str) -> list[Amount]:
    """Return the dollar and cent amounts of a text, left to right and never overlapping."""
    text = _LETTERS.sub(lambda m: m[0].translate(AS_FIGURES), text)
    found: list[Amount] = []
    for candidate in _candidates(text):
        if is_taken(candidate.start, candidate.end, found):
            continue
        found.append(with_quantity(text, candidate))
    return sorted(found, key=lambda a: a.start)


def _candidates(text: str) -> Iterator[Amount]:
    """Yield amounts, the surest forms first, so that a weaker reading never overrides a stronger one."""
    for m in _DOLLARS.finditer(text):
        yield _dollars(m)
    for m in _CENTS.finditer(text):
        amount = (Decimal(m["cents"]) + fraction_of(m["frac"])) / 100
        if amount:
            form: PriceForm = "fraction" if m["frac"] else "raised_cent_sign" if m["sign"] == "°" else "cents_sign"
            yield Amount(m.start(), m.end(), amount, "USD", form, 0.7 if m["sign"] == "°" else 0.97)
    for m in _STARRED.finditer(text):
        yield Amount(m.start(), m.end(), Decimal(m["whole"]), "USD", "dollars_whole", 0.6)
    for m in _SLASHED.finditer(text):
        amount = Decimal(m["cents"]) / 100
        yield Amount(m.start(), m.end(), amount, "USD", "multiple", 0.7, quantity=Decimal(m["q"]))
    for m in _FOR_BARE.finditer(text):
        if m["cents"] != "00":
            amount = Decimal(m["cents"]) / 100
            yield Amount(m.start("cents"), m.end(), amount, "USD", "multiple", 0.6)
    for m in _POINT.finditer(text):
        value = (Decimal(m["cents"]) + fraction_of(m["frac"])) / 100
        yield Amount(m.start(), m.end(), value, "USD", "dollars_point", 0.85)
    for m in _BARE.finditer(text):
        value = clean_amount(m[0].rstrip("½¼¾")) + fraction_of(m["frac"]) / 100
        yield Amount(m.start(), m.end(), value, "USD", "bare", 0.6)
    for m in _WORDS.finditer(text):
        yield from _spelled(m)


def _dollars(m: re.Match[str]) -> Amount:
    if m["only"]:
        return Amount(m.start(), m.end(), Decimal(m["only"]) / 100, "USD", "dollars_point", 0.97)
    value = Decimal(re.sub(r"[,.]", "", m["whole"])) + (Decimal(m["cents"]) / 100 if m["cents"] else 0)
    value += fraction_of("½" if m["worn"] else m["frac"]) / 100
    form: PriceForm = "dollars_point" if m["cents"] else "dollars_whole"
    trust = 0.5 if m["worn"] else 0.98 if m["sign"] else 0.85
    if m["sep"] == " ":
        return Amount(m.start(), m.end(), value, "USD", "raised_cents", 0.7, spaced=True)
    return Amount(m.start(), m.end(), value, "USD", form, trust)


def _spelled(m: re.Match[str]) -> Iterator[Amount]:
    word, cents = m["number"].lower(), "ent" in m["unit"].lower()
    if cents and word in {"a", "half a", "a half"}:
        return
    number = {"a": Decimal(1), "half a": Decimal("0.5"), "a half": Decimal("0.5")}.get(word)
    value = Decimal(number_of(word)) if number is None else number
    part = m["part"] or m["half"]
    value += {"half": Decimal("0.5"), "quarter": Decimal("0.25"), None: Decimal(0)}[part and part.lower()]
    value += Decimal(number_of(m["odd"] or m["cents"] or "zero")) / 100
    yield Amount(m.start(), m.end(), value / 100 if cents else value, "USD", "words", 0.8)


def with_quantity(text: str, amount: Amount) -> Amount:
    """Return an amount with a quantity right before it taken in: "2 for", "3/", "two lbs. for"."""
    m = _QUANTITY.search(text, max(amount.start - 24, 0), amount.start)
    if not m or _CAN_SIZE.search(text, max(0, m.start() - 5), m.start()):
        return amount
    quantity = number_of(m["q"])
    if not 1 < quantity <= 50:
        return amount
    unit = unit_of(m["unit"]) if m["unit"] else amount.unit
    return replace(amount, start=m.start(), quantity=Decimal(quantity), unit=unit, form="multiple")


def fraction_of(text: str | None) -> Decimal:
    """Return the value of a printed fraction ("½", " 1/2"), zero where there is none."""
    if not text or not (text := text.strip(" -")):
        return Decimal(0)
    if text in FRACTIONS:
        return FRACTIONS[text]
    top, _, bottom = text.partition("/")
    return Decimal(top) / Decimal(bottom)


def in_pounds(pounds: Decimal) -> Decimal:
    """Return a sum in pounds to a millionth, as the records keep it: a farthing is more than a thousandth."""
    return pounds.quantize(Decimal("0.000001"))


def named_fraction(found: re.Match[str]) -> Decimal:
    """Return the value of a misread fraction whose group "half", "quarter" or "three" was found."""
    return fraction_of(next(sign for name, sign in _NAMED.items() if found[name]))


def clean_amount(text: str) -> Decimal:
    """Return the decimal value of a clean printed figure such as "1,250.00"."""
    value = CleanPrice.fromstring(text).amount
    return value if value is not None else Decimal(text.replace(",", ""))


def number_of(text: str) -> int:
    """Return the whole number a figure or number word stands for."""
    text = text.lower()
    if text.isdigit():
        return int(text)
    total = 0
    for part in re.split(r"[ \-]", text):
        total = max(total, 1) * 100 if part == "hundred" else total + NUMBER_WORDS.get(part, 0)
    return total


_UNITS: Final[tuple[tuple[str, str], ...]] = (
    (r"ea(?:ch)?\.?|apiece", "each"),
    (r"(?:½ ?|half[ \-])doz(?:en|\.)?", "half_doz"),
    (r"doz(?:en|s)?\.?", "doz"),
    (r"[l1i|]bs?\.?|pounds?", "lb"),
    (r"pairs?|prs?\.?", "pair"),
    (r"sets?", "set"),
    (r"(?:sq(?:uare|\.)? ?)?(?:yds?\.?|yards?)", "yd"),
    (r"met(?:re|er)s?", "metre"),
    (r"pieces?|pcs?\.?", "piece"),
    (r"pkgs?\.?|packages?|pkts?\.?|packets?", "pkg"),
    (r"cans?|tins?", "can"),
    (r"bottles?|bots?\.?", "bottle"),
    (r"boxe?s?", "box"),
    (r"jars?", "jar"),
    (r"qts?\.?|quarts?", "qt"),
    (r"pts?\.?|pints?", "pt"),
    (r"gals?\.?|gallons?", "gal"),
    (r"bunch(?:es)?", "bunch"),
    (r"heads?", "head"),
    (r"lo(?:af|aves)", "loaf"),
    (r"rolls?", "roll"),
    (r"cases?", "case"),
    (r"bars?", "bar"),
    (r"bags?", "bag"),
    (r"hundred|100|cwt\.?", "hundred"),
    (r"gross", "gross"),
    (r"weekly|w[eo][ea]ks?|wk\.?", "week"),
    (r"monthly|months?|mo\.", "month"),
)
UNIT: Final = r"(?:" + "|".join(pattern for pattern, _ in _UNITS) + r")(?![a-z])"
_UNIT_RULES: Final = tuple((re.compile(rf"(?:{pattern})(?![a-z])", re.IGNORECASE), unit) for pattern, unit in _UNITS)


def unit_of(text: str) -> str | None:
    """Return the unit a printed unit word stands for ("doz." is "doz"), None where it is none."""
    text = text.strip().strip(",;")
    for pattern, unit in _UNIT_RULES:
        if pattern.fullmatch(text):
            return unit
    return None
