"""The department store, the mail-order house, the catalogues of maker and decal supplier."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from adminer.records import Condition, PriceRole

from ..facts import AdvertSpec, Item, ScanSpec, SetOf, Tag, Term, Wear, When
from .common import days, money, one, placed

COURIER = "The Ferncliff Courier"


def sale(
    text: str, now: str, was: str, words: tuple[str, str] = ("Sale", "Formerly"), *, kind: Condition = "former", line: str | None = None,
    name: str | None = None, made_of: SetOf | None = None, blurb: str = "", unit: str | None = None, piece: str = "",
) -> Item:  # fmt: skip
    """Return an item with its sale price and the price it had, or is worth."""
    tags = (Tag(money(now), 1, unit, "everyone", words[0]), Tag(money(was), 1, unit, kind, words[1], "reference"))
    return Item(text, tags, line=line, line_text=name, composition=made_of, blurb=blurb, piece=piece)


def pieces(stated: int, *listed: tuple[str, int, str]) -> SetOf:
    """Return a set with a list of its pieces."""
    return SetOf(stated, listed)


def eights(*extra: tuple[str, int, str]) -> tuple[tuple[str, int, str], ...]:
    """Return eight each of the five pieces of a setting, with what comes besides."""
    five = (
        ("dinner_plate", "dinner plates"), ("bread_and_butter", "bread and butters"), ("fruit_dish", "fruits"), ("cup", "cups"), ("saucer", "saucers"),
    )  # fmt: skip
    return tuple((piece, 8, f"8 {words}") for piece, words in five) + extra


SERVERS = (
    ("platter", 1, "platter"),
    ("vegetable_dish", 1, "open vegetable"),
    ("creamer", 1, "creamer"),
    ("covered_sugar", 1, "covered sugar"),
)
CHEST = SetOf(
    26,
    (
        ("knife", 6, "6 knives"),
        ("fork", 6, "6 forks"),
        ("teaspoon", 6, "6 teaspoons"),
        ("soup_spoon", 6, "6 soup spoons"),
        ("butter_knife", 1, "butter knife"),
        ("sugar_spoon", 1, "sugar shell"),
    ),
)
SIXES = tuple(
    (piece, 6, f"6 {words}")
    for piece, words in (
        ("dinner_plate", "dinner plates"),
        ("dessert_plate", "pie plates"),
        ("cup", "cups"),
        ("saucer", "saucers"),
        ("fruit_dish", "fruits"),
    )
)


def quillfeather(
    style: str, headline: str, items: tuple[Item, ...], start: date, end: date, form: str, **more: object
) -> AdvertSpec:
    """Write an advert of the department store."""
    spec = AdvertSpec(
        style=style,
        retailer="quillfeather",
        retailer_text="Quillfeather's",
        items=items,
        headline=headline,
        town="Ferncliff",
        valid=(start, end),
        when=days(start, end, form),
        addresses=("China and Glass, Fourth Floor", "Harbor Street at Fifth, Ferncliff"),
        slogan="The store of good counsel",
    )
    return replace(spec, **more)  # type: ignore[arg-type] # fields of the record by name


def _store(file: str, spec: AdvertSpec, seed: int, width: int, base: float, wear: Wear, **more: object) -> ScanSpec:
    _, (first, _) = placed(spec)
    scan = ScanSpec(
        file=file, adverts=(spec,), seed=seed, width=width, base=base, wear=wear, published=first, publication=COURIER,
        city="Ferncliff", page=str(3 + seed % 7), ad_type="department store", look="modern",
    )  # fmt: skip
    return replace(scan, **more)  # type: ignore[arg-type] # fields of the record by name


def _department_store() -> tuple[ScanSpec, ...]:
    quince32 = pieces(32, *SIXES, ("platter", 1, "platter"), ("vegetable_dish", 1, "vegetable"))
    band53 = pieces(53, *eights(("soup_plate", 8, "8 soups"), *SERVERS))
    tumblers = SetOf(8, (("tumbler", 8, "8 tumblers"),))
    fall = quillfeather(
        "store", "Fall Sale of Dinnerware", (
            sale("32-piece dinner set", "3.98", "5.95", ("Sale price", "Regularly"), made_of=quince32, piece="dinner_set", line="quince_arbor", name="Quince Arbor"),
            one("Cream soup", ".25", "each", piece="cream_soup", line="quince_arbor"),
            one("Covered butter dish", ".79", piece="butter_dish", line="quince_arbor"),
            sale("Luncheon cloth", "1.00", "1.59", ("Sale price", "Regularly"), blurb="Hemmed linen, 52 by 52 inches, in four colors.", piece="tablecloth"),
        ), date(1938, 9, 19), date(1938, 9, 24), "year", motif="quince",
        copy=("Six days only. Every piece is first quality and may be had afterward from open stock.",),
        terms=(Term("open_stock", "Open stock: replace a broken piece at any time"), Term("instalments", "Use our lay-away plan")),
    )  # fmt: skip
    january = quillfeather(
        "clearance", "January China Clearance", (
            sale("53-piece service for 8", "12.95", "19.50", ("Now", "Formerly"), line="harbor_band", name="Harbor Band", made_of=band53, piece="dinner_set"),
            sale("Oval platter", ".89", "1.35", ("Now", "Formerly"), line="harbor_band", name="Harbor Band", piece="platter"),
            sale("Teapot with cover", "1.49", "2.25", ("Now", "Formerly"), line="quince_arbor", name="Quince Arbor", piece="teapot"),
            sale("Gravy boat and stand", "1.19", "1.98", ("Now", "Formerly"), line="quince_arbor", name="Quince Arbor", piece="gravy_and_stand"),
            sale("Water goblet", ".22", ".35", ("Now", "Formerly"), piece="goblet"),
            sale("Footed sherbet", ".19", ".30", ("Now", "Formerly"), piece="sherbet"),
            sale("Punch bowl, 12 cups, ladle", "2.88", "4.50", ("Now", "Formerly"), piece="punch_set"),
        ), date(1941, 1, 6), date(1941, 1, 11), "from_to", motif="band",
        terms=(Term("cash", "All sales for cash and final"), Term("mail_order", "No mail or phone orders")),
        copy=("33⅓% off every piece of these patterns not listed here. Nothing reserved.",),
    )  # fmt: skip
    wartime = quillfeather(
        "store", "China Is Still Yours to Buy", (
            one("Cup and saucer", ".49", piece="cup_and_saucer", line="harbor_band", line_text="Harbor Band"),
            sale("26-piece flatware set", "9.95", "14.50", ("plus 10% Fed. tax", "usually"), line="dunmere", name="Dunmere",
                 made_of=CHEST),
            one("Mixing bowls, nest of 3", "1.00", piece="mixing_bowl"),
        ), date(1943, 10, 4), date(1943, 10, 9), "thru", motif="band",
        addresses=("Ferncliff 7", "Phone HArbor 2140"), copy=("Pottery takes no steel and no points. Save your fats and your tins and set a cheerful table.",),
        terms=(Term("mail_order", "Mail orders filled while stocks permit"), Term("notice", "Buy War Bonds and Stamps at our booth, street floor")),
    )  # fmt: skip
    bridal = quillfeather(
        "store", "For the June Bride", (
            sale("45-piece service for 8", "24.95", "34.95", ("", "Comparable value"), kind="comparison", line="winter_sorrel", name="Winter Sorrel", made_of=pieces(45, *eights(*SERVERS)), piece="dinner_set"),
            sale("5-pc. place setting", "2.95", "3.75", ("", "if bought by the piece"), kind="comparison", line="winter_sorrel", name="Winter Sorrel",
                 made_of=pieces(5, ("dinner_plate", 1, "dinner"), ("salad_plate", 1, "salad"), ("bread_and_butter", 1, "bread and butter"), ("cup", 1, "cup"), ("saucer", 1, "saucer")), piece="place_setting"),
            one("Chop plate, 12-in.", "2.25", piece="chop_plate", line="winter_sorrel"),
            one("After-dinner cup and saucer", "1.10", piece="demitasse", line="winter_sorrel"),
            one("Cake plate", "1.95", piece="cake_plate", line="winter_sorrel"),
        ), date(1952, 6, 2), date(1952, 6, 14), "range", motif="sorrel",
        terms=(Term("instalments", "Club plan: pay by the week"), Term("guarantee", "Open stock promised for ten years")),
    )  # fmt: skip
    anniversary = quillfeather(
        "clearance", "Anniversary Sale", (
            sale("16-pc. starter set", "5.95", "8.95", ("Anniversary", "Reg."), line="winter_sorrel", name="Winter Sorrel", made_of=pieces(16, ("dinner_plate", 4, "4 dinner plates"), ("bread_and_butter", 4, "4 bread and butters"), ("cup", 4, "4 cups"), ("saucer", 4, "4 saucers"))),
            sale("Covered casserole", "2.49", "3.95", ("Anniversary", "Reg."), line="winter_sorrel", name="Winter Sorrel", piece="covered_vegetable"),
            sale("Iced tea glasses", "1.75", "2.40", ("Anniversary", "Reg."), unit="doz", piece="iced_tea"),
            sale("Salad bowl", "1.29", "1.95", ("Anniversary", "Reg."), piece="salad_bowl"),
            sale("Dutch oven", "3.33", "4.50", ("Anniversary", "Reg."), piece="dutch_oven"),
            sale("Tea towels", ".33", ".49", ("Anniversary", "Reg."), unit="each", piece="dish_towel"),
        ), date(1949, 10, 13), date(1949, 10, 22), "numeric", motif="sorrel", terms=(Term("limit", "Limit 2 to a customer", "2"), Term("deposit", "A small deposit holds any item")),
    )  # fmt: skip
    after = quillfeather(
        "clearance", "Close-Out of Discontinued Patterns", (
            sale("Tansy Morn dinner plate", ".25", ".65", ("Close-out", "Was"), piece="dinner_plate", line="tansy_morn"),
            sale("Soup plate", ".29", ".75", ("Close-out", "Was"), line="quince_arbor", name="Quince Arbor", piece="soup_plate"),
            sale("Evenstar tumbler", ".12", ".25", ("Close-out", "Was"), piece="tumbler", line="evenstar", made_of=tumblers, unit="each"),
            sale("Pickle dish", ".39", ".95", ("Close-out", "Was"), line="winter_sorrel", name="Winter Sorrel", piece="relish"),
            sale("Egg cup", ".19", ".50", ("Close-out", "Was"), piece="egg_cup"),
        ), date(1958, 8, 11), date(1958, 8, 17), "week", motif="tansy", terms=(Term("while_they_last", "Quantities limited, rights reserved"), Term("cash", "No exchanges")),
    )  # fmt: skip
    return (
        _store("quillfeather-1938-fall.jpg", fall, 71, 1180, 18, Wear("magazine", skew=0.4, light=0.1)),
        _store("quillfeather-1941-january.png", january, 72, 1000, 19, Wear("photocopy", skew=-0.7, grain=0.05)),
        _store("quillfeather-1943.jpg", wartime, 73, 900, 19, Wear("newsprint", skew=1.0, show_through=0.16, light=0.2, spread=0.6), noted=False, remark="found folded in a cook book"),
        _store("quillfeather-1949-anniversary-turned.jpg", anniversary, 74, 1020, 19, Wear("phone", perspective=0.03, skew=-1.0, light=0.2), recipe="phone_photo"),
        _store("quillfeather-1952-bridal.jpg", bridal, 75, 1280, 18, Wear("magazine", skew=-0.3, light=0.12, curl=10)),
        _store("quillfeather-1958-closeout.png", after, 76, 940, 19, Wear("microfilm", skew=0.7, grain=0.07, light=0.25)),
    )  # fmt: skip


def _terms_of(amount: str, role: PriceRole, label: str, unit: str | None = None) -> Tag:
    return Tag(money(amount), 1, unit, "everyone", label, role)


def _mail_order() -> tuple[ScanSpec, ...]:
    holly32 = pieces(32, *SIXES, ("platter", 1, "1 platter"), ("baker", 1, "1 oval vegetable"))
    holly95 = pieces(
        95,
        *((p, 12, f"12 {w}") for p, w in (("dinner_plate", "dinner plates"), ("salad_plate", "salad plates"), ("bread_and_butter", "bread and butters"), ("fruit_dish", "fruits"), ("soup_plate", "soups"), ("cup", "cups"), ("saucer", "saucers"))),
        ("platter", 2, "2 platters"), ("vegetable_dish", 2, "2 vegetables"), ("covered_vegetable", 1, "covered vegetable"), ("creamer", 1, "creamer"), ("covered_sugar", 1, "covered sugar"), ("gravy_and_stand", 1, "gravy boat and stand"),
    )  # fmt: skip
    first = AdvertSpec(
        style="mailorder", retailer="thistlewick", retailer_text="Thistlewick & Vane", headline="Dinnerware by Mail",
        kicker="Shipped from our pottery warehouse", motif="sorrel", when=When("Spring and Summer 1948", "1948-21/1948-22"),
        items=(
            Item("32-Piece Dinner Set", (Tag(money("7.45")), _terms_of("1.50", "down_payment", "Cash down"), _terms_of("1.00", "instalment", "then", "month")), line="winter_sorrel", line_text="Hollyberry",
                 blurb="Sprays of leaf and berry under a clear glaze. Service for six:", composition=holly32, number="45 K 3021", shipping="Shpg. wt. 26 lbs", piece="dinner_set"),
            Item("95-Piece Dinner Set", (Tag(money("27.95")), _terms_of("3.00", "down_payment", "Cash down"), _terms_of("2.50", "instalment", "then", "month")), line="winter_sorrel", line_text="Hollyberry",
                 blurb="Everything for twelve:", composition=holly95, number="45 K 3023", shipping="Shpg. wt. 79 lbs", piece="dinner_set"),
            Item("Open Stock Cup", (Tag(money(".18"), 1, "each"), _terms_of(".02", "postage", "Postage extra")), line="winter_sorrel", blurb="Add or replace as you please.", number="45 K 3031", piece="cup"),
            Item("Covered Sugar", (Tag(money(".87")),), line="winter_sorrel", blurb="With its own lid.", number="45 K 3036", shipping="Postpaid", piece="covered_sugar"),
            Item("Gravy Boat", (Tag(money("1.05")),), line="winter_sorrel", blurb="Stand attached.", number="45 K 3038", piece="gravy_boat"),
        ),
        terms=(Term("mail_order", "Send order and remittance to our nearest house"), Term("postage", "Add postage from the table on page 604"), Term("guarantee", "Safe arrival guaranteed")),
        copy=("We pack each set in straw and a stout carton. If a piece is broken on the way, write to us and we send another without charge.",),
    )  # fmt: skip
    second = replace(
        first, headline="Glass and Flatware", kicker="For daily use and for company", motif="star", copy=(),
        items=(
            Item("Set of 8 Tumblers", (Tag(money(".98"), 1, "set"),), blurb="Clear glass, star cut.", composition=SetOf(8, (("tumbler", 8, "8 tumblers"),)), number="45 K 4102", shipping="Shpg. wt. 7 lbs", piece="tumbler"),
            Item("7-Piece Water Set", (Tag(money("1.79")),), composition=SetOf(7, (("pitcher", 1, "ice-lip jug"), ("tumbler", 6, "6 tumblers")), "Ice-lip jug and 6 tumblers"), number="45 K 4110", piece="water_set"),
            Item("26-Piece Flatware Set", (Tag(money("12.50")), _terms_of("2.00", "down_payment", "Cash down"), _terms_of("2.00", "instalment", "then", "month")), line="dunmere", line_text="Dunmere",
                 blurb="Silver plate, federal tax included:", number="45 K 5200", piece="knife", composition=CHEST),
            Item("Dessert Forks", (Tag(money("2.40"), 6),), line="dunmere", blurb="To match.", number="45 K 5207", piece="fork"),
            Item("Juice Glasses", (Tag(money(".05"), 1, "each"),), blurb="5-ounce size, heat treated.", number="45 K 4117", piece="juice_glass"),
            Item("Linen Tea Towels", (Tag(money("1.00"), 3),), blurb="Absorbent crash, fast borders.", number="36 K 880", piece="dish_towel"),
        ),
    )  # fmt: skip
    page1 = ScanSpec(
        file="thistlewick-1948.pdf", adverts=(first,), seed=81, width=1240, base=22, wear=Wear("catalogue", skew=0.3, light=0.1), published=date(1948, 2, 1),
        publication="Thistlewick & Vane, Spring and Summer 1948", page="603", ad_type="mail order", found_in="catalogue", recipe="catalogue_page",
    )  # fmt: skip
    page2 = replace(
        page1, file="thistlewick-1948.pdf#2", adverts=(second,), seed=82, leaf_of="thistlewick-1948.pdf", page="604"
    )
    return page1, page2


def _catalogues() -> tuple[ScanSpec, ...]:
    def decal(number: str, name: str, line: str | None, size: str, hundred: str, thousand: str) -> Item:
        tags = (
            Tag(money(hundred), 100, None, "everyone", "per 100"),
            Tag(money(thousand), 1000, None, "everyone", "per 1000"),
        )
        return Item(name, tags, line=line, line_text=name if line else None, number=number, size=size)

    def dozen(number: str, name: str, size: str, price: str, piece: str, thinner: str | None = None) -> Item:
        tags = [Tag(money(price), 1, "doz", "everyone", "White")]
        if thinner:
            tags.append(Tag(money(thinner), 1, "doz", "everyone", "Decorated"))
        return Item(name, tuple(tags), number=number, size=size, piece=piece)

    designs = AdvertSpec(
        style="catalogue", retailer="larkspindle", retailer_text="Larkspindle Decal Company", headline="Price List of Stock Decals", kicker="Design", motif="tansy", when=When("Effective March 1, 1951", "1951-03-01"), addresses=("Ceramic transfers for the pottery trade",),
        items=(
            decal("2209", "Quince Bough", "quince_arbor", "3 in. spray", "4.20", "36.50"), decal("2214", "Meadow Rue", None, "2½ in. spray", "3.75", "32.00"),
            decal("3866", "Sorrel & Berry", "winter_sorrel", "3 in. spray", "4.60", "39.75"), decal("3871", "Bryony Wreath", None, "border, 9 in.", "8.90", "79.50"),
            decal("4172", "Golden Buttons", "tansy_morn", "3 in. spray", "4.85", "42.25"), decal("4173", "Golden Buttons", "tansy_morn", "1½ in. sprig", "2.10", "18.00"),
            decal("4188", "Cornflower Chain", None, "border, 10 in.", "9.40", "84.00"), decal("4190", "Larch Cone", None, "2 in. sprig", "2.60", "21.75"),
            decal("4202", "Blue Vetch", None, "3 in. spray", "5.05", "44.00"),
        ),
        terms=(Term("cash", "Terms 2% ten days, net thirty"), Term("postage", "Express charges collect")), copy=("Samples of any design on request. Allow six weeks for special shapes. Colors may carry lead: fire as directed.",),
    )  # fmt: skip
    designs2 = replace(
        designs, headline="Price List of Stock Decals, 1955", when=When("Effective January 3, 1955", "1955-01-03"), motif="frost", copy=(),
        items=(
            decal("5417", "Wheat Spray", "copperwheat", "3½ in. spray", "6.35", "56.00"), decal("5418", "Wheat Spray", "copperwheat", "1½ in. sprig", "2.95", "25.50"),
            decal("5530", "Frost Star", "silverthaw", "1 in. scatter", "1.90", "16.25"), decal("5533", "Pine Shadow", None, "3 in. spray", "5.80", "51.00"),
            decal("5541", "Sand Dollar", None, "2 in. sprig", "3.15", "27.75"), decal("5560", "Ember Leaf", None, "border, 9 in.", "10.25", "92.50"),
        ),
    )  # fmt: skip
    pottery = AdvertSpec(
        style="catalogue", retailer="undine", retailer_text="Undine China Works", headline="Esplanade Shape: Net Prices per Dozen", kicker="Article",
        when=When("July 1, 1957", "1957-07-01"), addresses=("Manufacturers of Fine Dinnerware",), motif="frost",
        items=(
            dozen("101", "Dinner plate", "10 in.", "4.32", "dinner_plate", "6.84"), dozen("102", "Salad plate", "7¼ in.", "2.88", "salad_plate", "4.56"), dozen("103", "Bread and butter", "6¼ in.", "2.16", "bread_and_butter", "3.48"),
            dozen("110", "Tea cup", "8 oz.", "3.00", "cup", "4.44"), dozen("111", "Saucer", "6 in.", "1.92", "saucer", "2.94"), dozen("120", "Coupe soup", "7½ in.", "3.84", "coupe_soup", "5.76"), dozen("121", "Fruit", "5 in.", "1.98", "fruit_dish", "3.12"),
            dozen("130", "Platter", "13 in.", "11.40", "platter", "17.25"), dozen("131", "Baker", "9 in.", "8.70", "baker", "13.20"), dozen("140", "Creamer", "9 oz.", "6.60", "creamer", "9.90"), dozen("141", "Sugar and cover", "10 oz.", "9.60", "covered_sugar", "14.10"),
            dozen("150", "Fast stand gravy", "14 oz.", "13.80", "gravy_boat"),
        ),
        terms=(Term("cash", "F.O.B. pottery; no charge for packing in carload lots"),),
    )  # fmt: skip
    base = ScanSpec(
        file="larkspindle-price-lists.tif", adverts=(designs,), seed=84, width=1240, base=20, wear=Wear("photocopy", skew=0.5, grain=0.04), published=date(1951, 3, 1), publication="Larkspindle list",
        ad_type="trade catalogue", found_in="pottery archive", recipe="catalogue_page",
    )  # fmt: skip
    return (
        base,
        replace(base, file="larkspindle-price-lists.tif#2", adverts=(designs2,), seed=85, leaf_of=base.file, published=date(1955, 1, 3)),
        replace(base, file="undine-1957-price-list.jpg", adverts=(pottery,), seed=88, width=1150, wear=Wear("catalogue", skew=-0.6, light=0.15, fold=0.5), published=date(1957, 7, 1), publication="Undine price list"),
    )  # fmt: skip


def scans() -> tuple[ScanSpec, ...]:
    """Return the sheets of stores, mail order and the trade."""
    return (*_department_store(), *_mail_order(), *_catalogues())
