"""Reading: page image to words with boxes, by two readers and their merge."""

from adminer.reading.page import read_page

__all__ = ["read_page"]
