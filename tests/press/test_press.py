"""The press: price typography, boxes carried through the geometry and, with a browser, prints that repeat."""

from __future__ import annotations

import json
from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest
from numpy.random import default_rng

from corpus_demo.press import fonts
from corpus_demo.press.browser import CHROMIUM, SCALE, Proof, press_browser
from corpus_demo.press.corpus import write_folder
from corpus_demo.press.demo import scans
from corpus_demo.press.facts import Item, Tag, Wear
from corpus_demo.press.geometry import fact_boxes, lay
from corpus_demo.press.looks import draw_look
from corpus_demo.press.numerals import as_printed, pick_form
from corpus_demo.press.sampler import print_numerals
from corpus_demo.press.sheet import Sheet

ROOT = Path(__file__).resolve().parents[2]
needs_press = pytest.mark.skipif(
    bool(fonts.missing()) or not CHROMIUM.exists(),
    reason="the press needs Chromium and its faces (python -m corpus_demo.press fonts); it is a development tool",
)


@pytest.mark.parametrize(
    ("amount", "quantity", "form", "printed"),
    [
        # forms of a period advert, common practice, no source
        ("1.39", 1, "raised_cents", "$1 39"),
        ("1.39", 1, "dollars_point", "$1.39"),
        ("0.125", 1, "fraction", "12½¢"),
        ("0.69", 1, "cents_sign", "69¢"),
        ("3.00", 1, "dollars_whole", "$3"),
    ],
)
def test_prices_are_written_in_the_forms_of_the_period(amount: str, quantity: int, form: str, printed: str) -> None:
    look = next(draw_look(seed) for seed in range(50) if draw_look(seed).cent_sign == "¢")
    assert as_printed(Tag(Decimal(amount), quantity), form, look) == printed  # type: ignore[arg-type] # a form from the table


def test_half_cents_and_multiples_choose_their_own_form() -> None:
    for seed in range(20):
        look = draw_look(seed)
        assert pick_form(Tag(Decimal("0.125")), look, small=True) == "fraction"
        assert pick_form(Tag(Decimal("0.25"), 2), look, small=False) == "multiple"


@pytest.mark.parametrize(
    "wear",
    [
        Wear("newsprint"),
        Wear("newsprint", skew=2.0),
        Wear("newsprint", skew=-1.0, curl=14, fold=0.5),
        Wear("phone", perspective=0.04, skew=1.5),
    ],
)
def test_a_box_follows_its_ink_through_skew_curl_fold_and_perspective(wear: Wear) -> None:
    labels = np.zeros((600 * SCALE, 400 * SCALE), np.uint16)
    labels[200 * SCALE : 240 * SCALE, 100 * SCALE : 220 * SCALE] = 1
    labels[500 * SCALE : 510 * SCALE, 300 * SCALE : 330 * SCALE] = 2
    proof = Proof(np.zeros_like(labels, np.uint8), labels, ("p0", "p1"), {}, {"a0": (0, 0, 800, 1200)}, [], [], ())
    lie = lay((600, 400), wear, default_rng(4))
    boxes = fact_boxes(proof, lie)
    marked = np.zeros((600, 400), np.float32)
    marked[200:240, 100:220] = 1.0
    rows, cols = np.nonzero(lie.warp(marked, 0.0) > 0.5)
    x, y, w, h = boxes["p0"]
    assert abs(x - cols.min()) <= 1 and abs(y - rows.min()) <= 1
    assert abs(x + w - 1 - cols.max()) <= 1 and abs(y + h - 1 - rows.max()) <= 1
    ax, ay, aw, ah = boxes["a0"]
    for bx, by, bw, bh in (boxes["p0"], boxes["p1"]):
        assert ax <= bx and ay <= by and bx + bw <= ax + aw and by + bh <= ay + ah


@needs_press
@pytest.mark.browser
@pytest.mark.slow
def test_the_same_sheet_prints_to_the_same_bytes(tmp_path: Path) -> None:
    specs = [spec for spec in scans() if spec.file == "stamps-double.png"]
    assert len(specs) == 1
    for folder in ("one", "two"):
        with press_browser() as browser:
            write_folder(browser, specs, tmp_path / folder)
    for name in ("truth.jsonl", "notes.csv", *(f"scans/{spec.file}" for spec in specs)):
        assert (tmp_path / "one" / name).read_bytes() == (tmp_path / "two" / name).read_bytes()
    committed = [
        json.loads(line) for line in (ROOT / "corpus_demo" / "truth.jsonl").read_text(encoding="utf-8").splitlines()
    ]
    printed = [json.loads(line) for line in (tmp_path / "one" / "truth.jsonl").read_text(encoding="utf-8").splitlines()]
    for row in printed:
        old = next(other for other in committed if other["file"] == row["file"])
        assert [p["amount_exact"] for p in row["prices"]] == [p["amount_exact"] for p in old["prices"]]


@needs_press
@pytest.mark.browser
@pytest.mark.slow
def test_numerals_come_with_labels(tmp_path: Path) -> None:
    with press_browser() as browser:
        print_numerals(browser, 2, 20, tmp_path)
    labels = [json.loads(line) for line in (tmp_path / "labels.jsonl").read_text(encoding="utf-8").splitlines()]
    assert len(labels) == 20
    assert len({label["form"] for label in labels}) >= 4
    for label in labels:
        assert (tmp_path / label["file"]).is_file()
        assert label["box"][2] > 0 and label["box"][3] > 0


@pytest.mark.parametrize(
    ("item", "named"),
    [
        (Item("Tansy Morn dinner plate", (), line="tansy_morn"), ["Tansy Morn"]),
        (Item("Dinner plate", (), line="tansy_morn"), []),
        (Item("Tansy Morn dinner plate", (), line="tansy_morn", line_text="Tansy Morn"), []),  # set on its own
    ],
)
def test_a_line_named_in_an_item_is_a_fact_of_the_page(item: Item, named: list[str]) -> None:
    sheet = Sheet(draw_look(1), 60.0)
    markup = sheet.item_text(item)
    assert [row["text"] for fact, row in sheet.facts.items() if fact.startswith("l")] == named
    assert markup.count("data-f=") == 1 + len(named)
