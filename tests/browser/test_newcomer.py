"""A newcomer's whole path, from an empty folder to a dated run: once by mouse, once by keyboard alone."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from adminer.intake.notes import read_notes
from adminer.store.journal import active, read_journal
from tests.browser.by_keyboard import follow, walk_to, walk_to_label
from tests.browser.desk_process import CORPUS, NEWCOMER_SCANS, DeskProcess, start_desk

SCANS = [str(CORPUS / "scans" / name) for name in NEWCOMER_SCANS]
# the newcomer knows which issue each scan came from
PUBLISHED = {
    note.file: note.published or "" for note in read_notes(CORPUS / "notes.csv").notes if note.file in NEWCOMER_SCANS
}
LONG = 240_000  # milliseconds; reading three scans on a busy machine


@pytest.fixture
def empty(digitised: Path, tmp_path: Path) -> Iterator[DeskProcess]:
    """Open the desk over a folder that does not exist yet; what the demo's run has read serves as its readings."""
    opened = start_desk(tmp_path / "my clippings")
    shutil.copytree(
        digitised / ".readings", opened.folder / ".readings", ignore=shutil.ignore_patterns("*.json", "lock")
    )
    yield opened
    opened.stop()


def test_by_mouse(empty: DeskProcess, page: Page) -> None:
    page.goto(empty.url)
    page.get_by_role("link", name="Bring scans in").click()
    page.get_by_label("Scans", exact=True).set_input_files(SCANS)
    page.get_by_role("button", name="Bring them in").click()
    expect(page.locator("#progress")).to_contain_text("read now", timeout=LONG)
    expect(page.locator("#scans tbody tr")).to_have_count(3)
    page.get_by_label("all", exact=True).check()
    page.get_by_label("Paper or magazine").fill("Wenning Falls Sentinel")
    page.get_by_label("Town").fill("Wenning Falls")
    page.get_by_role("button", name="Fill in").click()
    expect(page.locator("tbody")).to_contain_text("Wenning Falls Sentinel")
    for name in NEWCOMER_SCANS:
        page.get_by_label(f"Choose {name}").check()
        page.get_by_label("Published").fill(PUBLISHED[name])
        page.get_by_role("button", name="Fill in").click()
        expect(page.get_by_role("row", name=name)).to_contain_text(PUBLISHED[name])
    for name in NEWCOMER_SCANS:
        page.goto(f"{empty.base}/check")
        page.get_by_role("row", name=name).get_by_role("link", name=name).click()
        advert = page.locator(".card.advert").first
        if "to check" in advert.inner_text():
            advert.get_by_role("button", name="Confirm").click()
            expect(page.locator("#said")).to_contain_text("Saved")
    offer = page.locator(".card.offer").first
    offer.locator("summary").first.click()
    offer.get_by_label("Line", exact=True).fill("Tansy Morn")
    offer.get_by_role("button", name="Save the correction").click()
    expect(page.locator("#said")).to_contain_text("Saved: corrected")
    page.get_by_role("link", name="Names").click()
    expect(page.get_by_role("link", name="Tansy Morn", exact=True)).to_be_visible()
    see_the_run(empty, page)


def test_by_keyboard_alone(empty: DeskProcess, page: Page) -> None:
    page.goto(empty.url)
    walk_to(page, "Bring scans in")
    follow(page)
    # the window in which files are chosen belongs to the browser, not to the page
    page.get_by_label("Scans", exact=True).set_input_files(SCANS)
    walk_to(page, "Bring them in")
    follow(page)
    expect(page.locator("#progress")).to_contain_text("read now", timeout=LONG)
    expect(page.locator("#scans tbody tr")).to_have_count(3)
    for name in NEWCOMER_SCANS:
        walk_to_label(page, f"Choose {name}")
        page.keyboard.press("Space")
        walk_to_label(page, "Published")
        page.keyboard.type(PUBLISHED[name])
        follow(page)
        expect(page.get_by_role("row", name=name)).to_contain_text(PUBLISHED[name])
    walk_to(page, "Checking")
    follow(page)
    walk_to(page, "Begin with")
    follow(page)
    expect(page.locator(".card.current")).to_be_focused()
    open_before = page.locator(".card.read").count()
    page.keyboard.press("e")
    focused = page.evaluate("document.activeElement.closest('.card').dataset.fact")
    walk_to_label(page, "Line" if "-o" in focused else "Shop")
    page.keyboard.press("Control+A")
    page.keyboard.type("Tansy Morn" if "-o" in focused else "Penhallow Stores")
    page.keyboard.press("Enter")
    expect(page.locator("#said")).to_contain_text("Saved")
    # keys may come faster than the desk saves; each counts for the fact that is then next
    page.keyboard.type("ccc")
    expect(page.locator(".card.read")).to_have_count(open_before - 4)
    page.keyboard.press("u")
    expect(page.locator("#said")).to_contain_text("Undone")
    expect(page.locator(".card.read")).to_have_count(open_before - 3)
    name_the_line(page)
    see_the_run(empty, page)
    kept = active(read_journal(empty.folder / "journal.jsonl"))
    assert [act.act for act in kept if act.kind in ("offer", "advert")].count("confirm") == 2


def name_the_line(page: Page) -> None:
    walk_to(page, "Names")
    follow(page)
    if page.get_by_role("link", name="Tansy Morn", exact=True).count() == 0:
        walk_to_label(page, "A new line")
        page.keyboard.type("Tansy Morn")
        follow(page)
    expect(page.get_by_role("link", name="Tansy Morn", exact=True)).to_be_visible()


def see_the_run(empty: DeskProcess, page: Page) -> None:
    """Wait until the database knows the line, then find its run with its days."""
    for _ in range(120):
        page.goto(f"{empty.base}/look/runs")
        if "Tansy Morn" in page.locator("main").inner_text() and "1953" in page.locator("main").inner_text():
            break
        page.wait_for_timeout(500)
    row = page.get_by_role("row").filter(has_text="Tansy Morn").filter(has_text="1953-0").first
    expect(row).to_be_visible()
    expect(page.get_by_role("img")).to_be_visible()
