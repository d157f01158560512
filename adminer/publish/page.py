"""One page of pictures as a single file: drawings inside, nothing fetched, fit to print or to send."""

from __future__ import annotations

import base64
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined

from adminer.publish.facts_picture import Fact

CAUTIONS: Final[tuple[str, ...]] = (
    "A date or an attribution is no word on food use: old glazes, decals and gold trim may give off lead or cadmium. "
    "Follow your local code and ask a laboratory before you eat from a piece.",
    "Scans may still be in copyright where they were printed; ask the library before you publish one.",
    "An estimate of a date or a price is no appraisal.",
)


@dataclass(frozen=True, slots=True)
class Picture:
    """Hold one drawing with the sentence it supports and where its facts come from."""

    heading: str
    says: str
    svg: str
    source: str


@dataclass(frozen=True, slots=True)
class AdvertPicture:
    """Hold one advert with its facts drawn on the scan."""

    heading: str
    says: str
    picture: bytes
    alt: str
    source: str
    facts: tuple[Fact, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """Hold one answer as a table."""

    heading: str
    columns: tuple[str, ...]
    rows: tuple[tuple[object, ...], ...]


def page_of(
    title: str,
    lead: str,
    pictures: Sequence[Picture],
    advert: AdvertPicture | None = None,
    tables: Sequence[Table] = (),
) -> str:
    """Return the page as HTML; every text of a scan is escaped, drawings stand inline."""
    environment = Environment(
        loader=PackageLoader("adminer.publish"), autoescape=True, undefined=StrictUndefined, trim_blocks=True
    )
    shown = None
    if advert is not None:
        shown = {
            "heading": advert.heading,
            "says": advert.says,
            "png": base64.b64encode(advert.picture).decode("ascii"),
            "alt": advert.alt,
            "source": advert.source,
            "facts": advert.facts,
        }
    return environment.get_template("page.html").render(
        title=title, lead=lead, pictures=pictures, advert=shown, tables=tables, cautions=CAUTIONS
    )
