"""Layout: page image to cleaned image, adverts on the page, blocks, type sizes."""

from adminer.layout.page import Layout, flattened, lay_out

__all__ = ["Layout", "flattened", "lay_out"]
