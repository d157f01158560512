"""Names told at the desk: what a person types or accepts enters the names of the file, and can be taken back."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from adminer.records import Box, Link
from tests.desk.desks import mark_of, small_desk
from tests.desk.pages import CLIPPING, offer, page

CUP = offer(1, "cup and saucer", "0.69", y=100, conf=0.9)
PLATE = offer(2, "dinner plate", "0.49", y=200, conf=0.4)
CHECK = f"/check/{CLIPPING}"


def test_a_misreading_put_right_on_two_clippings_enters_the_repair_list(tmp_path: Path) -> None:
    pages = [page((offer(1, "cup and sauter", "0.69", y=100, clipping_id=name),), name) for name in ("c1", "c2")]
    made = small_desk(tmp_path, pages)
    client = made.client()
    for name in ("c1", "c2"):
        form = {"mark": mark_of(client, f"{name}-a1-o1"), "item": "cup and saucer", "amount_0": "0.69"}
        answer = client.post(f"/check/{name}/offer/{name}-a1-o1/correct", data=form)
    assert "“sauter” is “saucer”" in answer.text
    assert made.desk.authorities().repairs == {"sauter": "saucer"}
    learned = next(act for act in made.desk.journal.acts if act.kind == "name")
    client.post(f"/journal/{learned.id}/undo")
    assert made.desk.authorities().repairs == {}
    made.desk.journal.close()


def test_a_line_and_a_shop_a_person_names_enter_the_names_of_the_file(tmp_path: Path) -> None:
    made = small_desk(tmp_path, [page((CUP, PLATE))])
    client = made.client()
    typed = {
        "mark": mark_of(client, CUP.offer_id),
        "item": CUP.item,
        "amount_0": "0.69",
        "line": "Silverthaw",
    }
    assert "Saved" in client.post(f"{CHECK}/offer/{CUP.offer_id}/correct", data=typed).text
    advert = f"{CLIPPING}-a1"
    shop = {"mark": mark_of(client, advert), "retailer": "Tidewell Markets"}
    assert "Saved" in client.post(f"{CHECK}/advert/{advert}/correct", data=shop).text
    names = made.desk.authorities()
    assert [(line.id, line.name) for line in names.lines] == [("silverthaw", "Silverthaw")]
    assert [(each.id, each.name) for each in names.retailers] == [("tidewell_markets", "Tidewell Markets")]
    laid = made.desk.page(CLIPPING).page.adverts[0]
    assert laid.retailer is not None
    assert laid.retailer.entry_id == "tidewell_markets"
    assert laid.offers[0].line is not None
    assert laid.offers[0].line.entry_id == "silverthaw"
    assert "Silverthaw" in client.get("/names").text
    entry = next(act for act in made.desk.journal.acts if act.kind == "name")
    client.post(f"/journal/{entry.id}/undo")
    assert not made.desk.authorities().lines
    made.desk.journal.close()


def test_proposals_are_accepted_merged_split_and_rejected(tmp_path: Path) -> None:
    read = page((CUP, PLATE))
    unknown = tuple(
        Link(None, name, name, Box(40, 60 + 30 * n, 90, 20), 0.9, "in quotation marks")
        for n, name in enumerate(("Quince Arbor", "Winter Sorrel", "Thrift Days"))
    )
    made = small_desk(tmp_path, [replace(read, adverts=(replace(read.adverts[0], unknown_names=unknown),))])
    client = made.client()
    assert all(name in client.get("/names").text for name in ("Quince Arbor", "Winter Sorrel", "Thrift Days"))
    assert '<a href="/names"><b>3</b> names</a>' in client.get("/").text
    client.post("/names/accept", data={"name": "Quince Arbor"})
    assert '<a href="/names"><b>2</b> names</a>' in client.get("/").text
    client.post("/names/merge", data={"name": "Winter Sorrel", "line": "quince_arbor"})
    client.post("/names/reject", data={"name": "Thrift Days"})
    (line,) = made.desk.authorities().lines
    assert [use.name for use in line.names] == ["Winter Sorrel"]
    assert "not yet in the names" not in client.get("/names").text
    client.post("/names/split", data={"name": "Winter Sorrel", "line": "quince_arbor"})
    assert [(each.name, len(each.names)) for each in made.desk.authorities().lines] == [
        ("Quince Arbor", 0),
        ("Winter Sorrel", 0),
    ]
    assert client.post("/names/merge", data={"name": "x", "line": "none"}).status_code == 409
    assert client.get("/names/lines/quince_arbor").status_code == 200
    made.desk.journal.close()


def test_a_confirmed_name_without_an_entry_gets_one(tmp_path: Path) -> None:
    read = page((replace(CUP, line=Link(None, "Quince Arbor", "Quince Arbor", Box(1, 1, 9, 9), 0.5, "quoted")),))
    printed = Link(None, "Penhallow Stores", "Penhallow Stores", Box(1, 1, 9, 9), 0.5, "largest type")
    made = small_desk(tmp_path, [replace(read, adverts=(replace(read.adverts[0], retailer=printed),))])
    client = made.client()
    for kind, fact in (("advert", f"{CLIPPING}-a1"), ("offer", CUP.offer_id)):
        client.post(f"{CHECK}/{kind}/{fact}/confirm", data={"mark": mark_of(client, fact)})
    names = made.desk.authorities()
    assert [line.id for line in names.lines] == ["quince_arbor"]
    assert [shop.id for shop in names.retailers] == ["penhallow_stores"]
    made.rebuild()
    rows = made.desk.shelf.rows("SELECT line_id, retailer_id, status FROM priced_offers")
    assert [tuple(row.values()) for row in rows] == [("quince_arbor", "penhallow_stores", "confirmed")]
    made.desk.journal.close()


def test_a_maker_a_person_types_while_checking_enters_the_names(tmp_path: Path) -> None:
    cup = replace(
        offer(1, "cup", "0.69", y=100),
        maker=Link(None, "Undlne China", "Undlne China", offer(1, "", "1", y=1).box, 0.4, "printed"),
    )
    made = small_desk(tmp_path, [page((cup,))])
    client = made.client()
    typed = {
        "mark": mark_of(client, cup.offer_id),
        "item": "cup",
        "amount_0": "0.69",
        "maker": "Undine China Works",
    }
    client.post(f"{CHECK}/offer/{cup.offer_id}/correct", data=typed)
    assert [maker.id for maker in made.desk.authorities().makers] == ["undine_china_works"]
    maker = made.desk.page(CLIPPING).page.adverts[0].offers[0].maker
    assert maker is not None
    assert maker.entry_id == "undine_china_works"
    made.desk.journal.close()
