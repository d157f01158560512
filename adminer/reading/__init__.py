"""Reading: page image to words with boxes, by two readers and their merge."""

from adminer.reading.page import read_page
from adminer.reading.upright import quarter_turns

__all__ = ["quarter_turns", "read_page"]
