"""One writer a clippings folder: a lock that goes away with its process, however that ends."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from adminer.errors import FolderError, machine_error


@contextmanager
def folder_lock(path: Path) -> Iterator[None]:
    """Hold the lock file of a folder; its parent folder must exist.

    Raises FolderError where another process holds it, MachineError where it cannot be written.
    """
    try:
        handle = path.open("a+", encoding="utf-8")
    except OSError as fault:
        raise machine_error(fault, path) from None
    with handle:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            handle.seek(0)
            raise FolderError(
                "is being read by another run",
                file=str(path.parent.parent),
                why=f"process {handle.read().strip() or 'unknown'} works on it",
                remedy="wait until that run has ended, or stop it with Ctrl-C; nothing is lost",
            ) from None
        try:
            handle.truncate(0)
            handle.write(str(os.getpid()))
            handle.flush()
        except OSError as fault:
            raise machine_error(fault, path) from None
        yield
