"""Each kind of evidence: what it finds, what it leaves alone, and where its likelihood lies."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from math import exp, log

import numpy as np
import pytest

from adminer.dating import price_tables
from adminer.dating.evidence import (
    addresses,
    calendar_days,
    controls,
    events,
    file_prices,
    known_names,
    laws,
    printed_years,
    staples,
    telephones,
)
from adminer.dating.evidence.base import Case, Clue, Context, DatedPrice, KnownRun, ReadPrice, YearSpan
from adminer.dating.months import MONTHS, index_of
from adminer.records import Box

Finder = Callable[[Case, Context], Iterator[Clue]]
NOTHING = Context()


def case(text: str = "", **more: object) -> Case:
    return Case("c-a1", "c", text, **more)  # type: ignore[arg-type]  # the tests name fields of Case


def clues(finder: Finder, text: str, context: Context = NOTHING) -> list[Clue]:
    return list(finder(case(text), context))


def chance(clue: Clue, year: int, month: int = 6) -> float:
    return exp(float(clue.log_likelihood[index_of(date(year, month, 1))]))


@pytest.mark.parametrize(
    ("finder", "text", "likely", "unlikely"),
    [
        (addresses.find, "410 Market St., Osterby 54, Calif.", (1950, 6), (1942, 6)),
        (addresses.find, "410 Market St., Osterby 54, Calif.", (1944, 1), (1968, 6)),
        (addresses.find, "Ferncliff, OH 43211", (1966, 6), (1962, 6)),
        (addresses.find, "OSTERBY 3, OHIO", (1950, 6), (1942, 6)),
        (addresses.find, "Wenning Falls 7, O.", (1950, 6), (1942, 6)),
        (addresses.find, "Box 12, Ferncliff, NB 68501", (1966, 6), (1972, 6)),
        (telephones.find, "Phone CHelsea 2-5034", (1955, 6), (1925, 6)),
        (telephones.find, "Call 242-5034", (1966, 6), (1955, 6)),
        (telephones.find, "Phone (212) 242-5034", (1968, 6), (1949, 6)),
        (telephones.find, "Telephone MAin 3423", (1938, 6), (1968, 6)),
        (telephones.find, "PHONE 412", (1938, 6), (1970, 6)),
        (controls.find, "Bacon (8 red points) 39c", (1944, 6), (1948, 6)),
        (controls.find, "12 blue points each", (1944, 6), (1941, 6)),
        (controls.find, "Point-free cheese", (1944, 6), (1950, 6)),
        (controls.find, "With coffee stamp No. 27", (1943, 2), (1945, 6)),
        (controls.find, "All prices at or below ceiling prices", (1944, 6), (1949, 6)),
        (controls.find, "All prices at or below ceiling prices", (1952, 6), (1956, 6)),
        (controls.find, "7 p.m. Eastern War Time", (1943, 6), (1947, 6)),
        (controls.find, "BUY WAR BONDS", (1943, 6), (1950, 6)),
        (laws.find, "52 pieces, $29.75 plus 20% Fed. tax", (1950, 6), (1958, 6)),
        (laws.find, "Silver plate, Federal tax included", (1943, 6), (1938, 6)),
        (laws.find, "Made in Occupied Japan", (1950, 6), (1956, 6)),
        (laws.find, "fair trade price 4.95", (1955, 6), (1928, 6)),
        (laws.find, "detergent-proof decoration", (1962, 6), (1945, 6)),
        (events.find, "All for your Thanksgiving table", (1950, 11), (1950, 5)),
        (events.find, "Armistice Day Sale", (1950, 11), (1960, 11)),
        (events.find, "Veterans Day Sale", (1956, 11), (1950, 11)),
        (events.find, "Easter ham", (1954, 4), (1954, 9)),
        (printed_years.find, "Copyright 1951 by the makers", (1951, 6), (1946, 6)),
        (printed_years.find, "Serving Ferncliff since 1924", (1935, 6), (1920, 6)),
        (printed_years.find, "Founded in 1900. Our 50th Anniversary", (1950, 6), (1940, 6)),
    ],
)
def test_a_sign_is_found_and_lies_where_it_should(
    finder: Finder, text: str, likely: tuple[int, int], unlikely: tuple[int, int]
) -> None:
    found = clues(finder, text)
    assert found
    together = sum((c.log_likelihood for c in found), np.zeros(MONTHS))
    assert together[index_of(date(*likely, 1))] > together[index_of(date(*unlikely, 1))] + 1.0
    assert all(c.source and c.text for c in found)


@pytest.mark.parametrize(
    ("finder", "text"),
    [
        (addresses.find, "Pork chops 35, Calif. oranges 3 doz."),
        (addresses.find, "Serial number 43211"),
        (addresses.find, "Route 30, Harmon. Bulletin 31, October. March 12, Ferncliff"),
        (telephones.find, "45-piece set 9.95, model 2-50341"),
        (controls.find, "5 points of quality"),
        (laws.find, "stamped steel, no tax on your patience"),
        (events.find, "excellent, silent, golden"),
        (printed_years.find, "$19.50 or 1950c, No. 1951, model #1952, 1954-A"),
        (staples.find, "eggs and butter are good"),
    ],
)
def test_what_only_looks_like_a_sign_is_left(finder: Finder, text: str) -> None:
    assert clues(finder, text) == []


def test_no_clue_makes_any_month_impossible_and_none_is_above_one() -> None:
    text = (
        "Thurs., Mar. 12. Ferncliff 3, Ohio. CHelsea 2-5034. 8 red points. Ceiling prices. Copyright 1951. "
        "Thanksgiving Day, Nov. 23. 20% Fed. tax. Occupied Japan"
    )
    priced = (ReadPrice("eggs", 0.60, 1.0, "doz", "everyone", "price", None),)
    for finder in (calendar_days, printed_years, addresses, telephones, controls, events, laws, staples):
        for clue in finder.find(case(text, prices=priced), NOTHING):
            assert np.isfinite(clue.log_likelihood).all()
            assert clue.log_likelihood.max() < 0.5
            assert clue.log_likelihood.min() > -10


def test_a_sign_carries_the_box_of_its_words() -> None:
    words = ["BUY", "WAR", "BONDS", "NOW"]
    text = "BUY WAR BONDS NOW"
    starts = [0, 4, 8, 14]
    boxes = [Box(10 * i, 5, 9, 8) for i in range(len(words))]
    (clue,) = controls.find(case(text, starts=starts, boxes=boxes), NOTHING)
    assert clue.box == Box(0, 5, 29, 8)


def test_a_zone_stands_behind_the_advert_s_own_town_without_a_state() -> None:
    found = list(addresses.find(case("48 Mill Lane, Osterby 12", city="Osterby"), NOTHING))
    assert [c.text.split(":")[0] for c in found] == ["'Osterby 12'"]
    assert chance(found[0], 1950) > 100 * chance(found[0], 1942)
    for text in ("48 Mill Lane, Osterby 12", "Osterby 2 stores", "in Osterby 12 miles"):
        city = None if "Mill" in text else "Osterby"
        assert list(addresses.find(case(text, city=city), NOTHING)) == []


def test_a_state_sales_tax_counts_from_its_first_year_in_that_state() -> None:
    (ohio,) = laws.find(case("plus sales tax", state="OH"), NOTHING)
    (texas,) = laws.find(case("plus sales tax"), Context(region="TX"))
    assert (ohio.earliest, texas.earliest) == (date(1935, 1, 1), date(1961, 1, 1))


def test_a_named_holiday_printed_with_its_day_names_the_years() -> None:
    (_, moved) = clues(events.find, "Thanksgiving Day, Nov. 21")
    assert chance(moved, 1940, 11) == 1
    assert chance(moved, 1937, 11) < 0.1


EGGS = ReadPrice("Grade A large eggs", 0.60, 1.0, "doz", "everyone", "price", None)


def staple(item: str, amount: float, unit: str | None = "lb", quantity: float = 1.0) -> ReadPrice:
    return ReadPrice(item, amount, quantity, unit, "everyone", "price", None)


@pytest.mark.parametrize(
    ("price", "item", "cents"),
    [
        (EGGS, "eggs", 60),
        (staple("Coffee", 0.89), "coffee", 89),
        (staple("Pure cane sugar, 10 lb. bag", 0.95, None), "sugar", 47.5),
        (staple("White bread 20-oz. loaf", 0.25, None), "bread", 20),
        (staple("Milk, quart", 0.22, None), "milk", 44),
        (staple("Homogenized Milk ½ gal.", 0.43, None), "milk", 43),
        (staple("Milk, half-gallon", 0.43, None), "milk", 43),
        (staple("Milk, gallon jug", 0.86, None), "milk", 43),
        (staple("Eggs, ½ doz.", 0.30, None), "eggs", 60),
        (staple("U. S. No. 1 potatoes, peck", 0.75, None), "potatoes", 50),
        (staple("Butter", 1.50, "lb", 2), "butter", 75),
        (staple("Butter, 2 lbs.", 1.50, "lb", 2), "butter", 75),
        (staple("Sliced bacon 1/2-lb. pkg.", 0.33, None), "bacon", 66),
        (staple("Bread 1½-lb. loaf", 0.24, None), "bread", 16),
        (staple("Sugar-cured bacon", 0.59), "bacon", 59),
    ],
)
def test_staples_are_told_with_their_size(price: ReadPrice, item: str, cents: float) -> None:
    (found,) = staples.staple_prices(case(prices=(price,)))
    assert found.item == item
    assert found.cents == pytest.approx(cents, rel=1e-6)


@pytest.mark.parametrize(
    "price",
    [
        staple("Peanut butter", 0.39),
        staple("Evaporated milk", 0.12, "can"),
        staple("Butter dish", 0.79, None),
        staple("Covered Butter Dishes", 0.33, None),
        staple("Bread Knives", 0.15, None),
        staple("Bread & butter", 0.14, None),
        staple("Coffee pot", 1.98, None),
        staple("Potato chips", 0.29),
        staple("Sugar", 0.49, None),  # no size, so no price per pound
        staple("Egg noodles", 0.25),
        staple("Milk, 3 tall cans", 0.29, None),
        staple("Candy Easter eggs", 0.29, "doz"),
        staple("Coffee", 8.90),
        ReadPrice("Coffee", 0.99, 1.0, "lb", "former", "price", None),
    ],
)
def test_what_is_no_staple_or_has_no_size_is_left(price: ReadPrice) -> None:
    assert staples.staple_prices(case(prices=(price,))) == ()


def test_coffee_at_its_highest_points_to_the_middle_fifties() -> None:
    prices = (staple("Coffee", 1.09), EGGS, staple("Butter", 0.69), staple("Round steak", 0.85))
    (clue,) = staples.find(case(prices=prices), NOTHING)
    assert chance(clue, 1954) > 20 * chance(clue, 1948)
    assert chance(clue, 1954) > 20 * chance(clue, 1941)


def test_one_misread_staple_does_not_decide() -> None:
    good = (staple("Coffee", 0.24), staple("Butter", 0.36), staple("Eggs", 0.33, "doz"))
    clean = staples.likelihood(staples.staple_prices(case(prices=good)))
    spoilt = staples.likelihood(staples.staple_prices(case(prices=(*good, staple("Round steak", 1.20)))))
    assert abs(int(np.argmax(clean)) - int(np.argmax(spoilt))) <= 24


def test_months_that_fit_three_of_five_staples_outweigh_months_that_fit_none() -> None:
    # by the averages of data/staple_benchmarks.csv, bread, bacon and steak of June 1937 cost about the same in June
    # 1945, oranges and potatoes twice as much; in June 1965 none of the five does
    full, some, none = (index_of(date(year, 6, 1)) for year in (1937, 1945, 1965))
    five = tuple(
        staples.StaplePrice(item, float(price_tables.staples()[item].cents[full]), item, None)
        for item in ("bread", "bacon", "round_steak", "oranges", "potatoes")
    )
    likely = staples.likelihood(five)
    assert likely[full] == pytest.approx(0, abs=0.1)
    assert likely.max() == 0
    assert likely[some] - likely[none] > log(10)


def test_the_floor_of_staples_falls_with_each_one_that_fits() -> None:
    prices = staples.staple_prices(case(prices=(staple("Coffee", 0.24), staple("Butter", 0.36), EGGS)))
    floors = [float(staples.likelihood(prices[:n]).min()) for n in (1, 2, 3)]
    assert floors[0] > floors[1] > floors[2]


def test_the_same_lines_price_in_dated_adverts_draws_to_their_months() -> None:
    month = index_of(date(1951, 5, 1))
    dated = DatedPrice(month, float(np.log(0.99)), "d-a1", "d", "tidewell", "cardholder")
    context = Context(dated={file_prices.key_of("tansy-morn", "dinner_plate", "cardholder"): (dated,)})
    plate = ReadPrice("dinner plate", 0.99, 1.0, None, "cardholder", "price", None, "tansy-morn", "dinner_plate")
    (clue,) = file_prices.find(case(prices=(plate,)), context)
    assert chance(clue, 1951, 5) > chance(clue, 1957) > 0
    # the advert's own clipping is no evidence for itself
    own = Context(dated={k: (DatedPrice(month, 0.0, "c-a2", "c", None, "cardholder"),) for k in context.dated})
    assert list(file_prices.find(case(prices=(plate,)), own)) == []


def test_the_files_own_level_needs_several_dated_prices() -> None:
    plate = ReadPrice("45-piece set", 9.95, 1.0, None, "everyone", "price", None, None, "set:45")
    known = tuple(
        DatedPrice(index_of(date(1950, m, 1)), float(np.log(10 + m / 4)), f"d{m}-a1", f"d{m}", None, "everyone")
        for m in range(1, 9)
    )
    (clue,) = file_prices.find(case(prices=(plate,)), Context(levels={"set:45": known}))
    assert chance(clue, 1950) > chance(clue, 1933)
    assert list(file_prices.find(case(prices=(plate,)), Context(levels={"set:45": known[:3]}))) == []


def test_known_years_and_sightings_of_a_line_are_evidence() -> None:
    context = Context(
        lines={"tansy-morn": YearSpan(1949, 1955, "Tansy Morn")},
        makers={"marrowstone": YearSpan(1930, 1958, "Marrowstone Pottery")},
        retailers={"tidewell": YearSpan(1946, None, "Tidewell Markets")},
        objects={"tansy-morn": (YearSpan(1951, 1952, "a saucer marked 51"),)},
        seen={"tansy-morn": ((index_of(date(1951, 3, 1)), "x-a1"), (index_of(date(1951, 6, 1)), "y-a1"))},
    )
    advert = case(line_ids=("tansy-morn",), maker_ids=("marrowstone",), retailer_id="tidewell")
    found = list(known_names.find(advert, context))
    assert {c.kind for c in found} == {
        known_names.LINE,
        known_names.SEEN,
        known_names.MAKER,
        known_names.RETAILER,
        known_names.OBJECT,
    }
    together = sum((c.log_likelihood for c in found), np.zeros(MONTHS))
    assert index_of(date(1951, 1, 1)) <= int(np.argmax(together)) <= index_of(date(1951, 12, 1))


def test_a_week_of_a_known_schedule_dates_the_advert() -> None:
    run = KnownRun(date(1953, 1, 15), date(1953, 4, 29), "Tansy Morn", "printed schedule", date(1953, 1, 15))
    context = Context(runs={("tansy-morn", "penhallow"): run})
    named = {"line_ids": ("tansy-morn",), "retailer_id": "penhallow"}
    (eleventh,) = known_names.find(case("11th week of 15", **named), context)
    assert eleventh.earliest == date(1953, 3, 26)
    assert chance(eleventh, 1953, 3) > 100 * chance(eleventh, 1953, 1)
    (unnumbered,) = known_names.find(case("This week's feature", **named), context)
    assert chance(unnumbered, 1953, 1) == 1
    assert chance(unnumbered, 1953, 8) < 0.01
    assert list(known_names.find(case("x", line_ids=("tansy-morn",), retailer_id="tidewell"), context)) == []
