"""Going through a page with the keyboard alone: Tab to what is wanted, then Enter."""

from __future__ import annotations

from playwright.sync_api import Page


def follow(page: Page) -> None:
    """Press Enter and wait for the page it leads to."""
    with page.expect_navigation():
        page.keyboard.press("Enter")


def walk_to(page: Page, words: str) -> None:
    """Press Tab until a link or button with these words has the focus."""
    for _ in range(150):
        page.keyboard.press("Tab")
        if words in page.evaluate(
            "document.activeElement.matches('a, button, summary') ? document.activeElement.innerText : ''"
        ):
            assert page.evaluate("document.activeElement.matches(':focus-visible')")
            return
    raise AssertionError(f"“{words}” cannot be reached by Tab")


def walk_to_label(page: Page, words: str) -> None:
    """Press Tab until the field with this label has the focus."""
    script = "(document.activeElement.labels?.[0]?.innerText || document.activeElement.ariaLabel || '')"
    for _ in range(150):
        if page.evaluate(script).startswith(words):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the field “{words}” cannot be reached by Tab")
