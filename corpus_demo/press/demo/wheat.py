"""One decal under two names: Copperwheat at one chain in 1959, Harvest Lane at the other in 1960."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Term, Wear
from .common import TOWN_ADDRESSES, carded, days, week_scan


def scans() -> tuple[ScanSpec, ...]:
    """Return the sheets of both chains."""
    copper = ("with card", "regular price")

    def wheat(text: str, low: str, high: str, piece: str, line: str) -> Item:
        return carded(text, low, high, copper, piece=piece, line=line)

    def spec(
        chain: bool, style: str, start: date, headline: str, items: tuple[Item, ...], form: str, **more: object
    ) -> AdvertSpec:
        town = "Ferncliff" if chain else "Osterby"
        end = start + timedelta(6 if form == "week" else 2)
        base = AdvertSpec(
            style=style,
            retailer="penhallow" if chain else "tidewell",
            retailer_text="Penhallow Stores" if chain else "Tidewell Markets",
            items=items,
            headline=headline,
            town=town,
            valid=(start, end),
            when=days(start, end, form),
            line="copperwheat" if chain else "harvest_lane",
            line_text="Copperwheat" if chain else "Harvest Lane",
            maker_text="Ironstone by Marrowstone" if chain else "",
            terms=(Term("with_purchase", "with each $5.00 purchase", "5.00"), Term("tax", "plus tax")),
            addresses=TOWN_ADDRESSES[town],
            motif="wheat",
            kicker="this week only",
        )
        return replace(base, **more)  # type: ignore[arg-type] # fields of the record by name

    def stock(line: str) -> tuple[Item, ...]:
        return (
            wheat("Dinner plate", ".33", ".55", "dinner_plate", line),
            wheat("Coupe soup", ".37", ".59", "coupe_soup", line),
            wheat("Divided vegetable dish", "1.79", "2.69", "divided_vegetable", line),
            wheat("Tid-bit tray", "2.19", "3.25", "tidbit_tray", line),
            wheat("Cup and saucer", ".55", ".85", "cup_and_saucer", line),
        )

    copper_set = replace(
        wheat("20-piece set", "8.88", "14.95", "dinner_set", "copperwheat"), composition=SetOf(20, (), "service for 4")
    )
    harvest_set = replace(
        wheat("20-piece set", "7.77", "12.95", "dinner_set", "harvest_lane"), composition=SetOf(20, (), "service for 4")
    )
    a, b, c, d = stock("copperwheat"), stock("harvest_lane"), date(1959, 3, 5), date(1960, 10, 6)
    newsprint = Wear("newsprint", skew=0.8, light=0.2, show_through=0.1)
    return (
        week_scan(spec(True, "tower", c, "Harvest of Values", (a[0], *a[1:]), "dash"), "copperwheat-march.jpg", 61, 640, 20, newsprint),
        week_scan(
            spec(True, "spread", date(1959, 4, 9), "Golden Grain, Golden Savings", (copper_set, *a[:4]), "thru"),
            "copperwheat-april.png", 62, 1150, 19, Wear("photocopy", skew=0.5, grain=0.06), noted=False,
        ),
        week_scan(
            spec(True, "grid", date(1959, 5, 21), "Add a Piece a Week", (*a[:4],), "week", terms=(Term("stamps", "Lantern Stamps given with every purchase"),)),
            "copperwheat-may.jpg", 63, 860, 20, Wear("phone", perspective=0.04, skew=2.0, light=0.2), recipe="phone_photo",
        ),
        week_scan(spec(False, "burst", d, "Bring in the Sheaves", (harvest_set, *b), "from_to"), "harvest-lane-october.jpg", 64, 1000, 20, newsprint),
        week_scan(
            spec(False, "tower", date(1960, 10, 20), "This Week's Piece", (b[1], *b[2:]), "dash"),
            "harvest-lane-soup.png", 65, 580, 20, Wear("microfilm", skew=-0.8, grain=0.07, light=0.25),
        ),
        week_scan(
            spec(False, "grid", date(1960, 11, 3), "Serve It in Style", (b[0], b[2], b[3], b[4]), "thru"),
            "harvest-lane-november.jpg", 66, 900, 20, Wear("newsprint", skew=-1.4, tear=True, light=0.15), noted=False,
        ),
    )  # fmt: skip
