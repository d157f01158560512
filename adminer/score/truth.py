"""The truth: what a person reads on each scan, from truth.jsonl."""

from __future__ import annotations

import json
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ConfigDict, Field, ValidationError, field_validator

from adminer.errors import FolderError
from adminer.records import Box


class _Row(BaseModel):
    model_config = ConfigDict(extra="ignore", frozen=True, arbitrary_types_allowed=True)

    @field_validator("box", mode="before", check_fields=False)
    @classmethod
    def _box(cls, value: Any) -> Any:
        return Box(*(round(side) for side in value)) if isinstance(value, list | tuple) else value


class TruePrice(_Row):
    """Hold one printed price; amount in the currency's main unit, box only where the truth was printed by the press."""

    text_as_printed: str
    amount: Decimal
    currency: str
    item_text: str = ""
    kind: str = "price"
    box: Box | None = None
    condition: str | None = None
    condition_text: str | None = None
    per_quantity: Decimal | None = None
    per_unit: str | None = None
    form: str | None = None

    @field_validator("amount", "per_quantity", mode="before")
    @classmethod
    def _decimal(cls, value: Any) -> Any:
        return None if value is None else Decimal(str(value))


class TrueAdvert(_Row):
    """Hold one advert's place on a page, and who placed it where for when, where known."""

    box: Box
    retailer: str | None = None
    city: str | None = None
    valid: dict[str, date | None] | None = None


class TrueSet(_Row):
    """Hold one set: the number of pieces as stated and each listed piece with its count."""

    text: str = ""
    stated: int | None = None
    listed: tuple[tuple[str, int], ...] = ()
    box: Box | None = None
    line: str | None = None


class TrueName(_Row):
    """Hold one printed name of a line, with its authority entry where it has one."""

    text: str = ""
    line_id: str | None = None
    line: str | None = None
    box: Box | None = None


class TrueText(_Row):
    """Hold one printed condition or date: its kind, its words, its value or EDTF form."""

    text: str = ""
    kind: str = ""
    value: str | None = None
    edtf: str | None = None
    box: Box | None = None

    @field_validator("value", mode="before")
    @classmethod
    def _words(cls, value: Any) -> Any:
        return None if value is None else str(value)


class TruePage(_Row):
    """Hold the truth of one page of one scan."""

    file: str
    leaf: int = 1
    image_size: tuple[int, int] | None = None
    ad_type: str = ""
    retailer: str | None = None
    city: str | None = None
    printed_date: str | None = None
    date_iso_or_null: str | None = None
    date_edtf: str | None = None
    date_basis: str | None = None
    prices: tuple[TruePrice, ...] = ()
    prices_complete: bool = True
    offers_with_conditions: tuple[str, ...] = ()
    transcript_lines: tuple[str, ...] = ()
    adverts: tuple[TrueAdvert, ...] | None = None
    sets: tuple[TrueSet, ...] | None = None
    lines: tuple[TrueName, ...] | None = None
    conditions: tuple[TrueText, ...] | None = None
    dates: tuple[TrueText, ...] | None = None
    readable: bool = True
    undated: bool = False
    true_date: str | None = Field(default=None)


def read_truth(path: Path) -> tuple[TruePage, ...]:
    """Read truth.jsonl, one JSON object a page.

    Raises FolderError with the number of the line that is not as expected.
    """
    try:
        text = path.read_text(encoding="utf-8")
    except OSError as error:
        raise FolderError(
            "the truth cannot be read", file=str(path), why=error.strerror, remedy="give the path of a truth.jsonl"
        ) from error
    pages = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip():
            continue
        try:
            pages.append(TruePage.model_validate(json.loads(line)))
        except (json.JSONDecodeError, ValidationError) as error:
            raise FolderError(
                f"line {number} is not a page of truth",
                file=str(path),
                why=str(error).splitlines()[0],
                remedy="correct the line; corpus_demo/truth.jsonl shows the form",
            ) from error
    return tuple(pages)
