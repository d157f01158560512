"""An entry of the names is changed by keyboard alone: years, a name with its user, a relation; and taken back."""

from __future__ import annotations

from playwright.sync_api import Page, expect

from adminer.names.authority import LineEntry, LineRelation, NameUse, load_authorities
from tests.browser.by_keyboard import follow, walk_to, walk_to_label
from tests.browser.desk_process import DeskProcess


def tansy(desk: DeskProcess) -> LineEntry:
    return next(line for line in load_authorities(desk.folder / "names").lines if line.id == "tansy_morn")


def write(page: Page, label: str, text: str) -> None:
    walk_to_label(page, label)
    page.keyboard.press("Control+A")
    page.keyboard.type(text)


def test_an_entry_is_changed_by_keyboard_alone(desk: DeskProcess, page: Page) -> None:
    before = tansy(desk)
    page.goto(desk.url)
    walk_to(page, "Names")
    follow(page)
    walk_to(page, "Tansy Morn")
    follow(page)
    walk_to(page, "Change this entry")
    page.keyboard.press("Enter")
    write(page, "First year", "1951")
    new = len(before.names) + 1
    write(page, f"Name {new}", "Button Posy")
    walk_to_label(page, f"Name {new}, used by")
    page.keyboard.type("collectors")  # a choice is made by its first letters
    write(page, f"Name {new}, from the year", "1980")
    write(page, f"Name {new}, source", "usage of collectors")
    relation = len(before.relations) + 1
    walk_to_label(page, f"Relation {relation}")
    page.keyboard.type("same shape")
    walk_to_label(page, f"Relation {relation}, to")
    page.keyboard.type("Silverthaw")
    page.keyboard.press("Enter")
    walk_to(page, "Save the entry")
    follow(page)
    expect(page.get_by_text("Saved: Tansy Morn was changed.")).to_be_visible()
    after = tansy(desk)
    assert after.first_year == 1951
    told = {"name": "Button Posy", "used_by": "collectors", "from": 1980, "source": "usage of collectors"}
    assert after.names == (*before.names, NameUse.model_validate(told))
    assert after.relations == (*before.relations, LineRelation(relation="same_shape", other="silverthaw"))
    walk_to(page, "Journal")
    follow(page)
    expect(page.locator("tbody tr").first).to_contain_text("first year 1952 → 1951")
    walk_to(page, "Undo")
    follow(page)
    assert tansy(desk) == before
