"""An authority entry is changed on its page: names, years, relations; each change is in the journal and can go back."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from adminer.names.authority import LineEntry, LineRelation, NameUse
from adminer.store.journal import read_journal
from tests.desk.desks import SmallDesk, small_desk
from tests.desk.pages import offer, page

LINES = """\
# kept by hand
[[line]]
id = "tansy_morn"
name = "Tansy Morn" # as printed
first_year = 1952
names = [{ name = "Tansy", used_by = "collectors" }]

[[line]]
id = "silverthaw"
name = "Silverthaw"
"""
TANSY = "/names/lines/tansy_morn"


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    made = small_desk(tmp_path, [page((offer(1, "cup", "0.69", y=100),))])
    names = made.desk.folder.names
    names.mkdir(exist_ok=True)
    (names / "lines.toml").write_text(LINES, encoding="utf-8")
    (names / "makers.toml").write_text('[[maker]]\nid = "undine"\nname = "Undine China Works"\n', encoding="utf-8")
    (names / "retailers.toml").write_text(
        '[[retailer]]\nid = "tidewell"\nname = "Tidewell Markets"\n', encoding="utf-8"
    )
    yield made
    made.desk.journal.close()


def mark(client: TestClient, path: str) -> str:
    found = re.search(r'name="mark" value="(\w+)"', client.get(path).text)
    assert found is not None
    return found[1]


def line(small: SmallDesk, line_id: str = "tansy_morn") -> LineEntry:
    return next(each for each in small.desk.authorities().lines if each.id == line_id)


WAS = {"name": "Tansy", "used_by": "collectors"}
WHOLE = {
    "name": "Tansy Morn",
    "maker": "undine",
    "first_year": "1951",
    "last_year": "1958",
    "use_name_0": "Tansy",
    "use_used_by_0": "collectors",
    "use_from_0": "1975",
    "use_source_0": "usage of collectors",
    "use_name_1": "Golden Buttons",
    "use_used_by_1": "retailer",
    "use_used_by_id_1": "tidewell",
    "rel_relation_0": "same_decal",
    "rel_other_0": "silverthaw",
    "rel_source_0": "both carry decal 4172",
    "rel_relation_1": "later_made_by",
    "rel_other_1": "undine",
}


def test_years_names_and_relations_are_saved_shown_and_taken_back(small: SmallDesk) -> None:
    client = small.client()
    answer = client.post(TANSY, data={"mark": mark(client, TANSY), **WHOLE})
    assert "Saved: Tansy Morn was changed." in answer.text
    assert line(small) == LineEntry(
        id="tansy_morn",
        name="Tansy Morn",
        maker="undine",
        first_year=1951,
        last_year=1958,
        names=(
            NameUse.model_validate({**WAS, "from": 1975, "source": "usage of collectors"}),
            NameUse(name="Golden Buttons", used_by="retailer", used_by_id="tidewell"),
        ),
        relations=(
            LineRelation(relation="same_decal", other="silverthaw", source="both carry decal 4172"),
            LineRelation(relation="later_made_by", other="undine"),
        ),
    )
    text = (small.desk.folder.names / "lines.toml").read_text(encoding="utf-8")
    assert "# kept by hand" in text
    assert "# as printed" in text
    for shown in ("1951 to 1958", "Golden Buttons", "retailer Tidewell Markets", "later made by", "Undine China Works"):
        assert shown in answer.text
    (act,) = read_journal(small.desk.folder.journal)
    assert act.kind == "name"
    assert act.new["said"].startswith("Tansy Morn: ")
    assert "first year 1952 → 1951" in act.new["said"]
    assert "first year 1952 → 1951" in client.get("/journal").text
    client.post(f"/journal/{act.id}/undo")
    assert (small.desk.folder.names / "lines.toml").read_text(encoding="utf-8") == LINES
    client.post(f"/journal/{read_journal(small.desk.folder.journal)[-1].id}/undo")
    assert line(small).relations[0].other == "silverthaw"


def test_rows_are_dropped_and_an_unchanged_form_writes_nothing(small: SmallDesk) -> None:
    client = small.client()
    typed = {"mark": mark(client, TANSY), "name": "Tansy Morn", "first_year": "1952", "use_name_0": "Tansy"}
    assert "Nothing was changed" in client.post(TANSY, data={**typed, "use_used_by_0": "collectors"}).text
    assert not read_journal(small.desk.folder.journal)
    client.post(TANSY, data={**typed, "use_drop_0": "on"})
    assert line(small).names == ()


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"name": ""}, "needs a name"),
        ({"first_year": "the fifties"}, "is no year"),
        ({"first_year": "1958", "last_year": "1952"}, "1952 comes before 1958"),
        ({"use_from_0": "99"}, "is no year"),
        ({"use_name_0": "", "use_source_0": "a list"}, "has no name"),
        ({"use_used_by_0": "friends"}, "names: "),
        ({"rel_relation_0": "same_decal"}, "needs both"),
        ({"rel_relation_0": "cousin", "rel_other_0": "silverthaw"}, "relations: "),
        ({"name": "x" * 500}, "too long"),
    ],
)
def test_what_cannot_be_taken_is_said_and_stays_in_the_form(small: SmallDesk, typed: dict[str, str], said: str) -> None:
    client = small.client()
    form = {"mark": mark(client, TANSY), "name": "Tansy Morn", "shape": "typed before", **typed}
    answer = client.post(TANSY, data=form)
    assert answer.status_code == 422
    assert said in answer.text
    assert 'value="typed before"' in answer.text
    assert (small.desk.folder.names / "lines.toml").read_text(encoding="utf-8") == LINES
    assert not read_journal(small.desk.folder.journal)


def test_of_two_windows_the_one_that_is_no_longer_true_saves_nothing(small: SmallDesk) -> None:
    first, second = small.client(), small.client()
    seen = mark(first, TANSY)
    second.post(TANSY, data={"mark": mark(second, TANSY), "name": "Tansy Morn", "last_year": "1958"})
    answer = first.post(TANSY, data={"mark": seen, "name": "Tansy Morn", "last_year": "1960"})
    assert answer.status_code == 409
    assert "changed meanwhile" in answer.text
    assert line(small).last_year == 1958


def test_makers_and_shops_are_made_and_changed(small: SmallDesk) -> None:
    client = small.client()
    client.post("/names/new", data={"kind": "makers", "name": "Marrowstone Pottery"})
    assert client.post("/names/new", data={"kind": "towns", "name": "Osterby"}).status_code == 422
    path = "/names/makers/marrowstone_pottery"
    also = "Marrowstone\r\n\r\nMarrowstone Pottery Co., Inc."
    typed = {"name": "Marrowstone Pottery", "from": "1911", "city": "Osterby", "names": also}
    client.post(path, data={"mark": mark(client, path), **typed})
    shop = "/names/retailers/tidewell"
    client.post(shop, data={"mark": mark(client, shop), "name": "Tidewell Markets", "kind": "chain",
                            "branches": "Osterby\nWenning Falls", "to": "1963"})  # fmt: skip
    names = small.desk.authorities()
    maker, (tidewell,) = names.makers[1], names.retailers
    assert (maker.names, maker.from_year, maker.city) == (
        ("Marrowstone", "Marrowstone Pottery Co., Inc."), 1911, "Osterby",
    )  # fmt: skip
    assert (tidewell.branches, tidewell.to_year, tidewell.kind) == (("Osterby", "Wenning Falls"), 1963, "chain")
