"""Words to offers: one spaCy pipeline and the assembly of offers from it."""

from adminer.parsing.assemble import parse_page

__all__ = ["parse_page"]
