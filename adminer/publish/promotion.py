"""The page a researcher came for: a promotion's weeks, its prices with the card and without, one advert as proof."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from adminer.publish.charts import TwoPrices, WeekOffer, two_prices, weeks_of_a_promotion
from adminer.publish.facts_picture import Fact, draw_facts
from adminer.publish.look import png_of, svg_of
from adminer.publish.page import AdvertPicture, Picture, page_of
from adminer.records import Box

Row = Mapping[str, Any]
Ask = Callable[[str, Mapping[str, str | None]], Sequence[Row]]  # name of a question and its values -> rows
PixelsOf = Callable[[str], NDArray[np.uint8]]  # file of a scan -> its pixels
_FACTS_SHOWN: Final = 30
_KINDS_SHOWN: Final = frozenset({"price", "date", "condition"})


@dataclass(frozen=True, slots=True)
class PromotionPage:
    """Hold the page as HTML, and its pictures by file name as PNG for print."""

    html: str
    pictures: Mapping[str, bytes]


def promotion_page(ask: Ask, pixels_of: PixelsOf, title: str) -> PromotionPage | None:
    """Return a page of pictures about the card promotion seen in most weeks, or None where none was seen.

    `ask` answers a question of queries/ by name; `pixels_of` gives the scan for a file, upright, in original pixels.
    """
    offers = [row for row in ask("promotion-weeks", {}) if row["cardholder_price"] is not None]
    chosen = _seen_in_most_weeks(offers)
    if chosen is None:
        return None
    retailer, line = chosen
    rows = [row for row in offers if (row["retailer"], row["line"]) == chosen]
    weeks = {row["week"] for row in rows}
    prices = ask("card-and-without", {"retailer": retailer, "line": line})
    files = sorted({row["file"] for row in rows})
    weeks_chart = weeks_of_a_promotion([_week(row) for row in rows], f"{line} at {retailer}", "Price with the card")
    pictures = [
        Picture(
            heading=f"The weeks of {line} at {retailer}",
            says=f"{_counted(len(rows), 'offer')} with a cardholder price in {_counted(len(weeks), 'week')}, "
            f"{_day(min(weeks))} to {_day(max(weeks))}. Weeks without a mark are weeks without a clipping: "
            "the file does not say whether the promotion rested.",
            svg=svg_of(weeks_chart),
            source=f"Read from {_counted(len(files), 'scan')}: {', '.join(files)}.",
        )
    ]
    printable = {"weeks.png": png_of(weeks_chart)}
    if prices:
        prices_chart = two_prices([_pair(row) for row in prices], f"{line} at {retailer}", "Dollars")
        pictures.append(
            Picture(
                heading="With the card and without",
                says="The lowest price read for each piece or set, both prices from the same adverts.",
                svg=svg_of(prices_chart),
                source="Query card-and-without; each price leads to its scan with adminer show.",
            )
        )
        printable["two-prices.png"] = png_of(prices_chart)
    proof = _proof(ask, pixels_of, rows, retailer)
    printable["facts.png"] = proof.picture
    lead = f"What this clippings file says of {line} at {retailer}, with the scans that prove it."
    return PromotionPage(page_of(title, lead, pictures, proof), printable)


def _seen_in_most_weeks(offers: Sequence[Row]) -> tuple[str, str] | None:
    weeks = {(row["retailer"], row["line"], row["week"]) for row in offers if row["retailer"]}
    counted = Counter((retailer, line) for retailer, line, _ in weeks)
    return min(counted, key=lambda pair: (-counted[pair], pair)) if counted else None


def _proof(ask: Ask, pixels_of: PixelsOf, rows: Sequence[Row], retailer: str) -> AdvertPicture:
    """Draw the facts of the advert that offered most pieces on its scan."""
    per_file = Counter(row["file"] for row in rows)
    file = min(per_file, key=lambda name: (-per_file[name], name))
    offer_ids = {row["offer_id"] for row in rows if row["file"] == file}
    facts_read = ask("clipping-facts", {"clipping": file})
    adverts = Counter(row["advert_id"] for row in facts_read if row["offer_id"] in offer_ids)
    advert = adverts.most_common(1)[0][0]
    inside = [row for row in facts_read if row["advert_id"] == advert]
    whole = next((_box(row) for row in inside if row["kind"] == "retailer"), None)
    facts = [Fact(row["kind"], row["says"], _box(row)) for row in inside if row["kind"] in _KINDS_SHOWN][:_FACTS_SHOWN]
    crop = whole or _around([fact.box for fact in facts])
    return AdvertPicture(
        heading="One advert, with its facts drawn on the scan",
        says="Every fact keeps the frame it was read from; the numbers lead to the list.",
        picture=draw_facts(pixels_of(file), crop, facts),
        alt=f"The advert of {retailer} in {file} with numbered frames around its facts",
        source=f"Scan {file}, advert {advert}.",
        facts=tuple(facts),
    )


def _week(row: Row) -> WeekOffer:
    return WeekOffer(row["week"], _plain(row["piece"]), row["cardholder_price"], row["file"])


def _pair(row: Row) -> TwoPrices:
    return TwoPrices(_plain(row["piece"]), Decimal(row["cardholder_price"]), Decimal(row["price_without_card"]))


def _plain(piece: str) -> str:
    return piece.replace("_", " ").replace("set:", "set of ")


def _counted(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def _day(day: date) -> str:
    return f"{day.day} {day:%B %Y}"


def _box(row: Row) -> Box:
    return Box(row["x"], row["y"], row["w"], row["h"])


def _around(boxes: Sequence[Box]) -> Box:
    whole = boxes[0]
    for box in boxes[1:]:
        whole = whole.joined(box)
    return whole
