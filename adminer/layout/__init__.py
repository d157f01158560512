"""Layout: page image to cleaned image, adverts on the page, blocks, type sizes."""

from adminer.layout.page import Layout, lay_out

__all__ = ["Layout", "lay_out"]
