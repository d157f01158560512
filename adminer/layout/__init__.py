"""Layout: page image to cleaned image and its rules; where adverts stand, once the type on it was read."""

from adminer.layout.page import Layout, flattened, lay_out

__all__ = ["Layout", "flattened", "lay_out"]
