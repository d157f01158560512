"""Corrections survive a killed server, a new reading and a rebuilt database."""

from __future__ import annotations

import shutil

from playwright.sync_api import Browser, Page, expect

from adminer.store.journal import read_journal
from tests.browser.desk_process import DeskProcess, read_with_command, start_desk


def test_what_the_page_calls_saved_survives_kill_and_rebuilding(
    desk: DeskProcess, browser: Browser, page: Page
) -> None:
    # a page of its own: pictures of the scan that are under way when the desk dies are rightly missed
    before = browser.new_page()
    before.goto(desk.url)
    before.goto(f"{desk.base}/check")
    before.locator("tbody a").first.click()
    clipping = before.url.split("/check/")[1]
    offer = before.locator(".card.offer").first
    offer.locator("summary").first.click()
    offer.get_by_label("Item").fill("a word of the person")
    offer.get_by_role("button", name="Save the correction").click()
    expect(before.locator("#said")).to_contain_text("Saved")
    desk.kill()
    before.close()
    saved = read_journal(desk.folder / "journal.jsonl")
    assert [act.new.get("item") for act in saved] == ["a word of the person"]
    for name in ("clippings.duckdb", ".readings/state.json", ".readings/verdicts.json"):
        (desk.folder / name).unlink(missing_ok=True)
    for parsed in (desk.folder / ".readings").glob("*.parsed.json.gz"):
        parsed.unlink()
    read_with_command(desk.folder)
    again = start_desk(desk.folder)
    try:
        page.goto(again.url)
        page.goto(f"{again.base}/check/{clipping}")
        expect(page.get_by_role("heading", name="a word of the person")).to_be_visible()
        page.goto(f"{again.base}/ask/doubtful-facts")
        page.goto(f"{again.base}/journal")
        expect(page.locator("tbody")).to_contain_text("a word of the person")
        assert "was not found again" not in page.locator("main").inner_text()
    finally:
        again.stop()
        shutil.rmtree(again.folder)


def test_a_second_desk_on_one_folder_is_told(desk: DeskProcess) -> None:
    try:
        second = start_desk(desk.folder)
    except AssertionError as error:
        assert "another desk" in str(error)
        assert "Traceback" not in str(error)
    else:
        second.stop()
        raise AssertionError("a second desk opened")
