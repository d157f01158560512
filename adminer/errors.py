"""Every error a user can cause, with its exit code and its remedy; the one place that knows exit codes.

0 all done; 2 wrong use of a command; 3 some scans could not be read, the rest is done; 4 the folder or
a file of it is not as expected; 5 the machine failed us (disk full, no rights); 6 quality below the
pinned floors; 7 a query was refused or failed; 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import errno
from typing import ClassVar


class AdminerError(Exception):
    """Say what went wrong, in which file, why, and what to do."""

    exit_code: ClassVar[int] = 4

    def __init__(
        self, what: str, *, file: str | None = None, why: str | None = None, remedy: str | None = None
    ) -> None:
        """Build the message from its parts; all parts stay readable as attributes."""
        self.what, self.file, self.why, self.remedy = what, file, why, remedy
        parts = [f"{file}: {what}" if file else what]
        if why:
            parts.append(f"because {why}")
        message = ", ".join(parts) + "."
        if remedy:
            message += f" {remedy[0].upper()}{remedy[1:]}" + ("" if remedy.endswith(".") else ".")
        super().__init__(message)

    def __reduce__(self) -> tuple[object, ...]:
        """Survive the trip between processes."""
        return _rebuild, (type(self), self.what, self.file, self.why, self.remedy)


def _rebuild(
    kind: type[AdminerError], what: str, file: str | None, why: str | None, remedy: str | None
) -> AdminerError:
    return kind(what, file=file, why=why, remedy=remedy)


class UsageError(AdminerError):
    """A command was called with something it cannot take."""

    exit_code = 2


class ScanError(AdminerError):
    """One scan cannot be read; the others go on."""

    exit_code = 3


class FolderError(AdminerError):
    """The folder is not a clippings folder, or a text file in it is broken."""

    exit_code = 4


class MachineError(AdminerError):
    """The disk is full, a folder is read-only, a reader program is missing."""

    exit_code = 5


class QualityError(AdminerError):
    """The measured quality is below a pinned floor."""

    exit_code = 6


class QueryError(AdminerError):
    """A query was refused, failed, or ran out of its limits."""

    exit_code = 7


def machine_error(fault: OSError, path: object) -> MachineError:
    """Turn what the operating system refused into a sentence with a remedy."""
    space = "free some space and run the same command again; what was read is kept"
    rights = "change its permissions, or copy the folder to a place where you may write"
    remedies = {
        errno.ENOSPC: space,
        errno.EDQUOT: space,
        errno.EROFS: "copy the folder to a place where you may write",
        errno.EACCES: rights,
        errno.EPERM: rights,
        errno.ENOENT: "make its folder first, or name another place",
    }
    return MachineError(
        "cannot be written",
        file=str(fault.filename or path),
        why=(fault.strerror or str(fault)).lower(),
        remedy=remedies.get(fault.errno or 0, "look at the disk and run the same command again"),
    )


INTERRUPTED = 130


def exit_code_of(error: BaseException) -> int:
    """Return the exit code for an error; 1 means a fault of the program itself."""
    if isinstance(error, AdminerError):
        return error.exit_code
    return INTERRUPTED if isinstance(error, KeyboardInterrupt) else 1
