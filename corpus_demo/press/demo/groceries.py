"""Grocery pages: forty foods and one box of dinnerware, war-time points, a small grocer's bill."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from random import Random

from ..facts import AdvertSpec, Item, ScanSpec, Tag, Term, Wear
from ..staples import basket
from .common import PAPERS, carded, days, money, placed
from .silverthaw import SILVER_SETTING, SILVER_STOCK
from .tansy import CARD, OPEN_STOCK, SETTING_ITEM


def _house(items: tuple[Item, ...]) -> tuple[Item, ...]:
    return tuple(replace(item, department="housewares") for item in items)


def page(
    seed: int, start: date, town: str, chain: str, foods: tuple[int, int], wares: tuple[Item, ...], form: str, headline: str, **more: object
) -> AdvertSpec:  # fmt: skip
    """Write a grocery advert with foods at the prices of its year."""
    end = date.fromordinal(start.toordinal() + 2)
    spec = AdvertSpec(
        style="grocery",
        retailer=chain,
        retailer_text={"penhallow": "Penhallow Stores", "tidewell": "Tidewell Markets"}[chain],
        items=(*basket(start.year, Random(f"basket {seed}"), *foods), *_house(wares)),
        headline=headline,
        town=town,
        valid=(start, end),
        when=days(start, end, form),
        addresses=(f"Main Street, {town}", "Free parking behind the store"),
    )
    return replace(spec, **more)  # type: ignore[arg-type] # fields of the record by name


def _scan(file: str, spec: AdvertSpec, seed: int, width: int, base: float, wear: Wear, **more: object) -> ScanSpec:
    town, (first, _) = placed(spec)
    scan = ScanSpec(
        file=file, adverts=(spec,), seed=seed, width=width, base=base, wear=wear, published=first, publication=PAPERS[town], city=town,
        page=str(6 + seed % 9), ad_type="grocery",
    )  # fmt: skip
    return replace(scan, **more)  # type: ignore[arg-type] # fields of the record by name


def scans() -> tuple[ScanSpec, ...]:
    """Return the grocery sheets."""
    stamps = Term("stamps", "Lantern Stamps with every purchase")
    tansy = page(
        91, date(1953, 3, 26), "Ferncliff", "penhallow", (9, 31), (SETTING_ITEM, *OPEN_STOCK[:3]), "dash", "Easter Values",
        line="tansy_morn", line_text="Tansy Morn", kicker="new pieces every week", motif="tansy", terms=(Term("with_purchase", "with each $5.00 purchase", "5.00"),),
    )  # fmt: skip
    silver = page(
        92, date(1956, 10, 18), "Osterby", "tidewell", (8, 34), (SILVER_STOCK[3], SILVER_STOCK[0]), "from_to", "Harvest of Savings",
        line="silverthaw", line_text="Silverthaw", kicker="this week's piece", motif="frost", terms=(Term("punch_card", "20 punches fill a card", "20"),),
    )  # fmt: skip
    tapes = page(
        93, date(1955, 5, 5), "Wenning Falls", "penhallow", (7, 24), (
            Item("Cup and saucer", (Tag(money(".29"), 1, None, "with_purchase", "and $10 in register tapes"), Tag(money(".59"), 1, None, "everyone", "without tapes")), line="tansy_morn", piece="cup_and_saucer"),
        ), "thru", "Save Your Tapes", line="tansy_morn", line_text="Tansy Morn", kicker="save our register tapes", motif="tansy", terms=(Term("limit", "Limit 4 with each offer", "4"), stamps),
    )  # fmt: skip
    sixties = page(
        94, date(1962, 11, 8), "Osterby", "tidewell", (9, 28), (), "thru", "Stock Up for Thanksgiving", terms=(stamps, Term("rain_check", "Rain checks on all advertised items")),
        addresses=("Shore Road, Osterby", "Phone 555-2190"),
    )  # fmt: skip
    early = page(
        95, date(1951, 2, 8), "Ferncliff", "penhallow", (10, 26), (
            carded("Dinner plate", ".25", ".45", CARD, piece="dinner_plate", line="winter_sorrel"), carded("Cup", ".19", ".35", CARD, piece="cup", line="winter_sorrel"),
        ), "dash", "Week-End Specials", line="winter_sorrel", line_text="Winter Sorrel", kicker="start your set", motif="sorrel", terms=(Term("with_purchase", "with a $3.00 order", "3.00"),),
    )  # fmt: skip
    points = page(
        96, date(1943, 11, 11), "Osterby", "penhallow", (6, 9), (), "dash", "Point-Wise Foods", style="handbill", kicker="At or below ceiling prices",
        copy=("Bring your ration books. Bacon and butter take red points; canned peas and corn take blue points.",), addresses=("Market Square, Osterby 3",),
        terms=(Term("notice", "We sell War Stamps"), Term("limit", "We reserve the right to limit quantities")),
    )  # fmt: skip
    small = page(
        97, date(1939, 6, 16), "Wenning Falls", "penhallow", (7, 10), (), "dash", "Saturday Specials", style="handbill", kicker="Service and quality", addresses=("27 Mill Lane", "Phone 88"),
    )  # fmt: skip
    box = page(
        98, date(1956, 11, 15), "Wenning Falls", "tidewell", (5, 8), (SILVER_SETTING,), "dash", "Thanksgiving Feast", line="silverthaw", line_text="Silverthaw",
        kicker="on the punch card plan", motif="frost", addresses=("Falls Parkway, Wenning Falls",),
    )  # fmt: skip
    return (
        _scan("grocery-1953-easter.jpg", tansy, 91, 1640, 17, Wear("newsprint", skew=0.3, light=0.2, show_through=0.1)),
        _scan("grocery-1956-harvest.png", silver, 92, 1720, 19, Wear("photocopy", skew=-0.4, grain=0.04)),
        _scan("grocery-1955-tapes.jpg", tapes, 93, 1380, 17, Wear("newsprint", skew=-0.9, fold=0.52, light=0.2, spread=0.55), noted=False),
        _scan("grocery-1962-november.jpg", sixties, 94, 1500, 17, Wear("newsprint", skew=0.6, light=0.15, show_through=0.08), noted=False),
        _scan("grocery-1951-weekend.png", early, 95, 1420, 17, Wear("microfilm", skew=0.5, grain=0.05, light=0.2)),
        _scan("grocery-1943-points.jpg", points, 96, 640, 20, Wear("newsprint", skew=-1.5, light=0.2, show_through=0.15), noted=False, found_in="kitchen drawer"),
        _scan("grocery-1939-specials.png", small, 97, 560, 20, Wear("microfilm", skew=1.2, grain=0.08, light=0.3), noted=False),
        _scan("grocery-1956-feast.jpg", box, 98, 1000, 19, Wear("newsprint", skew=1.1, curl=12, light=0.25), noted=False),
    )  # fmt: skip
