"""How many keys a fact takes at the desk, how long the desk takes over it, and how many facts an hour that allows.

Run: python -m tests.benchmarks.keystrokes FOLDER [--facts 60], over a digitised folder (it works on a copy). A
browser is driven by keys alone: facts are confirmed in the order of the desk, clipping after clipping; then a price,
a line and an item are corrected. A person's own time is that of the keystroke-level model (Card, Moran and Newell
1980, Communications of the ACM 23:396-410; figures from memory): 0.28 s a key of an average typist, 1.35 s to make
up one's mind. Looking at the scan is not in it; what remains for that at 300 facts an hour is printed.
"""

from __future__ import annotations

import argparse
import os
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from playwright.sync_api import Page, expect, sync_playwright

from tests.browser.desk_process import chromium, copy_demo, start_desk

KEY: Final = 0.28  # seconds
MIND: Final = 1.35  # seconds
ASKED: Final = 300  # facts an hour


@dataclass
class Hand:
    """Count the keys pressed, and the seconds the desk took to answer."""

    page: Page
    keys: int = 0
    waits: list[float] = field(default_factory=list)

    def press(self, key: str) -> None:
        self.keys += 1
        self.page.keyboard.press(key)

    def write(self, text: str) -> None:
        self.press("Control+A")
        self.keys += len(text)
        self.page.keyboard.type(text)

    def until_saved(self, before: str) -> None:
        """Wait until the page shows another state than before."""
        begun = time.perf_counter()
        self.page.wait_for_function("before => document.getElementById('facts').innerHTML !== before", arg=before)
        self.waits.append(time.perf_counter() - begun)


def confirm_facts(hand: Hand, wanted: int) -> int:
    """Confirm so many facts, going on from clipping to clipping by keys; returns how many there were."""
    page, done = hand.page, 0
    while done < wanted:
        if page.locator(".card.read").count() == 0:
            following = page.locator("a[rel=next]")
            if following.count() == 0:
                break
            with page.expect_navigation():
                hand.press("]")
            page.locator(".card.current").wait_for()
            continue
        before = page.locator("#facts").inner_html()
        hand.press("c")
        hand.until_saved(before)
        done += 1
    return done


def correct(hand: Hand, label: str, text: str) -> int:
    """Correct one field of the fact in hand; returns the keys it took."""
    page, begun = hand.page, hand.keys
    hand.press("e")
    script = "(document.activeElement.labels?.[0]?.innerText || document.activeElement.ariaLabel || '')"
    while not page.evaluate(script).startswith(label):
        hand.press("Tab")
    hand.write(text)
    before = page.locator("#facts").inner_html()
    hand.press("Enter")
    hand.until_saved(before)
    expect(page.locator("#said")).to_contain_text("Saved")
    return hand.keys - begun


def main() -> int:
    """Print the table; exit code 1 where the desk and the keys alone leave no 300 facts an hour."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--facts", type=int, default=60)
    options = parser.parse_args()
    browser_path = chromium()
    if browser_path is None:
        print("No Chromium here: install Debian's with apt-get install chromium")
        return 2
    os.environ["ADMINER_DEMO_FOLDER"] = str(options.folder)
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        desk = start_desk(copy_demo(Path(place) / "copy"))
        browser = playwright.chromium.launch(executable_path=browser_path, args=["--headless", "--no-sandbox"])
        page = browser.new_page(viewport={"width": 1280, "height": 860})
        try:
            page.goto(desk.url)
            page.goto(f"{desk.base}/check")
            page.locator(".go").click()
            page.locator(".card.current").wait_for()
            hand = Hand(page)
            done = confirm_facts(hand, options.facts)
            keys, wait = hand.keys / done, statistics.median(hand.waits)
            slowest = sorted(hand.waits)[int(0.95 * len(hand.waits))]
            offer = page.locator(".card.offer.read").first
            offer.click(position={"x": 5, "y": 5})
            offer.focus()
            corrected = {
                "price": correct(hand, "Price 1", "1.39"),
                "line": correct(hand, "Line", "Tansy Morn"),
                "item": correct(hand, "Item", "cup and saucer"),
            }
        finally:
            browser.close()
            desk.stop()
    own = MIND + keys * KEY
    hour = 3600 / (own + wait)
    print(f"facts confirmed\t{done}")
    print(f"keys a fact\t{keys:.2f}")
    print(f"the desk's answer\t{wait * 1000:.0f} ms, 19 of 20 within {slowest * 1000:.0f} ms")
    print(f"facts an hour by keys, mind and desk alone\t{hour:.0f} ({hour / ASKED:.1f} times {ASKED})")
    print(f"left for looking at each fact at {ASKED} an hour\t{3600 / ASKED - own - wait:.1f} s")
    for name, count in corrected.items():
        print(f"keys to correct, {name}\t{count}")
    return 0 if hour >= ASKED else 1


if __name__ == "__main__":
    sys.exit(main())
