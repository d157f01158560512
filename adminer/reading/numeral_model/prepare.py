"""Bring crops of numerals to the shape that the numeral reader was trained on."""

from __future__ import annotations

from collections.abc import Sequence

import cv2
import numpy as np
from numpy.typing import NDArray

from adminer.reading.numeral_model.alphabet import HEIGHT, WIDTH

NARROWEST = 16  # pixels: a lone figure 1 still leaves the network steps enough


def prepare(crop: NDArray[np.uint8]) -> NDArray[np.float32]:
    """Return one gray crop (H, W) as (32, width) between -1 and 1, its contrast stretched to the whole range."""
    height, width = crop.shape
    wanted = int(np.clip(round(HEIGHT * width / height), NARROWEST, WIDTH))
    kind = cv2.INTER_AREA if height > HEIGHT else cv2.INTER_CUBIC
    resized = cv2.resize(crop, (wanted, HEIGHT), interpolation=kind).astype(np.float32)
    dark, light = np.percentile(resized, (2, 98))
    return np.asarray(np.clip((resized - dark) / max(10.0, float(light - dark)), 0, 1) * 2 - 1, np.float32)


def stack(planes: Sequence[NDArray[np.float32]]) -> NDArray[np.float32]:
    """Return prepared crops as one batch (N, 1, 32, width), the narrower ones filled up with the middle tone."""
    width = max(plane.shape[1] for plane in planes)
    width += width % 2
    batch = np.zeros((len(planes), 1, HEIGHT, width), np.float32)
    for row, plane in enumerate(planes):
        batch[row, 0, :, : plane.shape[1]] = plane
    return batch
