"""Run every check of the project in order, and end with the line that pytest ends with.

`make test` calls this inside its own environment. Each step says what it is and how long it took; the
first one that fails stops the run with its exit code.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path
from typing import Final

ROOT: Final = Path(__file__).resolve().parent.parent
DEMO: Final = ROOT / ".work" / "demo-clippings"
STEPS: Final[tuple[tuple[str, tuple[str, ...]], ...]] = (
    ("style", ("-m", "ruff", "check", ".")),
    ("format", ("-m", "ruff", "format", "--check", ".")),
    ("types", ("-m", "mypy")),
    # the demo's own digitising is what the floors, the browser tests and the documents are then tested on
    ("demo", ("-m", "adminer.cli.main", "demo", "--folder", str(DEMO))),
    (
        "tests",
        ("-m", "pytest", "-n", "2", "--dist", "loadfile", "--no-loadscope-reorder", "-rfEs", "--durations", "10"),
    ),
)


def main() -> int:
    """Run the steps; return the exit code of the first that fails, or 0."""
    environment = os.environ | {"ADMINER_DEMO_FOLDER": str(DEMO), "OMP_THREAD_LIMIT": "1"}
    for name, arguments in STEPS:
        print(f"--- {name}", flush=True)
        begun = time.monotonic()
        code = subprocess.run([sys.executable, *arguments], cwd=ROOT, env=environment, check=False).returncode
        if name != "tests":
            print(f"--- {name}: {'done' if code == 0 else 'FAILED'} in {time.monotonic() - begun:.0f} s", flush=True)
        if code:
            return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
