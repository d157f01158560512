"""Short ways to write what an advert says, and where its town is."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

from ..facts import AdvertSpec, Item, ScanSpec, Tag, Wear, When

MONTHS = ("Jan.", "Feb.", "March", "April", "May", "June", "July", "Aug.", "Sept.", "Oct.", "Nov.", "Dec.")
DAYS = ("Mon.", "Tues.", "Wed.", "Thurs.", "Fri.", "Sat.", "Sun.")
TOWN_ADDRESSES = {
    "Ferncliff": ("114 Harbor Street, Ferncliff", "Corner Elm and Third"),
    "Osterby": ("Market Square, Osterby", "Phone 4-2217"),
    "Wenning Falls": ("27 Mill Lane, Wenning Falls",),
}
PAPERS = {
    "Ferncliff": "The Ferncliff Courier",
    "Osterby": "The Osterby Ledger",
    "Wenning Falls": "Wenning Falls Sentinel",
}
LONG_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def money(text: str) -> Decimal:
    """Return dollars written as text."""
    return Decimal(text)


def one(
    text: str, amount: str, unit: str | None = None, *, piece: str = "", line: str | None = None, **more: str
) -> Item:
    """Return an item at one price for everyone."""
    return Item(text, (Tag(money(amount), 1, unit),), line=line, piece=piece, **more)  # type: ignore[arg-type] # text fields only


def carded(
    text: str,
    card: str,
    without: str,
    labels: tuple[str, str],
    unit: str | None = None,
    *,
    piece: str = "",
    line: str | None = None,
) -> Item:
    """Return an item at a cardholder price and a price without the card."""
    tags = (Tag(money(card), 1, unit, "cardholder", labels[0]), Tag(money(without), 1, unit, "without_card", labels[1]))
    return Item(text, tags, line=line, piece=piece)


def placed(spec: AdvertSpec) -> tuple[str, tuple[date, date]]:
    """Return town and validity of an advert that has both.

    Raises ValueError where one is missing.
    """
    if spec.town is None or spec.valid is None:
        raise ValueError(f"{spec.headline}: an advert of the story needs a town and its days")
    return spec.town, spec.valid


def days(start: date, end: date, form: str = "dash") -> When:
    """Write the days of an offer as adverts print them."""
    edtf = f"{start}/{end}"
    span = [start + timedelta(k) for k in range((end - start).days + 1)]
    names = ", ".join(DAYS[d.weekday()] for d in span)
    month = MONTHS[start.month - 1]
    last = f"{MONTHS[end.month - 1]} {end.day}"
    match form:
        case "dash" if start.month == end.month:
            return When(f"{names}, {month} {'-'.join(str(d.day) for d in span)}", edtf)
        case "thru":
            return When(f"Prices Effective Thru {LONG_DAYS[end.weekday()]}, {last}", edtf)
        case "from_to":
            return When(f"{DAYS[start.weekday()]}, {month} {start.day} thru {DAYS[end.weekday()]}, {last}", edtf)
        case "week":
            return When(f"Week of {month} {start.day}", edtf)
        case "year":
            return When(f"{month} {start.day} to {last}, {end.year}", edtf)
        case "numeric":
            return When(f"Prices good {start.month}/{start.day}/{start:%y} to {end.month}/{end.day}/{end:%y}", edtf)
        case _:
            return When(f"{month} {start.day} thru {last}", edtf)


def week_scan(spec: AdvertSpec, file: str, seed: int, width: int, base: float, wear: Wear, **more: object) -> ScanSpec:
    """Return the scan of a programme's advert, dated and placed by the advert itself."""
    town, (first, _) = placed(spec)
    scan = ScanSpec(
        file=file,
        adverts=(spec,),
        seed=seed,
        width=width,
        base=base,
        wear=wear,
        published=first,
        publication=PAPERS[town],
        city=town,
        page=str(2 + seed % 9),
    )
    return replace(scan, **more)  # type: ignore[arg-type] # fields of the record by name
