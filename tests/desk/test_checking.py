"""Checking by forms alone: what is posted is in the journal before the page says saved, and shown for ever."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import duckdb
import pytest

from adminer.records import Box, Link
from adminer.store.journal import Act, read_journal
from tests.desk.desks import SmallDesk, mark_of, small_desk
from tests.desk.pages import CLIPPING, offer, page

CUP = offer(1, "cup and saucer", "0.69", y=100, conf=0.9)
PLATE = offer(2, "dinner plate", "0.49", y=200, conf=0.4)
CHECK = f"/check/{CLIPPING}"


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    made = small_desk(tmp_path, [page((CUP, PLATE)), page((offer(1, "bowl", "0.10", y=90, clipping_id="b0"),), "b0")])
    yield made
    made.desk.journal.close()


def acts(small: SmallDesk) -> tuple[Act, ...]:
    return read_journal(small.desk.folder.journal)


def test_the_least_sure_offer_comes_before_the_sure_one(small: SmallDesk) -> None:
    text = small.client().get(CHECK).text
    assert text.index("dinner plate</bdi>") < text.index("cup and saucer</bdi>")


def test_a_small_place_is_drawn_after_the_large_one_that_it_lies_on(tmp_path: Path) -> None:
    around = replace(CUP, box=Box(0, 80, 700, 300))
    made = small_desk(tmp_path, [page((around, PLATE))])
    text = made.client().get(CHECK).text
    made.desk.journal.close()
    assert text.index(f'id="f-{PLATE.offer_id}"') < text.index(f'id="f-{CUP.offer_id}"')
    assert text.index(f'<rect class="offer read" data-fact="{CUP.offer_id}"') < text.index(
        f'<rect class="offer read" data-fact="{PLATE.offer_id}"'
    )


def test_confirm_then_undo(small: SmallDesk) -> None:
    client = small.client()
    answer = client.post(f"{CHECK}/offer/{CUP.offer_id}/confirm", data={"mark": mark_of(client, CUP.offer_id)})
    assert "Saved: confirmed." in answer.text
    assert [(a.act, a.new["item"]) for a in acts(small)] == [("confirm", "cup and saucer")]
    assert small.desk.page(CLIPPING).page.adverts[0].offers[0].status == "confirmed"
    assert "Undone" in client.post(f"{CHECK}/undo").text
    assert small.desk.page(CLIPPING).page.adverts[0].offers[0].status == "read"
    assert [a.act for a in acts(small)] == ["confirm", "undo"]


def test_a_correction_holds_only_what_was_changed(small: SmallDesk) -> None:
    client = small.client()
    typed = {
        "mark": mark_of(client, CUP.offer_id),
        "item": "cup & saucer",
        "amount_0": "69¢",
        "condition_0": "everyone",
        "per_quantity_0": "1",
        "amount_1": "1.19",
        "condition_1": "without_card",
    }
    client.post(f"{CHECK}/offer/{CUP.offer_id}/correct", data=typed)
    (act,) = acts(small)
    assert set(act.new) == {"item", "prices"}
    assert [(p["amount"], p["condition"]) for p in act.new["prices"]] == [
        ("0.69", "everyone"),
        ("1.19", "without_card"),
    ]
    assert act.new["prices"][0]["box"] == [380, 108, 60, 24]  # the read price keeps its place on the scan
    small.rebuild()
    row = small.desk.shelf.rows("SELECT item, price, price_without_card, status FROM priced_offers WHERE item ^@ 'cup'")
    assert [(r["item"], str(r["price"]), str(r["price_without_card"]), r["status"]) for r in row] == [
        ("cup & saucer", "0.69", "1.19", "corrected")
    ]
    corrections = small.desk.shelf.rows("SELECT field, old, new, found FROM corrections ORDER BY field")
    assert tuple(corrections[0].values()) == (
        "item",
        "cup and saucer",
        "cup & saucer",
        True,
    )


@pytest.mark.parametrize(
    "typed",
    [
        {"item": ""},
        {"item": "x" * 500},
        {"item": "cup", "amount_0": "cheap"},
        {"item": "cup", "amount_0": "1.39.2"},
        {"item": "cup", "amount_0": "-1"},
        {"item": "cup", "amount_0": "1", "condition_0": "friends"},
        {"item": "cup", "amount_0": "1", "per_quantity_0": "0"},
        {"item": "cup", "amount_0": "1", "per_quantity_0": "NaN"},
        {"item": "cup", "pieces": "many"},
        {"item": "cup", "pieces": "٣٤٥٦"},
    ],
)
def test_what_cannot_be_taken_is_said_and_not_saved(small: SmallDesk, typed: dict[str, str]) -> None:
    client = small.client()
    typed["mark"] = mark_of(client, CUP.offer_id)
    answer = client.post(f"{CHECK}/offer/{CUP.offer_id}/correct", data=typed)
    assert answer.status_code == 422
    assert "Not saved" in answer.text
    assert not acts(small)


@pytest.mark.parametrize(
    ("typed", "amount"),
    [("1.39", "1.39"), ("$1.39", "1.39"), ("69¢", "0.69"), ("69 cts.", "0.69"), ("12½¢", "0.125"), (".69", "0.69"),
     ("$1,250", "1250.00"), ("5", "5.00")],
)  # fmt: skip
def test_prices_are_taken_as_people_write_them(small: SmallDesk, typed: str, amount: str) -> None:
    client = small.client()
    form = {"mark": mark_of(client, PLATE.offer_id), "item": "plate", "amount_0": typed}
    client.post(f"{CHECK}/offer/{PLATE.offer_id}/correct", data=form)
    assert acts(small)[0].new["prices"][0]["amount"] == amount


def test_a_page_that_is_no_longer_true_saves_nothing(small: SmallDesk) -> None:
    client = small.client()
    old = mark_of(client, CUP.offer_id)
    client.post(f"{CHECK}/offer/{CUP.offer_id}/correct", data={"mark": old, "item": "cup"})
    answer = client.post(f"{CHECK}/offer/{CUP.offer_id}/confirm", data={"mark": old})
    assert answer.status_code == 409
    assert len(acts(small)) == 1
    assert client.post(f"{CHECK}/offer/none/confirm", data={"mark": old}).status_code == 409


def test_a_box_is_read_and_added(small: SmallDesk) -> None:
    client = small.client()
    box = {"x": "40", "y": "400", "w": "300", "h": "60"}
    read = client.post(f"{CHECK}/read-box", data=box)
    assert "soup plate 29¢" in read.text
    assert not acts(small)
    client.post(f"{CHECK}/add", data={**box, "item": "soup plate", "amount_0": "29¢"})
    added = small.desk.page(CLIPPING).page.adverts[0].offers[-1]
    assert (added.item, str(added.prices[0].amount), added.box) == ("soup plate", "0.29", Box(40, 400, 300, 60))


@pytest.mark.parametrize(
    "box", [{}, {"x": "1"}, {"x": "-1", "y": "1", "w": "9", "h": "9"}, {"x": "nan", "y": "1", "w": "9", "h": "9"},
            {"x": "9999", "y": "1", "w": "9", "h": "9"}, {"x": "1", "y": "1", "w": "0", "h": "9"},
            {"x": "inf", "y": "1", "w": "9", "h": "9"}, {"x": "1e9", "y": "1", "w": "9", "h": "9"}],
)  # fmt: skip
def test_a_box_that_is_none_is_refused(small: SmallDesk, box: dict[str, str]) -> None:
    assert small.client().post(f"{CHECK}/read-box", data=box).status_code == 422


def test_adverts_are_corrected_moved_and_split(small: SmallDesk) -> None:
    client = small.client()
    advert = f"{CLIPPING}-a1"

    def post(act: str, **typed: str) -> int:
        form = {"mark": mark_of(client, advert), **typed}
        return int(client.post(f"{CHECK}/advert/{advert}/{act}", data=form).status_code)

    assert (
        post("correct", retailer="Tidewell Markets", city="Osterby", valid_from="1954-01-07", valid_to="1954-01-09")
        == 200
    )
    assert post("correct", valid_from="1954-01-09", valid_to="1954-01-07") == 422
    assert post("correct", valid_from="Thursday") == 422
    assert post("move", x="10", y="10", w="580", h="1000") == 200
    assert post("split", x="10", y="170", w="580", h="840") == 200
    adverts = small.desk.page(CLIPPING).page.adverts
    assert [(a.box, [o.item for o in a.offers]) for a in adverts] == [
        (Box(10, 10, 580, 160), ["cup and saucer"]),
        (Box(10, 170, 580, 840), ["dinner plate"]),
    ]
    assert adverts[0].retailer is not None
    assert adverts[0].retailer.name == "Tidewell Markets"
    assert str(adverts[0].valid_from) == "1954-01-07"


def test_notes_that_cannot_be_taken_stay_in_the_form(small: SmallDesk) -> None:
    typed = {"file": f"{CLIPPING}.png", "publication": "The Osterby Ledger", "published": "last spring"}
    answer = small.client().post("/in/notes", data=typed)
    assert answer.status_code == 422
    assert "“last spring” is no date" in answer.text
    assert 'value="The Osterby Ledger"' in answer.text
    assert re.search(rf'value="{CLIPPING}.png"[^>]* checked', answer.text)
    assert small.client().post("/in/notes", data={"publication": "The Osterby Ledger"}).status_code == 422
    assert not small.desk.folder.notes.exists() or "Ledger" not in small.desk.folder.notes.read_text()


def test_a_database_of_another_version_is_built_anew(small: SmallDesk) -> None:
    with duckdb.connect(str(small.desk.folder.database)) as connection:
        connection.execute("DROP TABLE date_estimates")
    before = small.reader.starts
    answer = small.client().get("/look/dates")
    assert answer.status_code == 409
    assert "built by another version" in answer.text
    assert small.reader.starts == before + 1


def test_a_fault_of_the_program_ends_in_a_page_that_says_so(small: SmallDesk, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise RuntimeError("<b>something no one thought of")

    monkeypatch.setattr("adminer.desk.views_check.queue_of", broken)
    client = small.client()
    client._transport.raise_server_exceptions = False  # as the server answers a browser
    answer = client.get("/check")
    assert answer.status_code == 500
    assert "A fault of the program (RuntimeError: &lt;b&gt;something" in answer.text


def test_clippings_are_tied_together_in_notes_and_journal(small: SmallDesk) -> None:
    client = small.client()
    client.post(f"{CHECK}/continues", data={"continues": "b0.png"})
    assert f"{CLIPPING}.png,,,,,,,,,,b0.png" in small.desk.folder.notes.read_text()
    client.post(f"{CHECK}/same", data={"same": "b0"})
    assert [(a.act, a.new) for a in acts(small)] == [
        ("note", {"file": f"{CLIPPING}.png", "continues": "b0.png"}),
        ("same_advert", {"same_advert": "b0"}),
    ]
    client.post(f"/journal/{acts(small)[0].id}/undo")
    assert "b0.png" not in small.desk.folder.notes.read_text()
    client.post(f"/journal/{acts(small)[-1].id}/undo")
    assert "b0.png" in small.desk.folder.notes.read_text()


def test_clippings_of_one_advert_share_their_days_and_are_one_sighting(tmp_path: Path) -> None:
    line = Link("tansy", "Tansy Morn", "Tansy Morn", Box(1, 1, 9, 9), 0.9, "as printed")
    pages = [
        page((replace(offer(1, "cup", "0.69", y=90, clipping_id=name), line=line),), name) for name in ("c1", "c2")
    ]
    dated = replace(pages[0].adverts[0], valid_from=date(1954, 1, 7), valid_to=date(1954, 1, 9))
    made = small_desk(tmp_path, [replace(pages[0], adverts=(dated,)), pages[1]])
    client = made.client()
    assert len(made.desk.shelf.rows("SELECT * FROM sightings")) == 2
    client.post("/check/c1/same", data={"same": "c2"})
    client.post("/check/c2/same", data={"same": "c1"})
    made.rebuild()
    days = "SELECT valid_from, valid_to, dated_by FROM adverts WHERE clipping_id = 'c2'"
    assert [tuple(row.values()) for row in made.desk.shelf.rows(days)] == [
        (date(1954, 1, 7), date(1954, 1, 9), "same advert")
    ]
    assert len(made.desk.shelf.rows("SELECT * FROM sightings")) == 1
    made.desk.journal.close()


def test_a_script_gets_the_facts_alone_and_the_next_one(small: SmallDesk) -> None:
    client = small.client()
    answer = client.post(
        f"{CHECK}/offer/{PLATE.offer_id}/confirm",
        data={"mark": mark_of(client, PLATE.offer_id)},
        headers={"x-part": "facts"},
    )
    assert "<html" not in answer.text
    assert answer.headers["x-next"] in (f"{CLIPPING}-a1", CUP.offer_id)


def test_what_a_new_reading_lost_is_listed_on_its_page_and_in_the_journal(small: SmallDesk) -> None:
    client = small.client()
    form = {"mark": mark_of(client, PLATE.offer_id), "item": "salad plate"}
    client.post(f"{CHECK}/offer/{PLATE.offer_id}/correct", data=form)
    small.pages[CLIPPING] = page((replace(CUP, item="cup and saucers"),))
    small.rebuild()
    text = client.get(CHECK).text
    assert "No longer found" in text
    assert "salad plate" in text
    journal = client.get("/journal").text
    assert "was not found again" in journal
    assert "salad plate" in journal


def test_the_queue_counts_acts_the_database_does_not_know_yet(small: SmallDesk) -> None:
    client = small.client()
    numbers = re.findall(r'<td class="number">(\d+)</td>', client.get("/check").text)
    client.post(f"{CHECK}/offer/{CUP.offer_id}/reject", data={"mark": mark_of(client, CUP.offer_id)})
    after = re.findall(r'<td class="number">(\d+)</td>', client.get("/check").text)
    assert sorted(numbers) == ["0", "0", "1", "2"]
    assert sorted(after) == ["0", "1", "1", "1"]
