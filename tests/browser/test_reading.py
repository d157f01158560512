"""Reading in the background as a person sees it: pause, go on; and two windows or two desks on one folder."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from adminer.intake.identity import digest_of
from tests.browser.desk_process import CORPUS, NEWCOMER_SCANS, DeskProcess, start_desk

LONG = 240_000  # milliseconds; reading one scan on a busy machine


@pytest.fixture
def partly_read(digitised: Path, tmp_path: Path) -> Iterator[DeskProcess]:
    """Open the desk over an empty folder; of the newcomer's scans all but one were read before."""
    opened = start_desk(tmp_path / "my clippings")
    unread = digest_of(CORPUS / "scans" / NEWCOMER_SCANS[0])[:16]
    left_out = shutil.ignore_patterns("*.json", "lock", f"{unread}*")
    shutil.copytree(digitised / ".readings", opened.folder / ".readings", ignore=left_out)
    yield opened
    opened.stop()


def test_the_reading_is_paused_and_goes_on_where_it_was(partly_read: DeskProcess, page: Page) -> None:
    page.goto(partly_read.url)
    page.goto(f"{partly_read.base}/in")
    page.get_by_label("Scans", exact=True).set_input_files([str(CORPUS / "scans" / name) for name in NEWCOMER_SCANS])
    page.get_by_role("button", name="Bring them in").click()
    page.get_by_role("button", name="Pause the reading").click()
    expect(page.locator("#progress")).to_contain_text("Stopped")
    assert not (partly_read.folder / "clippings.duckdb").exists()
    page.get_by_role("button", name="Go on reading").click()
    expect(page.locator("#progress")).to_contain_text("3 pages, 1 read now", timeout=LONG)
    expect(page.locator("#scans").get_by_role("link", name="check it")).to_have_count(3)


def test_of_two_windows_the_one_that_is_no_longer_true_is_told(desk: DeskProcess, page: Page) -> None:
    page.goto(desk.url)
    page.goto(f"{desk.base}/check")
    page.locator("tbody a").first.click()
    other = page.context.new_page()
    other.goto(page.url)
    name = other.locator(".card.offer").first.get_attribute("data-fact")
    there = other.locator(f'[data-fact="{name}"].card')
    there.locator("summary").first.click()
    there.get_by_label("Item").fill("what the other window says")
    there.get_by_role("button", name="Save the correction").click()
    expect(other.locator("#said")).to_contain_text("Saved")
    here = page.locator(f'[data-fact="{name}"].card')
    here.get_by_role("button", name="Confirm").click()
    expect(page.locator("#said")).to_contain_text("changed anew meanwhile; look at it once more")
    # and what stands there now is shown, so that the look can be taken at once
    expect(page.get_by_role("heading", name="what the other window says")).to_be_visible()
    expect(here).to_be_focused()
    here.get_by_role("button", name="Confirm").click()
    expect(page.locator("#said")).to_contain_text("Saved: confirmed")
    other.close()
