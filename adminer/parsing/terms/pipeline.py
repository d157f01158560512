"""The spaCy pipeline of adverts: a blank English one with own components, no trained model.

`terms` finds printed conditions, `pieces` (a span ruler over the vocabulary) finds plates, cups and sets, `lines`
and `makers` find names of the authority files. Each leaves its finds in `doc.spans` or `doc.user_data`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Final, cast

import spacy
from spacy.language import Language
from spacy.pipeline import SpanRuler
from spacy.tokens import Doc

from adminer.names.authority import Authorities
from adminer.names.matching import Spelling, house_spellings, line_spellings
from adminer.names.spotting import Spotted, spot_names
from adminer.parsing.terms.terms import Term, find_terms
from adminer.parsing.text.misread import names_of_pieces

TERMS: Final = "terms"
PIECES: Final = "pieces"
LINES: Final = "lines"
MAKERS: Final = "makers"
_SPECKS: Final = re.compile(r"(?<=[a-z])([,;])([.,:;'·]+)(?=[a-z])")  # specks after a comma glue two words into one


@dataclass(frozen=True, eq=False)
class Grammar:
    """Hold a pipeline with the spellings of the authority files it was built for."""

    nlp: Language
    authorities: Authorities
    retailers: list[Spelling]
    towns: frozenset[str]
    piece_names: dict[str, str]  # names of pieces of the table with their ids
    loose: frozenset[str]  # names of pieces that are common words too
    short: dict[str, str]  # names of pieces only inside a list, with their ids
    proper: frozenset[str]  # single words of the names of lines, makers and retailers, lower case

    def read(self, text: str) -> Doc:
        """Run the pipeline over the text of one advert; newlines count as spaces, offsets stay."""
        return self.nlp(_SPECKS.sub(lambda m: m[1] + " " * len(m[2]), text))


@Language.component("advert_terms")
def _terms(doc: Doc) -> Doc:
    doc.user_data[TERMS] = find_terms(doc.text)
    return doc


@Language.factory("advert_names", default_config={"key": LINES})
class _Names:
    """Find the names of one authority file, whatever a reader made of their letters."""

    def __init__(self, nlp: Language, name: str, key: str) -> None:
        self.key = key
        self.spellings: list[Spelling] = []

    def __call__(self, doc: Doc) -> Doc:
        doc.user_data[self.key] = spot_names(doc.text, self.spellings)
        return doc


def build_grammar(authorities: Authorities) -> Grammar:
    """Build the pipeline for a set of authority files."""
    nlp = spacy.blank("en")
    nlp.add_pipe("advert_terms")
    ruler = cast(SpanRuler, nlp.add_pipe("span_ruler", config={"spans_key": PIECES, "phrase_matcher_attr": "LOWER"}))
    patterns: list[dict[str, str | list[dict[str, Any]]]] = [
        {"label": piece.id, "pattern": name}
        for piece in authorities.pieces.pieces.values()
        for name in (*piece.names, *piece.loose)
    ]
    ruler.add_patterns(patterns)
    for key, spellings in ((LINES, line_spellings(authorities.lines)), (MAKERS, house_spellings(authorities.makers))):
        finder = cast(_Names, nlp.add_pipe("advert_names", name=f"names_{key}", config={"key": key}))
        finder.spellings = spellings
    known = names_of_pieces([(p.id, p.kind, (*p.names, *p.loose)) for p in authorities.pieces.pieces.values()])
    loose = frozenset(name for piece in authorities.pieces.pieces.values() for name in piece.loose)
    short = {name: piece.id for piece in authorities.pieces.pieces.values() for name in piece.short}
    towns = frozenset(town for retailer in authorities.retailers for town in retailer.branches)
    retailers = house_spellings(authorities.retailers)
    named = [*line_spellings(authorities.lines), *house_spellings(authorities.makers), *retailers]
    proper = frozenset(word for spelling in named for word in re.findall(r"[a-zà-ÿ]+", spelling.printed.lower()))
    return Grammar(nlp, authorities, retailers, towns, known, loose, short, proper)


def terms_of(doc: Doc) -> list[Term]:
    """Return the terms found in a document."""
    terms: list[Term] = doc.user_data[TERMS]
    return terms


def names_of(doc: Doc, key: str) -> list[Spotted]:
    """Return the names of lines or makers found in a document."""
    names: list[Spotted] = doc.user_data[key]
    return names
