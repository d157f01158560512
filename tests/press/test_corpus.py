"""The committed demo corpus: size, kinds of file, the story it promises, and boxes that lie on ink."""

from __future__ import annotations

import json
from collections import Counter
from decimal import Decimal
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from adminer.intake.scans import open_scan

ROOT = Path(__file__).resolve().parents[2] / "corpus_demo"
Row = dict[str, Any]


@pytest.fixture(scope="module")
def rows() -> list[Row]:
    return [json.loads(line) for line in (ROOT / "truth.jsonl").read_text(encoding="utf-8").splitlines()]


@pytest.fixture(scope="module")
def readable(rows: list[Row]) -> list[Row]:
    return [row for row in rows if row["readable"]]


def test_there_are_enough_scans_of_every_kind_and_they_are_small(rows: list[Row]) -> None:
    files = [path for path in (ROOT / "scans").iterdir() if path.is_file()]
    assert len(files) >= 40
    assert sum(path.stat().st_size for path in files) <= 25_000_000
    assert {path.suffix for path in files} >= {".jpg", ".png", ".tif", ".webp", ".pdf"}
    assert {path.name for path in files} == {row["file"] for row in rows}


def test_a_quarter_is_undated_and_two_cannot_be_read(rows: list[Row]) -> None:
    assert 0.2 <= sum(row["undated"] for row in rows) / len(rows) <= 0.3
    assert sum(not row["readable"] for row in rows) == 2
    assert all("1938" <= row["true_date"][:4] <= "1964" for row in rows)


def test_one_file_is_turned_by_its_tag_and_two_have_several_leaves(rows: list[Row]) -> None:
    turned = Image.open(ROOT / "scans" / "quillfeather-1949-anniversary-turned.jpg")
    assert turned.getexif()[0x0112] == 6
    leaves = Counter(row["file"] for row in rows)
    assert sorted(Path(file).suffix for file, count in leaves.items() if count > 1) == [".pdf", ".tif"]


def _with(rows: list[Row], kind: str) -> int:
    return sum(any(price["condition"] == kind for price in row["prices"]) for row in rows)


def test_the_story_has_all_its_chapters(readable: list[Row]) -> None:
    weeks = Counter(
        row["lines"][0]["line_id"]
        for row in readable
        if row["lines"] and row["retailer_id"] in ("penhallow", "tidewell")
    )
    assert weeks["tansy_morn"] >= 8 and weeks["silverthaw"] >= 6
    assert weeks["copperwheat"] and weeks["harvest_lane"]
    for condition in ("cardholder", "without_card", "coupon", "with_purchase", "stamps", "former", "comparison"):
        assert _with(readable, condition), condition
    kinds = Counter(condition["kind"] for row in readable for condition in row["conditions"])
    for kind in (
        "punch_card",
        "limit",
        "rain_check",
        "with_purchase",
        "stamps",
        "tax",
        "instalments",
        "mail_order",
        "postage",
        "open_stock",
        "while_they_last",
        "deposit",
    ):
        assert kinds[kind], kind
    assert {"down_payment", "instalment", "postage", "range_low", "range_high"} <= {
        p["kind"] for row in readable for p in row["prices"]
    }
    assert (
        sum(len(row["prices"]) >= 40 and len(row["lines"]) > 0 for row in readable) >= 1
    )  # a full grocery page with its box
    assert sum(len(row["adverts"]) >= 2 for row in readable) >= 3
    assert sum(bool(row["schedule"]) for row in readable) >= 2
    assert {row["ad_type"] for row in readable} >= {
        "trade catalogue",
        "mail order",
        "department store",
        "grocery",
        "newspaper page",
    }


def test_every_form_of_price_is_there(readable: list[Row]) -> None:
    forms = Counter(price["form"] for row in readable for price in row["prices"])
    for form in (
        "raised_cents",
        "raised_cents_bare",
        "raised_cent_sign",
        "cents_sign",
        "dollars_point",
        "dollars_whole",
        "multiple",
        "fraction",
        "bare",
    ):
        assert forms[form] >= 3, form


def test_amounts_say_what_is_printed(readable: list[Row]) -> None:
    """Common practice, no source: "2 for 25¢" is 0.25 for two, "12½¢" is 0.125, "$1 29" with raised cents is 1.29."""
    for row in readable:
        for price in row["prices"]:
            text, amount = price["text_as_printed"], Decimal(price["amount_exact"])
            if price["form"] == "cents_sign":
                assert amount == Decimal(text.rstrip("¢c")) / 100
            elif price["form"] == "raised_cents":
                assert f"{amount:.2f}" == text.lstrip("$").replace(" ", ".")
            elif price["form"] == "fraction":
                assert amount == Decimal(text.rstrip("¢c").replace("½", ".5")) / 100


def test_listed_sets_add_up_by_the_rule_that_lids_count(readable: list[Row]) -> None:
    """Rule of the piece count: New York customs ruling 813612 (1995), "Large Sugar W/Cover 2 PC." in a set of 77."""
    two = {"covered_sugar", "covered_vegetable", "gravy_and_stand"}
    seen = 0
    for row in readable:
        for made_of in row["sets"]:
            if made_of["stated"] and made_of["listed"] and "ice" not in made_of["text"].lower():
                total = sum(count * (2 if piece in two else 1) for piece, count in made_of["listed"])
                assert total in (made_of["stated"], made_of["stated"] - 1), (
                    row["file"],
                    made_of,
                )  # a jug named outside the list
                seen += 1
    assert seen >= 15


def _leaf(row: Row) -> NDArray[np.uint8]:
    images = [image.pixels for image in open_scan(ROOT / "scans" / row["file"], row["file"])]
    pixels = images[row["leaf"] - 1]
    return pixels if pixels.ndim == 2 else np.asarray(pixels.mean(axis=2), np.uint8)


def test_boxes_lie_within_the_picture_and_on_ink(readable: list[Row]) -> None:
    faint = []
    for row in readable[::4]:
        gray = _leaf(row)
        assert [gray.shape[1], gray.shape[0]] == row["image_size"]
        for price in row["prices"]:
            x, y, w, h = price["box"]
            assert x >= 0 and y >= 0 and x + w <= gray.shape[1] and y + h <= gray.shape[0]
            part = gray[y : y + h, x : x + w].astype(int)
            # ink and ground both fill a good share of a tight box, whichever of the two is the dark one
            middle = (np.percentile(part, 3) + np.percentile(part, 97)) / 2
            share = (part < middle).mean()
            if not (0.12 < share < 0.88) or np.percentile(part, 97) - np.percentile(part, 3) < 50:
                faint.append((row["file"], price["text_as_printed"], round(float(share), 2)))
    assert not faint


def test_notes_names_and_logs_can_be_read_by_the_program() -> None:
    from adminer.dating.searches import read_searches
    from adminer.intake.notes import read_notes
    from adminer.names.authority import load_authorities
    from adminer.names.objects import read_objects

    notes = read_notes(ROOT / "notes.csv")
    assert not notes.problems
    assert any(note.continues for note in notes.notes)
    assert any("same advert" in (note.remark or "") for note in notes.notes)
    searches, objects = read_searches(ROOT), read_objects(ROOT / "objects.csv")
    assert not searches.problems and not objects.problems
    names = load_authorities(ROOT / "names")
    known = {line.id for line in names.lines}
    truth = [json.loads(line) for line in (ROOT / "truth.jsonl").read_text(encoding="utf-8").splitlines()]
    assert {line["line_id"] for row in truth for line in row["lines"]} <= known
    assert {row["retailer_id"] for row in truth} <= {shop.id for shop in names.retailers} | {
        maker.id for maker in names.makers
    }
