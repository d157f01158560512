"""Scans as the browser wants them: tiles of a pyramid, an overview, and the crop of one region."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.errors import ScanError
from adminer.records import Box
from adminer.store.readings import write_whole

Pixels = NDArray[np.uint8]

TILE: Final = 512  # pixels a side
OVERVIEW: Final = 1600  # longest side in pixels
MOST_CROP: Final = 1400
KEPT: Final = 3  # decoded scans held in memory; one of 60 megapixels takes up to 240 MB with its pyramid
_QUALITY: Final = [int(cv2.IMWRITE_JPEG_QUALITY), 84]


@dataclass(slots=True)
class Pictures:
    """Hold the scans last looked at, decoded; `load` decodes one by clipping id and raises ScanError."""

    load: Callable[[str], Pixels]
    kept_at: Path | None = None  # folder of small pictures that outlive the process; safe to delete
    _kept: OrderedDict[str, list[Pixels]] = field(default_factory=OrderedDict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def size(self, clipping_id: str) -> tuple[int, int]:
        """Return width and height of the scan in pixels."""
        height, width = self._levels(clipping_id)[0].shape[:2]
        return width, height

    def pixels(self, clipping_id: str) -> Pixels:
        """Return the whole scan, (H, W) gray or (H, W, 3) RGB."""
        return self._levels(clipping_id)[0]

    def tile(self, clipping_id: str, level: int, column: int, row: int) -> bytes:
        """Return one tile as JPEG; level 0 is the scan pixel by pixel, each further one half the size.

        Raises ScanError where there is no such tile.
        """
        levels = self._levels(clipping_id)
        if not 0 <= level < len(levels):
            raise ScanError("has no such size", file=clipping_id)
        picture = levels[level]
        part = picture[row * TILE : (row + 1) * TILE, column * TILE : (column + 1) * TILE]
        if row < 0 or column < 0 or part.size == 0:
            raise ScanError("has no such part", file=clipping_id)
        return _jpeg(part)

    def overview(self, clipping_id: str, most: int = OVERVIEW) -> bytes:
        """Return the whole scan as JPEG, its longest side at most so many pixels."""
        place = self.kept_at / f"{clipping_id}.{most}.jpg" if self.kept_at else None
        if place is not None and place.is_file():
            return place.read_bytes()
        drawn = _jpeg(_shrunk(self._nearest(clipping_id, most), most))
        if place is not None:
            with suppress(OSError):  # a full disk costs time, not the picture
                place.parent.mkdir(parents=True, exist_ok=True)
                write_whole(place, drawn)
        return drawn

    def prepare(self, clipping_id: str) -> None:
        """Decode a scan in the background, since it is likely to be looked at next."""
        if clipping_id not in self._kept:
            threading.Thread(target=self._quietly, args=(clipping_id,), daemon=True).start()

    def _quietly(self, clipping_id: str) -> None:
        with suppress(ScanError, FileNotFoundError):  # who looks at it is told
            self.overview(clipping_id)
            self._levels(clipping_id)

    def crop(self, clipping_id: str, box: Box, most: int = MOST_CROP) -> bytes:
        """Return a region of the scan as JPEG; what lies outside the scan is cut off.

        Raises ScanError where nothing is left.
        """
        picture = self._levels(clipping_id)[0]
        part = picture[max(0, box.y) : max(0, box.bottom), max(0, box.x) : max(0, box.right)]
        if part.size == 0:
            raise ScanError("has nothing at this place", file=clipping_id)
        return _jpeg(_shrunk(part, most))

    def _nearest(self, clipping_id: str, most: int) -> Pixels:
        for picture in reversed(self._levels(clipping_id)):
            if max(picture.shape[:2]) >= most:
                return picture
        return self._levels(clipping_id)[0]

    def _levels(self, clipping_id: str) -> list[Pixels]:
        with self._lock:  # two tiles of a large scan must not decode it twice
            if clipping_id not in self._kept:
                self._kept[clipping_id] = _pyramid(self.load(clipping_id))
                while len(self._kept) > KEPT:
                    self._kept.popitem(last=False)
            self._kept.move_to_end(clipping_id)
            return self._kept[clipping_id]


def level_count(width: int, height: int) -> int:
    """Return how many sizes the pyramid of a scan has: halved until one tile holds it."""
    count = 1
    while max(width, height) > TILE:
        width, height, count = (width + 1) // 2, (height + 1) // 2, count + 1
    return count


def _pyramid(pixels: Pixels) -> list[Pixels]:
    levels = [pixels]
    while max(levels[-1].shape[:2]) > TILE:
        height, width = levels[-1].shape[:2]
        half = cv2.resize(levels[-1], ((width + 1) // 2, (height + 1) // 2), interpolation=cv2.INTER_AREA)
        levels.append(np.asarray(half, dtype=np.uint8))
    return levels


def _shrunk(picture: Pixels, most: int) -> Pixels:
    height, width = picture.shape[:2]
    scale = most / max(height, width)
    if scale >= 1:
        return picture
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    return np.asarray(cv2.resize(picture, size, interpolation=cv2.INTER_AREA), dtype=np.uint8)


def _jpeg(picture: Pixels) -> bytes:
    drawn = picture if picture.ndim == 2 else cv2.cvtColor(picture, cv2.COLOR_RGB2BGR)
    done, encoded = cv2.imencode(".jpg", drawn, _QUALITY)
    if not done:
        raise ScanError("cannot be shown", why="it could not be encoded")
    return encoded.tobytes()
