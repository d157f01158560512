"""Each kind of evidence: what it finds, what it leaves alone, and where its likelihood lies."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from math import exp

import numpy as np
import pytest

from adminer.dating.evidence import (
    addresses,
    calendar_days,
    controls,
    events,
    known_names,
    laws,
    printed_years,
    staples,
    telephones,
)
from adminer.dating.evidence.base import Case, Clue, Context, KnownRun, ReadPrice, YearSpan
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
        (events.find, "excellent, silent, golden, EXCEL- LENT money lent"),
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
