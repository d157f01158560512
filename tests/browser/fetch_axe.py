"""Fetch axe-core (MPL-2.0), the checker of the accessibility rules, with npm into the ignored folder .work/axe.

A development tool: nothing of it is shipped. Run `python -m tests.browser.fetch_axe` once where npm is.
"""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import Final

VERSION: Final = "4.10.3"
FOLDER: Final = Path(__file__).resolve().parents[2] / ".work" / "axe"
SCRIPT: Final = FOLDER / "node_modules" / "axe-core" / "axe.min.js"


def fetch() -> Path | None:
    """Return the script, fetching it where npm is; None where it cannot be had."""
    if SCRIPT.is_file():
        return SCRIPT
    npm = shutil.which("npm")
    if npm is None:
        return None
    FOLDER.mkdir(parents=True, exist_ok=True)
    done = subprocess.run(
        [npm, "install", "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", f"axe-core@{VERSION}"],
        cwd=FOLDER,
        check=False,
        capture_output=True,
        timeout=120,
    )
    return SCRIPT if done.returncode == 0 and SCRIPT.is_file() else None


if __name__ == "__main__":
    print(fetch() or "npm is not here, or could not fetch it")
