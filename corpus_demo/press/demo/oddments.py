"""Everything else in the file: coupons, stamps, two shops on one scan, a newspaper page, the unreadable."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from random import Random

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Tag, Term, Wear, When
from ..staples import basket
from .common import PAPERS, days, money, one
from .groceries import page
from .shops import SERVERS, eights, pieces, quillfeather, sale
from .silverthaw import SILVER_SETTING, silverthaw
from .tansy import OPEN_STOCK, STARTER_ITEM, tansy

TUMBLERS = SetOf(8, (("tumbler", 8, "8 tumblers"),))


def _scan(
    file: str, spec: AdvertSpec, seed: int, width: int, base: float, wear: Wear, day: date, **more: object
) -> ScanSpec:
    town = spec.town or "Ferncliff"
    scan = ScanSpec(
        file=file, adverts=(spec,), seed=seed, width=width, base=base, wear=wear, published=day, publication=PAPERS.get(town), city=town, page=str(2 + seed % 11),
    )  # fmt: skip
    return replace(scan, **more)  # type: ignore[arg-type] # fields of the record by name


def _coupons() -> tuple[ScanSpec, ...]:
    sorrel = AdvertSpec(
        style="coupon", retailer="penhallow", retailer_text="Penhallow Stores", headline="Clip and Save", town="Osterby", line="winter_sorrel", line_text="Winter Sorrel", motif="sorrel",
        valid=(date(1950, 4, 13), date(1950, 4, 29)), when=days(date(1950, 4, 13), date(1950, 4, 15), "dash"), expiry=When("Coupon expires April 29, 1950", "1950-04-29"),
        items=(Item("4-piece place setting", (Tag(money(".89"), 1, None, "coupon", "with this coupon"), Tag(money("1.49"), 1, None, "everyone", "without coupon")), line="winter_sorrel", piece="place_setting",
                    composition=SetOf(4, (("dinner_plate", 1, "dinner plate"), ("bread_and_butter", 1, "bread and butter"), ("cup", 1, "cup"), ("saucer", 1, "saucer")))),),
        terms=(Term("limit", "Limit one coupon to a family", "1"), Term("with_purchase", "Void without a purchase of $2.50 or more", "2.50")),
        addresses=("Market Square, Osterby",),
    )  # fmt: skip
    star = AdvertSpec(
        style="coupon", retailer="tidewell", retailer_text="Tidewell Markets", headline="Evenstar Tumbler Offer", town="Wenning Falls", line="evenstar", line_text="Evenstar", motif="star",
        valid=(date(1964, 7, 9), date(1964, 7, 18)), when=days(date(1964, 7, 9), date(1964, 7, 11), "thru"), expiry=When("Coupon good thru Sat., July 18", "1964-07-18"),
        items=(Item("Set of 8 tumblers", (Tag(money("1.00"), 1, "set", "coupon", "with coupon"), Tag(money("1.79"), 1, "set", "without_card", "without")), line="evenstar", piece="tumbler", composition=TUMBLERS),
               one("Ice-lip pitcher", ".79", piece="pitcher", line="evenstar")),
        terms=(Term("limit", "One coupon per family", "1"), Term("rain_check", "Ask for a rain check if we are out")), maker_text="by Skerrow Glass",
        addresses=("Falls Parkway, Wenning Falls 30417",), slogan="Coupon",
    )  # fmt: skip
    return (
        _scan("coupon-sorrel-1950.jpg", sorrel, 101, 700, 20, Wear("newsprint", skew=0.9, light=0.2, show_through=0.1), date(1950, 4, 13)),
        _scan("coupon-evenstar.webp", star, 102, 720, 20, Wear("phone", perspective=0.03, skew=1.0, light=0.2), date(1964, 7, 9), noted=False, recipe="phone_photo"),
    )  # fmt: skip


def _stamps() -> tuple[ScanSpec, ...]:
    lantern = AdvertSpec(
        style="stamps", retailer="lantern_stamps", retailer_text="Lantern Stamps", headline="Yours for Lantern Stamps", kicker="at every redemption store", town="Ferncliff", line="winter_sorrel", line_text="Winter Sorrel", motif="sorrel",
        when=When("Fall 1961", "1961-23"),
        items=(Item("16-piece starter set", (Tag(money("9.95"), 1, None, "everyone", "or in cash"), Tag(money("2.50"), 1, None, "stamps", "with 2 filled books and")), line="winter_sorrel", piece="starter_set",
                    composition=SetOf(16, (("dinner_plate", 4, "4 dinner plates"), ("cereal_dish", 4, "4 cereals"), ("cup", 4, "4 cups"), ("saucer", 4, "4 saucers")))),
               one("Covered sugar and creamer", "2.25", piece="creamer", line="winter_sorrel")),
        terms=(Term("stamps", "1,500 stamps fill a book", "1500"), Term("tax", "State sales tax to be added")), addresses=("Redemption store: 40 Elm Street, Ferncliff",),
    )  # fmt: skip
    basket_stamps = AdvertSpec(
        style="stamps", retailer="tidewell", retailer_text="Tidewell Markets", headline="Double Stamps Wednesday", kicker="and a gift for your table", town="Osterby", line="harvest_lane", line_text="Harvest Lane", motif="wheat",
        valid=(date(1961, 2, 15), date(1961, 2, 15)), when=When("Wednesday, February 15", "1961-02-15"),
        items=(Item("Tid-bit tray", (Tag(money(".99"), 1, None, "stamps", "with 50 stamps"), Tag(money("3.25"), 1, None, "comparison", "value")), line="harvest_lane", piece="tidbit_tray"),),
        terms=(Term("stamps", "50 extra stamps with a $5.00 order", "50"), Term("while_they_last", "While supply lasts")), addresses=("Shore Road, Osterby",),
    )  # fmt: skip
    return (
        _scan("stamps-lantern-1961.jpg", lantern, 104, 980, 19, Wear("magazine", skew=-0.5, light=0.12), date(1961, 9, 1), ad_type="stamp premium", page=""),
        _scan("stamps-double.png", basket_stamps, 105, 760, 19, Wear("photocopy", skew=1.2, grain=0.08, spread=0.45), date(1961, 2, 14), noted=False, ad_type="stamp premium"),
    )  # fmt: skip


def _several() -> tuple[ScanSpec, ...]:
    """Two shops on one scan, a page of a newspaper, an advert that goes on overleaf."""
    start = date(1947, 5, 8)
    dime = AdvertSpec(
        style="handbill", retailer="corbelle", retailer_text="Corbelle Five & Dime", headline="Glass Sale", kicker="Anniversary days", town="Wenning Falls", valid=(start, date(1947, 5, 10)),
        when=days(start, date(1947, 5, 10), "dash"), addresses=("Next to the bank",), motif="star",
        items=(Item("Water tumblers", (Tag(money(".25"), 4),), piece="tumbler"), Item("Sherbets", (Tag(money(".10"), 1, "each"),), piece="sherbet"), Item("Refrigerator set", (Tag(money(".69")),), piece="pie_pan"),
               Item("Custard cups", (Tag(money(".23"), 3),), piece="pie_pan"), Item("Salt and pepper", (Tag(money(".19"), 1, "pair"),), piece="salt_and_pepper"), Item("Salad plates", (Tag(money(".125")),), piece="salad_plate"), Item("Vases and novelties", (Tag(money(".10"), role="range_low"), Tag(money("1.98"), role="range_high")))),
        terms=(Term("while_they_last", "While they last"),),
    )  # fmt: skip
    grocer = AdvertSpec(
        style="handbill", retailer="penhallow", retailer_text="Penhallow Stores", headline="Food Bargains", kicker="For thrifty tables", town="Wenning Falls", valid=(start, date(1947, 5, 10)),
        when=days(start, date(1947, 5, 10), "from_to"), items=basket(1947, Random("two up"), 6, 6), addresses=("27 Mill Lane, Wenning Falls",),
    )  # fmt: skip
    jeweler = AdvertSpec(
        style="tower", retailer="osterby_jewelers", retailer_text="Fallowby Jewelers", headline="Silverplate on Easy Terms", town="Osterby", line="dunmere", line_text="Dunmere", motif="plain", kicker="Credit gladly given",
        valid=(date(1954, 9, 30), date(1954, 10, 9)), when=days(date(1954, 9, 30), date(1954, 10, 9), "range"), addresses=("Market Square, Osterby",),
        items=(Item("52-piece silverplate set", (Tag(money("39.75"), 1, None, "everyone", "no carrying charge"), Tag(money("1.00"), 1, None, "everyone", "down", "down_payment"), Tag(money("1.00"), 1, "week", "everyone", "pay only", "instalment")), line="dunmere", piece="knife",
                    composition=SetOf(52, (("knife", 8, "8 knives"), ("fork", 8, "8 forks"), ("salad_fork", 8, "8 salad forks"), ("soup_spoon", 8, "8 soup spoons"), ("teaspoon", 16, "16 teaspoons"), ("tablespoon", 2, "2 tablespoons"), ("butter_knife", 1, "butter knife"), ("sugar_spoon", 1, "sugar spoon")))),),
        terms=(Term("tax", "Price includes federal tax"), Term("instalments", "Take a year to pay")),
    )  # fmt: skip
    handover = tansy(10, "Osterby", "tower", "dash", "Pick Your Pieces", (OPEN_STOCK[0], *OPEN_STOCK[2:5]))
    tidewell = page(
        110,
        date(1954, 9, 30),
        "Osterby",
        "tidewell",
        (4, 6),
        (),
        "dash",
        "Fall Round-Up",
        style="handbill",
        kicker="Friday and Saturday",
    )
    opening = quillfeather(
        "store", "A Houseful of New China", (
            sale("53-piece service for 8", "29.95", "39.50", ("", "usually"), line="winter_sorrel", name="Winter Sorrel", piece="dinner_set", made_of=pieces(53, *eights(("soup_plate", 8, "8 soups"), *SERVERS))),
            one("Demitasse", ".95", piece="demitasse", line="winter_sorrel"), one("Fast-stand gravy", "3.50", piece="gravy_boat", line="winter_sorrel"),
        ), date(1957, 3, 4), date(1957, 3, 9), "range", continued="Continued on page 9", motif="sorrel",
    )  # fmt: skip
    rest = quillfeather(
        "store", "More New China", (
            one("Celery tray", "1.75", piece="celery_tray", line="winter_sorrel"), one("Cookie jar", "2.98", piece="cookie_jar"), one("Tea set for six", "8.50", piece="tea_set"),
            sale("Tablecloth, 60 by 80", "3.99", "5.50", ("Special", "usually"), piece="tablecloth"),
        ), date(1957, 3, 4), date(1957, 3, 9), "range", kicker="Continued from page 8", motif="quince", when=None, terms=(Term("mail_order", "Mail and phone orders filled, HArbor 2-2140"),),
    )  # fmt: skip
    two = replace(
        _scan(
            "two-shops-1947.jpg",
            dime,
            106,
            1120,
            19,
            Wear("newsprint", skew=-0.8, light=0.2, show_through=0.1),
            start,
            sheet="two_up",
            ad_type="grocery",
        ),
        adverts=(dime, grocer),
    )
    ledger = _scan(
        "ledger-page-1953.jpg",
        handover,
        107,
        1700,
        16,
        Wear("microfilm", skew=0.3, grain=0.04, light=0.2),
        date(1953, 3, 19),
        sheet="page",
        ad_type="newspaper page",
    )
    sentinel = replace(
        _scan("ledger-page-1954.png", jeweler, 108, 1640, 16, Wear("newsprint", skew=-0.4, light=0.15, show_through=0.08), date(1954, 9, 30), sheet="page", ad_type="newspaper page"),
        adverts=(jeweler, tidewell),
    )  # fmt: skip
    bridal = quillfeather(
        "store", "Gifts for the Bride", (
            sale("Chop plate", "1.19", "1.75", ("Special", "usually"), line="harbor_band", name="Harbor Band", piece="chop_plate"), one("Coffee pot", "2.95", piece="coffee_pot", line="harbor_band"),
        ), date(1948, 5, 10), date(1948, 5, 15), "thru", motif="band", copy=("We wrap and deliver within the city.",),
    )  # fmt: skip
    dishes = replace(
        dime, headline="Dish Week", town="Ferncliff", valid=(date(1948, 5, 10), date(1948, 5, 15)), when=days(date(1948, 5, 10), date(1948, 5, 15), "range"),
        items=(
            Item("Cups and saucers", (Tag(money(".25"), 2),), piece="cup_and_saucer"), Item("Mixing bowls, set of 3", (Tag(money(".79"), 1, "set"),), piece="mixing_bowl"),
            Item("Pie plates", (Tag(money(".15")),), piece="pie_pan"), Item("Ash trays", (Tag(money(".25"), 3),), piece="ash_tray"),
        ),
    )  # fmt: skip
    larder = replace(
        grocer, headline="Week-End Foods", town="Ferncliff", valid=(date(1948, 5, 13), date(1948, 5, 15)), when=days(date(1948, 5, 13), date(1948, 5, 15), "dash"),
        items=basket(1948, Random("foot"), 6, 5), addresses=("114 Harbor Street",),
    )  # fmt: skip
    foot = replace(
        _scan("courier-page-1948.jpg", larder, 115, 1720, 16, Wear("microfilm", skew=-0.5, grain=0.035, light=0.2), date(1948, 5, 13), sheet="page_foot", ad_type="newspaper page"),
        adverts=(larder, bridal, dishes),
    )  # fmt: skip
    first = _scan(
        "quillfeather-1957-page-8.jpg",
        opening,
        109,
        1050,
        18,
        Wear("newsprint", skew=0.5, light=0.2, show_through=0.1),
        date(1957, 3, 4),
        ad_type="department store",
        look="modern",
        page="8",
    )
    second = _scan(
        "quillfeather-1957-page-9.jpg",
        rest,
        111,
        1050,
        18,
        Wear("newsprint", skew=-0.6, light=0.2, show_through=0.1),
        date(1957, 3, 4),
        ad_type="department store",
        look="modern",
        page="9",
        continues="quillfeather-1957-page-8.jpg",
    )
    return two, ledger, sentinel, foot, first, second


def _theatre() -> tuple[ScanSpec, ...]:
    grille = AdvertSpec(
        style="tower", retailer="penhallow", retailer_text="Penhallow Stores", headline="A Gift with Your Groceries", town="Ferncliff", line="quince_arbor", line_text="Quince Arbor", motif="quince", maker_text="Undine China",
        valid=(date(1938, 11, 3), date(1938, 11, 5)), when=days(date(1938, 11, 3), date(1938, 11, 5), "dash"), kicker="Save the slips",
        items=(Item("Breakfast plate", (Tag(money(".05"), 1, None, "with_purchase", "with a $1.00 purchase"), Tag(money(".15"), 1, None, "everyone", "alone")), line="quince_arbor", piece="breakfast_plate"),
               one("Fresh Eggs", ".32", "doz"), one("Creamery Butter", ".33", "lb"), Item("White Bread", (Tag(money(".075")),), size="loaf"), Item("Tomato Soup", (Tag(money(".20"), 3),))),
        terms=(Term("limit", "Not more than 6 to a family", "6"),), addresses=("114 Harbor Street",),
    )  # fmt: skip
    return (
        _scan("penhallow-1938-gift.png", grille, 112, 600, 20, Wear("photocopy", skew=-0.5, grain=0.1, spread=0.6), date(1938, 11, 3), remark="date from the reverse"),
    )  # fmt: skip


def _unreadable() -> tuple[ScanSpec, ...]:
    lost = silverthaw(5, "Osterby", "tower", "dash", "Punch Card Days", (SILVER_SETTING,))
    gone = tansy(3, "Wenning Falls", "spread", "dash", "Third Week", (STARTER_ITEM, *OPEN_STOCK[:3]))
    return (
        _scan("unreadable-fog.jpg", lost, 113, 560, 19, Wear("microfilm", skew=2, blackout=True), date(1956, 10, 11), readable=False, noted=False, remark="film out of focus"),
        _scan("unreadable-stain.png", gone, 114, 900, 18, Wear("newsprint", skew=-3, blackout=True), date(1953, 1, 29), readable=False, remark="water stain"),
    )  # fmt: skip


def scans() -> tuple[ScanSpec, ...]:
    """Return the other sheets of the file."""
    return (*_coupons(), *_stamps(), *_several(), *_theatre(), *_unreadable())
