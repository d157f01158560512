"""The command line with a stand-in for the reader: `python -m tests.cli.driver digitise FOLDER`."""

from __future__ import annotations

import contextlib
import functools
import io
import os
import subprocess
import sys
from pathlib import Path
from unittest import mock

import adminer.cli.digitise
from adminer.cli.main import build, run
from adminer.engine.digitise import digitise
from tests.engine import fakes

_with_stand_in = functools.partial(digitise, reader=fakes.read, start=None)
ROOT = Path(__file__).resolve().parents[2]


def start(*arguments: str | Path, cwd: Path | None = None) -> subprocess.Popen[str]:
    """Start a command in a process group of its own."""
    return subprocess.Popen(
        [sys.executable, "-m", "tests.cli.driver", *map(str, arguments)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=cwd or ROOT,
        env=os.environ | {"PYTHONPATH": str(ROOT), "COLUMNS": "200"},
        start_new_session=True,
    )


def command(*arguments: str | Path, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run a command to its end."""
    process = start(*arguments, cwd=cwd)
    out, err = process.communicate(timeout=180)
    return subprocess.CompletedProcess(list(map(str, arguments)), process.returncode, out, err)


def inside(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """Run a command in this process, which is faster; workers are processes all the same."""
    out, err = io.StringIO(), io.StringIO()
    build()
    code = 0
    with (
        mock.patch.object(sys, "argv", ["adminer", *map(str, arguments)]),
        mock.patch.object(adminer.cli.digitise, "digitise", _with_stand_in),
        mock.patch.dict(os.environ, {"COLUMNS": "200"}),
        contextlib.redirect_stdout(out),
        contextlib.redirect_stderr(err),
    ):
        try:
            run()
        except SystemExit as end:
            code = int(end.code or 0)
    return subprocess.CompletedProcess(list(map(str, arguments)), code, out.getvalue(), err.getvalue())


if __name__ == "__main__":
    with mock.patch.object(adminer.cli.digitise, "digitise", _with_stand_in):
        run()
