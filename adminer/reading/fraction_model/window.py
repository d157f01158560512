"""The window in which a fraction is looked for: what begins where the figures of a numeral end, at one size."""

from __future__ import annotations

from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

SIDE: Final = 24  # pixels of the window, square
ABOVE: Final = 0.2  # of the height of the figures: paper over them, under them and before the tail
TALL: Final = 1.0 + 2 * ABOVE  # of that height: the window
CLASSES: Final = ("", "½", "¼", "¾")


def window_of(gray: NDArray[np.uint8], left: float, top: float, foot: float) -> NDArray[np.float32]:
    """Return the window (SIDE, SIDE), ink 1 and paper 0, of what begins at `left` beside figures from `top` to `foot`.

    Places are pixels of the picture.
    """
    tall = max(2.0, foot - top)
    scale = SIDE / (TALL * tall)
    x0, y0 = left - ABOVE * tall, top - ABOVE * tall
    if scale < 1:  # shrinking wants what lies between the pixels as well
        gray = np.asarray(cv2.GaussianBlur(gray, (0, 0), 0.45 / scale), np.uint8)
    shape = np.array([[1 / scale, 0, x0], [0, 1 / scale, y0]], np.float64)
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    cut = cv2.warpAffine(gray, shape, (SIDE, SIDE), flags=flags, borderMode=cv2.BORDER_REPLICATE).astype(np.float32)
    dark, light = np.percentile(cut, (4, 90))
    return np.asarray(np.clip((light - cut) / max(12.0, light - dark), 0, 1), np.float32)
