"""The identity of a scan: the digest of its content, whatever its name."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Final

_CHUNK: Final = 1 << 20


def digest_of(path: Path) -> str:
    """Return the SHA-256 of a file's content in hex, the identity of a scan."""
    digest = hashlib.sha256()
    with path.open("rb") as stream:
        while chunk := stream.read(_CHUNK):
            digest.update(chunk)
    return digest.hexdigest()


def clipping_id_of(sha256: str, leaf: int) -> str:
    """Return the id of one page of a scan: 16 hex digits of the content, then the page from the second on."""
    return sha256[:16] if leaf == 1 else f"{sha256[:16]}-{leaf}"
