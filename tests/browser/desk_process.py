"""The desk as a person has it: `adminer desk` in a process of its own, and a browser before it."""

from __future__ import annotations

import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

CORPUS = Path(__file__).resolve().parents[2] / "corpus_demo"
NEWCOMER_SCANS = ("tansy-week-01.jpg", "tansy-week-02.png", "tansy-week-08.jpg")


def chromium() -> str | None:
    """Return the browser to use, None where there is none."""
    named = os.environ.get("ADMINER_CHROMIUM")
    names = (named,) if named else ("chromium", "chromium-browser", "google-chrome")
    return next((found for found in map(shutil.which, names) if found), None)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@dataclass
class DeskProcess:
    """Hold a running desk and the address that lets a browser in."""

    folder: Path
    process: subprocess.Popen[str]
    url: str

    @property
    def base(self) -> str:
        return self.url.split("/open")[0]

    def kill(self) -> None:
        """End it as a power cut would."""
        os.kill(self.process.pid, signal.SIGKILL)
        self.process.wait()

    def stop(self) -> None:
        """End it as Ctrl-C does."""
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGINT)
            try:
                self.process.wait(15)
            except subprocess.TimeoutExpired:
                self.kill()


def start_desk(folder: Path, port: int | None = None, *more: str) -> DeskProcess:
    """Start the desk of a folder and wait until it says where it is."""
    command = [sys.executable, "-m", "adminer.cli.main", "desk", str(folder), "--no-open", "--who", "newcomer"]
    process = subprocess.Popen(
        [*command, "--port", str(port or free_port()), *more],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        env=os.environ | {"OMP_THREAD_LIMIT": "1", "PYTHONUNBUFFERED": "1"},
    )
    said = ""
    assert process.stdout is not None
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline:
        line = process.stdout.readline()
        said += line
        if found := re.search(r"http://\S+/open\?token=\S+", said):
            return DeskProcess(folder, process, found[0])
        if not line and process.poll() is not None:
            break
    process.kill()
    raise AssertionError(f"the desk did not open: {said}")


def demo_folder() -> Path | None:
    """Return the demo as `make test` has digitised it, None where that was not done."""
    named = os.environ.get("ADMINER_DEMO_FOLDER")
    folder = Path(named) if named else CORPUS.parent / ".work" / "demo-clippings"
    return folder if (folder / "clippings.duckdb").is_file() else None


def read_with_command(folder: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "adminer.cli.main", "digitise", str(folder), "--workers", "2"],
        check=False,
        env=os.environ | {"OMP_THREAD_LIMIT": "1"},
        capture_output=True,
    )


def copy_demo(target: Path, names: Sequence[str] | None = None) -> Path:
    """Copy the digitised demo, so that a test may change it."""
    source = demo_folder()
    assert source is not None
    shutil.copytree(source, target, ignore=shutil.ignore_patterns("journal.jsonl", "lock"))
    return target
