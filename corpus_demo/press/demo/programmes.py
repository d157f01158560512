"""The card programmes: Tansy Morn (1953), Silverthaw (1956), and one decal under two names (1959 and 1960)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Term, Wear
from .common import carded, days, one, placed

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


def _item(
    text: str, card: str, without: str, piece: str, line: str, labels: tuple[str, str] = CARD, unit: str | None = None
) -> Item:
    return carded(text, card, without, labels, unit, piece=piece, line=line)


def _tansy(text: str, card: str, without: str, piece: str, unit: str | None = None) -> Item:
    return _item(text, card, without, piece, "tansy_morn", CARD, unit)


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


def _week(spec: AdvertSpec, file: str, seed: int, width: int, base: float, wear: Wear, **more: object) -> ScanSpec:
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


SCHEDULE = (
    ("1st, 6th, 11th week", "dinner_plate", "Dinner plate"),
    ("2nd, 7th, 12th week", "saucer", "Saucer"),
    ("3rd, 8th, 13th week", "cup", "Cup"),
    ("4th, 9th, 14th week", "fruit_dish", "Fruit dish"),
    ("5th, 10th, 15th week", "bread_and_butter", "Bread and butter plate"),
)


def _tansy_scans() -> tuple[ScanSpec, ...]:
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
        _week(
            tansy(1, "Ferncliff", "spread", "from_to", "A Table to Be Proud Of", (STARTER_ITEM, *OPEN_STOCK[:4]), copy=copy1),
            "tansy-week-01.jpg", 11, 1400, 21, Wear("newsprint", skew=-0.7, light=0.12, show_through=0.08),
        ),
        _week(
            tansy(2, "Osterby", "tower", "dash", "This Week: Saucer", (
                _tansy("Saucer", ".09", ".29", "saucer", "each"), *OPEN_STOCK[:3], *SERVING[:2])),
            "tansy-week-02.png", 12, 620, 20, Wear("microfilm", skew=1.1, grain=0.07, light=0.25),
        ),
        _week(week4, "tansy-week-04-courier.jpg", 14, 1300, 20, Wear("newsprint", skew=0.9, fold=0.46, light=0.18, show_through=0.1)),
        _week(
            replace(week4, town="Osterby", addresses=TOWN_ADDRESSES["Osterby"]),
            "tansy-week-04-ledger.png", 14, 1300, 20, Wear("photocopy", skew=-1.3, grain=0.08, spread=0.5),
            publication="The Osterby Ledger", city="Osterby", remark="same advert as tansy-week-04-courier.jpg",
        ),
        _week(
            tansy(5, "Wenning Falls", "grid", "thru", "Choose Any Piece", (*OPEN_STOCK[:3], *SERVING[:3])),
            "tansy-week-05.jpg", 15, 900, 20, Wear("phone", perspective=0.035, light=0.2, skew=0.6), recipe="phone_photo",
        ),
        _week(
            tansy(7, "Ferncliff", "tower", "dash", "7th Week of 15", (
                _tansy("Saucer", ".09", ".29", "saucer", "each"), SERVING[1]), schedule=SCHEDULE, schedule_title="Save this schedule of weeks"),
            "tansy-week-07-schedule.png", 17, 700, 20, Wear("microfilm", skew=-0.5, grain=0.05, light=0.2),
        ),
        _week(
            tansy(8, "Osterby", "burst", "from_to", "Dress Up Your Table", (SETTING_ITEM, *OPEN_STOCK[3:], *SERVING)),
            "tansy-week-08.jpg", 18, 1000, 20, Wear("newsprint", skew=1.6, curl=14, light=0.2, show_through=0.12),
        ),
        _week(
            tansy(9, "Wenning Falls", "spread", "dash", "Same Lovely Pattern", (SETTING_ITEM, *OPEN_STOCK[:4]), copy=(
                "Owing to the great demand the pattern is now made for us by a second house. New pieces match those you have.",)),
            "tansy-week-09.jpg", 19, 1250, 19, Wear("newsprint", skew=-1.2, tear=True, light=0.15, show_through=0.06),
        ),
        _week(
            tansy(11, "Ferncliff", "grid", "thru", "Serving Pieces Now", SERVING[:4]),
            "tansy-week-11.png", 21, 820, 20, Wear("photocopy", skew=0.8, grain=0.05), noted=False,
        ),
        _week(
            tansy(13, "Osterby", "burst", "week", "Complete Your Set", (COMPLETER_ITEM, *OPEN_STOCK[:5])),
            "tansy-week-13.jpg", 23, 980, 19, Wear("newsprint", skew=0.4, spread=0.7, light=0.22, show_through=0.15),
        ),
        _week(
            tansy(15, "Ferncliff", "tower", "year", "Final Week!", (SETTING_ITEM, *OPEN_STOCK, *SERVING), terms=(
                Term("while_they_last", "Last chance: while our stock lasts"), Term("rain_check", "No rain checks after Saturday"))),
            "tansy-final-week.tif", 25, 780, 21, Wear("microfilm", skew=0.3, grain=0.03, light=0.15),
        ),
    )  # fmt: skip


SILVER = ("with filled card", "without card")
SILVER_START = date(1956, 9, 13)  # a Thursday


def _silver(text: str, card: str, without: str, piece: str, unit: str | None = None) -> Item:
    return _item(text, card, without, piece, "silverthaw", SILVER, unit)


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


def _silver_scans() -> tuple[ScanSpec, ...]:
    return (
        _week(
            silverthaw(1, "Osterby", "burst", "year", "Fine China on the Punch Card Plan", (SILVER_SETTING, *SILVER_STOCK[:4]),
                schedule=SILVER_WEEKS, schedule_title="Featured each week"),
            "silverthaw-opening.jpg", 41, 1300, 20, Wear("newsprint", skew=-0.4, light=0.15, show_through=0.1),
        ),
        _week(
            silverthaw(3, "Wenning Falls", "tower", "thru", "Feature of the Week", (SILVER_STOCK[1], *SILVER_STOCK[3:])),
            "silverthaw-week-03.png", 43, 560, 19, Wear("microfilm", skew=0.9, grain=0.06, light=0.3),
        ),
        _week(
            silverthaw(4, "Osterby", "spread", "dash", "More Than 1/3 Off", (SILVER_SETTING, *SILVER_STOCK[:4])),
            "silverthaw-week-04.jpg", 44, 1200, 19, Wear("newsprint", skew=1.0, fold=0.6, curl=-8, light=0.2),
        ),
        _week(
            silverthaw(6, "Wenning Falls", "grid", "from_to", "Snowflake Beauty for Your Table", (*SILVER_STOCK[:2], *SILVER_STOCK[3:5])),
            "silverthaw-week-06.webp", 46, 880, 20, Wear("phone", perspective=0.03, skew=-1.5, light=0.25), noted=False, recipe="phone_photo",
        ),
        _week(
            silverthaw(8, "Osterby", "tower", "thru", "Punch Card Special", (SILVER_STOCK[5], *SILVER_STOCK[:3]), motif="frost"),
            "silverthaw-week-08.png", 48, 600, 20, Wear("photocopy", skew=-0.9, grain=0.09, spread=0.55),
        ),
        _week(
            silverthaw(10, "Wenning Falls", "spread", "from_to", "Set for the Holidays", (SILVER_SETTING, SILVER_45, *SILVER_STOCK[2:5])),
            "silverthaw-week-10.jpg", 50, 1350, 20, Wear("newsprint", skew=0.5, light=0.3, show_through=0.14, spread=0.6),
        ),
        _week(
            silverthaw(12, "Osterby", "grid", "dash", "Twelfth and Final Week", (*SILVER_STOCK[:3], SILVER_STOCK[5])),
            "silverthaw-week-12.tif", 52, 840, 21, Wear("microfilm", skew=-1.0, grain=0.04, light=0.15),
        ),
    )  # fmt: skip


def _wheat_scans() -> tuple[ScanSpec, ...]:
    copper = ("with card", "regular price")

    def wheat(text: str, low: str, high: str, piece: str, line: str) -> Item:
        return _item(text, low, high, piece, line, copper)

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
        _week(spec(True, "tower", c, "Harvest of Values", (a[0], *a[1:]), "dash"), "copperwheat-march.jpg", 61, 640, 20, newsprint),
        _week(
            spec(True, "spread", date(1959, 4, 9), "Golden Grain, Golden Savings", (copper_set, *a[:4]), "thru"),
            "copperwheat-april.png", 62, 1150, 19, Wear("photocopy", skew=0.5, grain=0.06), noted=False,
        ),
        _week(
            spec(True, "grid", date(1959, 5, 21), "Add a Piece a Week", (*a[:4],), "week", terms=(Term("stamps", "Lantern Stamps given with every purchase"),)),
            "copperwheat-may.jpg", 63, 860, 20, Wear("phone", perspective=0.04, skew=2.0, light=0.2), recipe="phone_photo",
        ),
        _week(spec(False, "burst", d, "Bring in the Sheaves", (harvest_set, *b), "from_to"), "harvest-lane-october.jpg", 64, 1000, 20, newsprint),
        _week(
            spec(False, "tower", date(1960, 10, 20), "This Week's Piece", (b[1], *b[2:]), "dash"),
            "harvest-lane-soup.png", 65, 580, 20, Wear("microfilm", skew=-0.8, grain=0.07, light=0.25),
        ),
        _week(
            spec(False, "grid", date(1960, 11, 3), "Serve It in Style", (b[0], b[2], b[3], b[4]), "thru"),
            "harvest-lane-november.jpg", 66, 900, 20, Wear("newsprint", skew=-1.4, tear=True, light=0.15), noted=False,
        ),
    )  # fmt: skip


def scans() -> tuple[ScanSpec, ...]:
    """Return the sheets of all programmes."""
    return (*_tansy_scans(), *_silver_scans(), *_wheat_scans())
