"""The card programme of Penhallow Stores: Tansy Morn, fifteen weeks from January 1953, with its change of maker."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Term, Wear
from .common import TOWN_ADDRESSES, carded, days, week_scan

CARD = ("with Penhallow card", "without card")
SETTING = SetOf(
    5,
    (
        ("dinner_plate", 1, "dinner plate"),
        ("salad_plate", 1, "salad plate"),
        ("fruit_dish", 1, "fruit dish"),
        ("cup", 1, "cup"),
        ("saucer", 1, "saucer"),
    ),
)
STARTER = SetOf(
    16,
    (
        ("dinner_plate", 4, "4 dinner plates"),
        ("fruit_dish", 4, "4 fruit dishes"),
        ("cup", 4, "4 cups"),
        ("saucer", 4, "4 saucers"),
    ),
)
COMPLETER = SetOf(
    5,
    (
        ("platter", 1, "platter"),
        ("vegetable_dish", 1, "vegetable bowl"),
        ("creamer", 1, "creamer"),
        ("covered_sugar", 1, "covered sugar"),
    ),
)


def _tansy(text: str, card: str, without: str, piece: str, unit: str | None = None) -> Item:
    return carded(text, card, without, CARD, unit, piece=piece, line="tansy_morn")


SETTING_ITEM = replace(_tansy("5-pc. place setting", "1.39", "2.50", "place_setting"), composition=SETTING)
STARTER_ITEM = replace(_tansy("16-piece starter set", "4.95", "7.95", "starter_set"), composition=STARTER)
COMPLETER_ITEM = replace(_tansy("5-piece completer set", "3.89", "5.95", "completer_set"), composition=COMPLETER)
OPEN_STOCK = (
    _tansy("Dinner plate", ".39", ".65", "dinner_plate"),
    _tansy("Salad plate", ".29", ".49", "salad_plate"),
    _tansy("Cup", ".25", ".39", "cup"),
    _tansy("Saucer", ".19", ".29", "saucer"),
    _tansy("Fruit dish", ".19", ".29", "fruit_dish"),
    _tansy("Bread and butter plate", ".19", ".29", "bread_and_butter"),
)
SERVING = (
    _tansy("Oval platter, 13-in.", "1.19", "1.79", "platter"),
    _tansy("Open vegetable", ".98", "1.49", "vegetable_dish"),
    _tansy("Creamer", ".69", ".98", "creamer"),
    _tansy("Sugar and cover", ".98", "1.39", "covered_sugar"),
    _tansy("Gravy boat", "1.29", "1.89", "gravy_boat"),
)
START = date(1953, 1, 15)  # a Thursday


def _terms(week: int) -> tuple[Term, ...]:
    terms = [
        Term("punch_card", "Have your card punched with each $5.00 purchase", "5.00"),
        Term("limit", "Limit one setting to a card each week", "1"),
        Term("while_they_last", "While quantities last"),
        Term("open_stock", "All pieces available in open stock"),
        Term("with_purchase", "One card with every $3.00 purchase", "3.00"),
    ]
    return (terms[week % 3], terms[3 + week % 2])


def tansy(
    week: int, town: str, style: str, form: str, headline: str, items: tuple[Item, ...], **more: object
) -> AdvertSpec:
    """Write the advert of one week of the Tansy Morn programme."""
    start = START + timedelta(7 * (week - 1))
    end = start + timedelta(6 if form == "week" else 2)
    maker = "by Marrowstone Pottery" if week < 9 else "now made by Undine China Works"
    spec = AdvertSpec(
        style=style,
        retailer="penhallow",
        retailer_text="Penhallow Stores",
        items=items,
        headline=headline,
        town=town,
        valid=(start, end),
        when=days(start, end, form),
        kicker="for card holders",
        line="tansy_morn",
        line_text="Tansy Morn",
        maker_text=maker,
        terms=_terms(week),
        addresses=TOWN_ADDRESSES[town],
        motif="tansy",
    )
    return replace(spec, **more)  # type: ignore[arg-type] # fields of the record by name


SCHEDULE = (
    ("1st, 6th, 11th week", "dinner_plate", "Dinner plate"),
    ("2nd, 7th, 12th week", "saucer", "Saucer"),
    ("3rd, 8th, 13th week", "cup", "Cup"),
    ("4th, 9th, 14th week", "fruit_dish", "Fruit dish"),
    ("5th, 10th, 15th week", "bread_and_butter", "Bread and butter plate"),
)


def scans() -> tuple[ScanSpec, ...]:
    """Return the sheets of the programme."""
    copy1 = (
        "Here is the loveliest offer of the season. Bright buttons of tansy on a warm white ground, under a glaze that keeps its lustre. "
        "Ask for your card at the checkstand and begin your set today.",
    )
    week4 = tansy(
        4,
        "Ferncliff",
        "spread",
        "dash",
        "4th Big Week!",
        (SETTING_ITEM, OPEN_STOCK[0], OPEN_STOCK[3], OPEN_STOCK[2], SERVING[0]),
    )
    return (
        week_scan(
            tansy(1, "Ferncliff", "spread", "from_to", "A Table to Be Proud Of", (STARTER_ITEM, *OPEN_STOCK[:4]), copy=copy1),
            "tansy-week-01.jpg", 11, 1400, 21, Wear("newsprint", skew=-0.7, light=0.12, show_through=0.08),
        ),
        week_scan(
            tansy(2, "Osterby", "tower", "dash", "This Week: Saucer", (
                _tansy("Saucer", ".09", ".29", "saucer", "each"), *OPEN_STOCK[:3], *SERVING[:2])),
            "tansy-week-02.png", 12, 620, 20, Wear("microfilm", skew=1.1, grain=0.07, light=0.25),
        ),
        week_scan(week4, "tansy-week-04-courier.jpg", 14, 1300, 20, Wear("newsprint", skew=0.9, fold=0.46, light=0.18, show_through=0.1)),
        week_scan(
            replace(week4, town="Osterby", addresses=TOWN_ADDRESSES["Osterby"]),
            "tansy-week-04-ledger.png", 14, 1300, 20, Wear("photocopy", skew=-1.3, grain=0.08, spread=0.5),
            publication="The Osterby Ledger", city="Osterby", remark="same advert as tansy-week-04-courier.jpg",
        ),
        week_scan(
            tansy(5, "Wenning Falls", "grid", "thru", "Choose Any Piece", (*OPEN_STOCK[:3], *SERVING[:3])),
            "tansy-week-05.jpg", 15, 900, 20, Wear("phone", perspective=0.035, light=0.2, skew=0.6), recipe="phone_photo",
        ),
        week_scan(
            tansy(7, "Ferncliff", "tower", "dash", "7th Week of 15", (
                _tansy("Saucer", ".09", ".29", "saucer", "each"), SERVING[1]), schedule=SCHEDULE, schedule_title="Save this schedule of weeks"),
            "tansy-week-07-schedule.png", 17, 700, 20, Wear("microfilm", skew=-0.5, grain=0.05, light=0.2),
        ),
        week_scan(
            tansy(8, "Osterby", "burst", "from_to", "Dress Up Your Table", (SETTING_ITEM, *OPEN_STOCK[3:], *SERVING)),
            "tansy-week-08.jpg", 18, 1000, 20, Wear("newsprint", skew=1.6, curl=14, light=0.2, show_through=0.12),
        ),
        week_scan(
            tansy(9, "Wenning Falls", "spread", "dash", "Same Lovely Pattern", (SETTING_ITEM, *OPEN_STOCK[:4]), copy=(
                "Owing to the great demand the pattern is now made for us by a second house. New pieces match those you have.",)),
            "tansy-week-09.jpg", 19, 1250, 19, Wear("newsprint", skew=-1.2, tear=True, light=0.15, show_through=0.06),
        ),
        week_scan(
            tansy(11, "Ferncliff", "grid", "thru", "Serving Pieces Now", SERVING[:4]),
            "tansy-week-11.png", 21, 820, 20, Wear("photocopy", skew=0.8, grain=0.05), noted=False,
        ),
        week_scan(
            tansy(13, "Osterby", "burst", "week", "Complete Your Set", (COMPLETER_ITEM, *OPEN_STOCK[:5])),
            "tansy-week-13.jpg", 23, 980, 19, Wear("newsprint", skew=0.4, spread=0.7, light=0.22, show_through=0.15),
        ),
        week_scan(
            tansy(15, "Ferncliff", "tower", "year", "Final Week!", (SETTING_ITEM, *OPEN_STOCK, *SERVING), terms=(
                Term("while_they_last", "Last chance: while our stock lasts"), Term("rain_check", "No rain checks after Saturday"))),
            "tansy-final-week.tif", 25, 780, 21, Wear("microfilm", skew=0.3, grain=0.03, light=0.15),
        ),
    )  # fmt: skip
