"""What the browser tests share: a browser, the digitised demo, and a clear word where either is missing."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

from tests.browser.desk_process import (
    CORPUS,
    DeskProcess,
    chromium,
    copy_demo,
    demo_folder,
    read_with_command,
    start_desk,
)

expect.set_options(timeout=30_000)  # a busy machine is slow, not wrong
HOW = "install Debian's with: apt-get install chromium, or name one in ADMINER_CHROMIUM"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if "tests/browser/" in str(item.path):
            item.add_marker("browser")
            item.add_marker("slow")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    path = chromium()
    if path is None:
        if os.environ.get("CI"):
            pytest.fail(f"no Chromium here, and on the build machine that is a failure; {HOW}")
        pytest.skip(f"no Chromium here; {HOW}")
    # the last: a build machine's shared memory may be too small for large pages
    arguments = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
                 "--disable-background-networking", "--disable-component-update",
                 "--disable-dev-shm-usage"]  # fmt: skip
    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(executable_path=path, args=arguments)
        yield launched
        launched.close()


@pytest.fixture(scope="session")
def digitised(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with a digitised demo: that of `make test`, else a part of it read here."""
    folder = demo_folder()
    if folder is not None:
        return folder
    made = tmp_path_factory.mktemp("read") / "demo"
    shutil.copytree(CORPUS, made, ignore=shutil.ignore_patterns("press", "scans", "__pycache__"))
    (made / "scans").mkdir()
    for scan in sorted((CORPUS / "scans").glob("tansy-week-*"))[:4]:
        shutil.copy(scan, made / "scans" / scan.name)
    read_with_command(made)
    os.environ["ADMINER_DEMO_FOLDER"] = str(made)
    return made


@pytest.fixture
def desk(digitised: Path, tmp_path: Path) -> Iterator[DeskProcess]:
    """Open the desk over a copy of the digitised demo."""
    opened = start_desk(copy_demo(tmp_path / "demo"))
    yield opened
    opened.stop()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """Give a page that fails the test when a script fails or anything asks another machine."""
    context = browser.new_context(viewport={"width": 1280, "height": 860})
    opened = context.new_page()
    wrong: list[str] = []
    opened.on("pageerror", lambda error: wrong.append(f"script: {error}"))
    opened.on("console", lambda said: wrong.append(f"console: {said.text}") if said.type == "error" else None)
    opened.on("request", lambda asked: None if _is_here(asked.url) else wrong.append(f"asked {asked.url}"))
    yield opened
    context.close()
    # a refused form answers 422, one that came too late 409, on purpose, and the browser notes it
    told = [each for each in wrong if "422" not in each and "409" not in each]
    assert not told, told


def _is_here(url: str) -> bool:
    return url.startswith(("http://127.0.0.1:", "data:", "blob:", "about:"))
