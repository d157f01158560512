"""The punch-card programme of Tidewell Markets: Silverthaw, twelve weeks from September 1956."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Term, Wear
from .common import carded, days, one, week_scan

SILVER = ("with filled card", "without card")
SILVER_START = date(1956, 9, 13)  # a Thursday


def _silver(text: str, card: str, without: str, piece: str, unit: str | None = None) -> Item:
    return carded(text, card, without, SILVER, unit, piece=piece, line="silverthaw")


def silverthaw(
    week: int, town: str, style: str, form: str, headline: str, items: tuple[Item, ...], **more: object
) -> AdvertSpec:
    """Write the advert of one week of the Silverthaw programme."""
    start = SILVER_START + timedelta(7 * (week - 1))
    end = start + timedelta(6 if week % 2 or form == "week" else 2)
    spec = AdvertSpec(
        style=style,
        retailer="tidewell",
        retailer_text="Tidewell Markets",
        items=items,
        headline=headline,
        town=town,
        valid=(start, end),
        when=days(start, end, form),
        kicker="for your Tidewell punch card",
        line="silverthaw",
        line_text="Silverthaw",
        maker_text="Fine China by Undine China Works" if week % 3 else "",
        terms=(
            Term("punch_card", "20 punches fill a card: one punch with each 50¢ purchase", "20"),
            Term("limit", "Limit 4 settings to a family", "4")
            if week % 2
            else Term("rain_check", "Rain checks given if we sell out"),
        ),
        addresses=(f"Shore Road, {town}",) if town == "Osterby" else (f"Falls Parkway, {town}", "Open Fridays until 9"),
        motif="frost",
        slogan="Where the tide of savings turns" if week % 2 else "",
    )
    return replace(spec, **more)  # type: ignore[arg-type] # fields of the record by name


SILVER_SETTING = replace(_silver("4-piece place setting", ".99", "1.98", "place_setting"), composition=SetOf(
    4, (("dinner_plate", 1, "dinner plate"), ("bread_and_butter", 1, "bread and butter"), ("cup", 1, "cup"), ("saucer", 1, "saucer"))))  # fmt: skip
SILVER_45 = Item(
    "45-piece service for 8", (replace(one("", "29.95").tags[0], condition="comparison", label="compare at"),), line="silverthaw",
    piece="dinner_set", composition=SetOf(45, (
        ("dinner_plate", 8, "8 dinner plates"), ("bread_and_butter", 8, "8 bread and butters"), ("fruit_dish", 8, "8 fruits"), ("cup", 8, "8 cups"),
        ("saucer", 8, "8 saucers"), ("platter", 1, "platter"), ("vegetable_dish", 1, "vegetable"), ("creamer", 1, "creamer"), ("covered_sugar", 1, "covered sugar"))),
)  # fmt: skip
SILVER_STOCK = (
    _silver("Cereal bowl", ".35", ".59", "cereal_dish", "each"),
    _silver("Soup plate", ".39", ".69", "soup_plate", "each"),
    _silver("Chop plate", "1.49", "2.25", "chop_plate"),
    _silver("Covered butter dish", "1.29", "1.98", "butter_dish"),
    _silver("Salt and pepper set", ".89", "1.39", "salt_and_pepper"),
    _silver("Coffee pot and cover", "2.29", "3.49", "coffee_pot"),
)
SILVER_WEEKS = (
    ("Sept. 13", "place_setting", "4-piece place setting"),
    ("Sept. 20", "cereal_dish", "Cereal bowl"),
    ("Sept. 27", "soup_plate", "Soup plate"),
    ("Oct. 4", "place_setting", "4-piece place setting"),
    ("Oct. 11", "chop_plate", "Chop plate"),
    ("Oct. 18", "butter_dish", "Covered butter dish"),
)


def scans() -> tuple[ScanSpec, ...]:
    """Return the sheets of the programme."""
    return (
        week_scan(
            silverthaw(1, "Osterby", "burst", "year", "Fine China on the Punch Card Plan", (SILVER_SETTING, *SILVER_STOCK[:4]),
                schedule=SILVER_WEEKS, schedule_title="Featured each week"),
            "silverthaw-opening.jpg", 41, 1300, 20, Wear("newsprint", skew=-0.4, light=0.15, show_through=0.1),
        ),
        week_scan(
            silverthaw(3, "Wenning Falls", "tower", "thru", "Feature of the Week", (SILVER_STOCK[1], *SILVER_STOCK[3:])),
            "silverthaw-week-03.png", 43, 560, 19, Wear("microfilm", skew=0.9, grain=0.06, light=0.3),
        ),
        week_scan(
            silverthaw(4, "Osterby", "spread", "dash", "More Than 1/3 Off", (SILVER_SETTING, *SILVER_STOCK[:4])),
            "silverthaw-week-04.jpg", 44, 1200, 19, Wear("newsprint", skew=1.0, fold=0.6, curl=-8, light=0.2),
        ),
        week_scan(
            silverthaw(6, "Wenning Falls", "grid", "from_to", "Snowflake Beauty for Your Table", (*SILVER_STOCK[:2], *SILVER_STOCK[3:5])),
            "silverthaw-week-06.webp", 46, 880, 20, Wear("phone", perspective=0.03, skew=-1.5, light=0.25), noted=False, recipe="phone_photo",
        ),
        week_scan(
            silverthaw(8, "Osterby", "tower", "thru", "Punch Card Special", (SILVER_STOCK[5], *SILVER_STOCK[:3]), motif="frost"),
            "silverthaw-week-08.png", 48, 600, 20, Wear("photocopy", skew=-0.9, grain=0.09, spread=0.55),
        ),
        week_scan(
            silverthaw(10, "Wenning Falls", "spread", "from_to", "Set for the Holidays", (SILVER_SETTING, SILVER_45, *SILVER_STOCK[2:5])),
            "silverthaw-week-10.jpg", 50, 1350, 20, Wear("newsprint", skew=0.5, light=0.3, show_through=0.14, spread=0.6),
        ),
        week_scan(
            silverthaw(12, "Osterby", "grid", "dash", "Twelfth and Final Week", (*SILVER_STOCK[:3], SILVER_STOCK[5])),
            "silverthaw-week-12.tif", 52, 840, 21, Wear("microfilm", skew=-1.0, grain=0.04, light=0.15),
        ),
    )  # fmt: skip
