"""Searches and pieces in the hand are written, corrected and taken out on forms, and each act can be taken back."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from adminer.dating.searches import read_searches
from adminer.desk.desk import StaleError
from adminer.desk.table_edit import put_row, table_rows
from adminer.errors import FolderError, MachineError
from adminer.names.objects import read_objects
from adminer.store.journal import active, read_journal
from tests.desk.desks import SmallDesk, small_desk
from tests.desk.pages import offer, page

SEARCHES = "/look/searches"
OBJECTS = "/look/objects"
LEDGER = {"paper": "The Osterby Ledger", "issues": "1953-01-08 to 1953-02-28", "every": "week", "line": "tansy_morn"}
TWO = "paper,issues,shelf,found\nThe Osterby Ledger,1953-01-08,film 12,no\nWenning Falls Sentinel,1953-02,,yes\n"
HOSTILE = "<script>alert(1)</script>{{ 311*311 }}\u202egnp\u2028x=\"'"


@pytest.fixture
def small(tmp_path: Path) -> Iterator[SmallDesk]:
    made = small_desk(tmp_path, [page((offer(1, "cup", "0.69", y=100),))])
    names = made.desk.folder.names
    names.mkdir(exist_ok=True)
    (names / "lines.toml").write_text('[[line]]\nid = "tansy_morn"\nname = "Tansy Morn"\n', encoding="utf-8")
    yield made
    made.desk.journal.close()


def log(small: SmallDesk) -> Path:
    return small.desk.folder.root / "searches.csv"


def mark(client: TestClient, path: str) -> str:
    found = re.search(r'name="mark" value="(\w+)"', client.get(path).text)
    assert found is not None
    return found[1]


def undo_last(small: SmallDesk, client: TestClient) -> int:
    return int(client.post(f"/journal/{read_journal(small.desk.folder.journal)[-1].id}/undo").status_code)


def test_a_search_is_written_corrected_taken_out_and_every_step_goes_back(small: SmallDesk) -> None:
    client = small.client()
    assert "None yet" in client.get(SEARCHES).text
    assert "Saved: the search is written down." in client.post(SEARCHES, data=LEDGER).text
    first = log(small).read_text(encoding="utf-8")
    (search,) = read_searches(small.desk.folder.root).searches
    assert (search.paper, search.first.isoformat(), search.last.isoformat(), search.line, search.found) == (
        "The Osterby Ledger", "1953-01-08", "1953-02-28", "tansy_morn", False,
    )  # fmt: skip
    path = f"{SEARCHES}/0"
    shown = client.get(path).text
    assert 'value="1953-01-08 to 1953-02-28"' in shown
    assert '<option value="tansy_morn" selected>Tansy Morn</option>' in shown
    answer = client.post(path, data={**LEDGER, "mark": mark(client, path), "found": "yes", "who": "M."})
    assert "Saved: the search is corrected." in answer.text
    second = log(small).read_text(encoding="utf-8")
    assert read_searches(small.desk.folder.root).searches[0].found
    client.post(path, data={"mark": mark(client, path), "take_out": "yes"})
    assert not read_searches(small.desk.folder.root).searches
    written, corrected, taken_out = read_journal(small.desk.folder.journal)
    # a row that is not there cannot be changed back
    assert client.post(f"/journal/{corrected.id}/undo").status_code == 409
    client.post(f"/journal/{taken_out.id}/undo")
    assert log(small).read_text(encoding="utf-8") == second
    client.post(f"/journal/{corrected.id}/undo")
    assert log(small).read_text(encoding="utf-8") == first
    undo_last(small, client)
    assert log(small).read_text(encoding="utf-8") == second
    assert {written.act, corrected.act, taken_out.act} == {"search"}
    text = client.get("/journal").text
    assert "search corrected" in text
    assert "found: <del>nothing</del> <ins>yes</ins>" in text


def test_an_act_is_taken_back_once(small: SmallDesk) -> None:
    client = small.client()
    client.post(SEARCHES, data=LEDGER)
    (act,) = read_journal(small.desk.folder.journal)
    assert client.post(f"/journal/{act.id}/undo").status_code == 200
    answer = client.post(f"/journal/{act.id}/undo")
    assert answer.status_code == 409
    assert "taken back already" in answer.text
    assert not read_searches(small.desk.folder.root).searches
    assert len(read_journal(small.desk.folder.journal)) == 2


def test_rows_written_by_hand_stay_to_the_letter_and_keep_their_own_columns(small: SmallDesk) -> None:
    log(small).write_bytes(b"\xef\xbb\xbf" + TWO.replace(",", ";").encode())
    client = small.client()
    path = f"{SEARCHES}/0"
    client.post(
        path, data={"mark": mark(client, path), "paper": "The Osterby Ledger", "issues": "1953-01-15", "found": "no"}
    )
    text = log(small).read_text(encoding="utf-8-sig")
    assert text == TWO.replace(",", ";").replace("1953-01-08", "1953-01-15")
    assert log(small).read_bytes().startswith(b"\xef\xbb\xbf")
    undo_last(small, client)
    assert log(small).read_text(encoding="utf-8-sig") == TWO.replace(",", ";")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"paper": ""}, "Paper or magazine: this must be filled in"),
        ({"issues": ""}, "this must be filled in"),
        ({"issues": "last spring"}, "is no date"),
        ({"issues": "1953-02-30"}, "is no date"),
        ({"issues": "1953-05 to 1953-01"}, "is no date"),
        ({"issues": "1900/1990"}, "longer than thirty years"),
        ({"issues": "1953-01/.."}, "has no end"),
        ({"line": "golden_buttons"}, "choose one of those offered"),
        ({"found": "perhaps"}, "choose one of those offered"),
        ({"every": "fortnight"}, "choose one of those offered"),
        ({"remark": "x" * 500}, "too long"),
        ({"remark": "a\x00b"}, "no text"),
    ],
)
def test_what_cannot_be_taken_is_said_and_stays_in_the_form(small: SmallDesk, typed: dict[str, str], said: str) -> None:
    answer = small.client().post(SEARCHES, data={**LEDGER, "who": "typed before", **typed})
    assert answer.status_code == 422
    assert said in answer.text
    assert 'value="typed before"' in answer.text
    assert not log(small).exists()
    assert not read_journal(small.desk.folder.journal)


def test_hostile_text_is_written_as_text_and_breaks_no_other_row(small: SmallDesk) -> None:
    client = small.client()
    client.post(SEARCHES, data=LEDGER)
    text = client.post(SEARCHES, data={**LEDGER, "paper": HOSTILE, "remark": '=1+1,";'}).text
    assert "<script>alert" not in text
    assert "96721" not in text
    assert not re.search("[\u202a-\u202e\u2028]", text)
    found = read_searches(small.desk.folder.root)
    assert not found.problems
    assert len(found.searches) == 2
    assert 'href="javascript' not in client.get(f'{SEARCHES}?back=javascript:alert(1)&paper=<b>"').text
    assert client.get(f"{SEARCHES}/99").status_code == 422
    assert "<b>" not in client.get(SEARCHES, params={"line": "<b>", "page": "x"}).text


def test_of_two_windows_the_one_that_is_no_longer_true_saves_nothing(small: SmallDesk) -> None:
    client, path = small.client(), f"{SEARCHES}/0"
    client.post(SEARCHES, data=LEDGER)
    seen = mark(client, path)
    client.post(path, data={**LEDGER, "mark": seen, "found": "yes"})
    answer = client.post(path, data={"mark": seen, "take_out": "yes"})
    assert answer.status_code == 409
    assert len(read_searches(small.desk.folder.root).searches) == 1


def test_what_the_journal_did_not_take_is_not_in_the_table_either(
    small: SmallDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    small.client().post(SEARCHES, data=LEDGER)
    before = log(small).read_bytes()

    def full(*_: object, **__: object) -> None:
        raise MachineError("the act was not saved", file="journal.jsonl", why="No space left on device")

    monkeypatch.setattr(small.desk.journal, "append", full)
    answer = small.client().post(SEARCHES, data={**LEDGER, "issues": "1953-03"})
    assert answer.status_code == 507
    assert "No space left" in answer.text
    assert log(small).read_bytes() == before


def test_a_row_that_says_nothing_is_named_and_can_be_put_right(small: SmallDesk) -> None:
    log(small).write_text("paper,issues\nThe Osterby Ledger,in the spring\n", encoding="utf-8")
    client, path = small.client(), f"{SEARCHES}/0"
    assert "line 2" in client.get(SEARCHES).text
    client.post(path, data={"mark": mark(client, path), "paper": "The Osterby Ledger", "issues": "1953-03/1953-05"})
    assert not read_searches(small.desk.folder.root).problems


def test_a_piece_in_the_hand_is_kept_with_its_mark(small: SmallDesk) -> None:
    client = small.client()
    typed = {"what": "dinner plate", "mark": "", "date_code": "B 53", "line": "tansy_morn", "object_id": "obj-1"}
    client.post(OBJECTS, data={**typed, "date_code": "1953"})
    (piece,) = read_objects(small.desk.folder.root / "objects.csv").objects
    assert (piece.what, piece.line, piece.earliest_year, piece.object_id) == (
        "dinner plate",
        "tansy_morn",
        1953,
        "obj-1",
    )
    assert client.post(OBJECTS, data={"shape": "Coupe"}).status_code == 422
    assert "Tansy Morn" in client.get(f"{OBJECTS}?line=tansy_morn").text
    undo_last(small, client)
    assert not read_objects(small.desk.folder.root / "objects.csv").objects


def test_a_row_is_found_again_when_others_came_before_it(tmp_path: Path) -> None:
    table, columns = tmp_path / "searches.csv", ("paper", "issues")
    row = {"paper": "The Osterby Ledger", "issues": "1953-01-08"}
    put_row(table, columns, 0, None, row)
    put_row(table, columns, 0, None, {"paper": "Wenning Falls Sentinel", "issues": "1953"})
    assert put_row(table, columns, 0, row, {**row, "issues": "1953-02"}) == 1
    assert [each.cells["issues"] for each in table_rows(table, columns)] == ["1953", "1953-02"]


ROWS = st.fixed_dictionaries({"paper": st.sampled_from("ABC"), "issues": st.sampled_from(["1951", "1952-03", "1953"])})
STEPS = st.lists(
    st.one_of(
        st.tuples(st.just("add"), st.integers(0, 9), ROWS),
        st.tuples(st.just("correct"), st.integers(0, 9), ROWS),
        st.tuples(st.just("take out"), st.integers(0, 9), st.none()),
        st.tuples(st.just("undo"), st.integers(0, 30), st.none()),
    ),
    max_size=14,
)


def test_of_two_undos_of_one_act_one_less_changes_nothing(small: SmallDesk) -> None:
    desk = small.desk
    begun = len(desk.journal.acts)
    desk.put_row("search", 0, None, {"paper": "A", "issues": "1951"})
    for number in (0, 1, 0, 2):  # taken back, brought back, taken back again, and what brought it back taken back
        desk.undo(desk.journal.acts[begun:][number].id)
    assert list(table_rows(log(small), ("paper", "issues"))) == []


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(STEPS)
def test_random_edits_and_undos_leave_what_a_list_of_rows_would(
    small: SmallDesk, steps: list[tuple[str, int, dict[str, str] | None]]
) -> None:
    desk, columns = small.desk, ("paper", "issues")
    log(small).unlink(missing_ok=True)
    begun, model = len(desk.journal.acts), list[dict[str, str]]()
    for what, number, new in steps:
        acts = desk.journal.acts[begun:]
        if what == "add":
            desk.put_row("search", number, None, new)
            model.insert(min(number, len(model)), dict(new or {}))
        elif what in ("correct", "take out") and model:
            place = number % len(model)
            desk.put_row("search", place, model[place], new)
            model[place : place + 1] = [dict(new)] if new else []
        elif what == "undo" and acts:
            act = acts[number % len(acts)]
            before = log(small).read_bytes()
            try:
                desk.undo(act.id)
            except (FolderError, StaleError):
                assert log(small).read_bytes() == before  # refused as a whole
            else:
                root = act
                while root.undoes:
                    root = next(each for each in acts if each.id == root.undoes)
                stood, stands = (root.id in {each.id for each in active(a)} for a in (acts, desk.journal.acts))
                here, there = (root.old, root.new) if stands else (root.new, root.old)
                if stood != stands:
                    _turned(model, root.seen["place"], here, there)
        assert [dict(row.cells) for row in table_rows(log(small), columns)] == model


def _turned(model: list[dict[str, str]], place: int, here: dict[str, str], there: dict[str, str]) -> None:
    if not here:
        model.insert(min(place, len(model)), there)
        return
    near = min((n for n, row in enumerate(model) if row == here), key=lambda n: abs(n - place))
    model[near : near + 1] = [there] if there else []
