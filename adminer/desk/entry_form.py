"""What people type into the form of an authority entry: names with their users, years, relations; as an entry."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from typing import Any, Final, get_args

from pydantic import ValidationError

from adminer.desk.forms import MOST_TEXT, FormError, text_of
from adminer.names.authority import Entry, LineEntry, MakerEntry, Relation, RetailerEntry, UsedBy

USERS: Final[tuple[str, ...]] = get_args(UsedBy)
RELATIONS: Final[tuple[str, ...]] = get_args(Relation)
YEARS: Final = (1500, 2100)
EMPTY_ROWS: Final = 2  # to write on, below what an entry has
_MOST_ROWS: Final = 60
_TEXTS: Final = {
    LineEntry: ("name", "maker", "shape", "decal", "remark"),
    MakerEntry: ("name", "kind", "city", "remark"),
    RetailerEntry: ("name", "kind", "remark"),
}
_LISTS: Final = {LineEntry: (), MakerEntry: ("names",), RetailerEntry: ("names", "branches")}


def entry_mark(entry: Entry) -> str:
    """Return a short mark of all that a person can see of an entry; it changes with any of it."""
    return hashlib.sha256(entry.model_dump_json().encode()).hexdigest()[:12]


def entry_from(form: Mapping[str, Any], entry: Entry) -> Entry:
    """Return an entry as its form has it; its id stays.

    Raises FormError.
    """
    model = type(entry)
    values: dict[str, Any] = {name: text_of(form, name) or None for name in _TEXTS[model]}
    if not values["name"]:
        raise FormError("the entry needs a name")
    values |= {name: _lines(form, name) for name in _LISTS[model]}
    first, last = ("first_year", "last_year") if model is LineEntry else ("from", "to")
    values |= _span(form, first, last)
    if model is LineEntry:
        values |= {"names": _uses(form), "relations": _relations(form)}
    try:
        return model.model_validate({"id": entry.id, **values})
    except ValidationError as error:
        problem = error.errors()[0]
        raise FormError(f"{problem['loc'][0]}: {problem['msg']}") from error


def _uses(form: Mapping[str, Any]) -> list[dict[str, Any]]:
    """Return the further names of a line, each with who used it, when, and where that is written."""
    uses = []
    for n in range(_MOST_ROWS):
        name = text_of(form, f"use_name_{n}")
        told = {key: text_of(form, f"use_{key}_{n}") or None for key in ("used_by", "used_by_id", "source")}
        years = _span(form, f"use_from_{n}", f"use_to_{n}")
        if form.get(f"use_drop_{n}"):
            continue
        if name:
            uses.append({"name": name, **told, "from": years[f"use_from_{n}"], "to": years[f"use_to_{n}"]})
        elif any(told.values()) or any(years.values()):
            raise FormError("a row of names has no name; tick Drop to take it out")
    return uses


def _relations(form: Mapping[str, Any]) -> list[dict[str, Any]]:
    relations = []
    for n in range(_MOST_ROWS):
        told = {key: text_of(form, f"rel_{key}_{n}") or None for key in ("relation", "other", "source")}
        if form.get(f"rel_drop_{n}") or not any(told.values()):
            continue
        if not told["relation"] or not told["other"]:
            raise FormError("a relation needs both: which it is, and to what")
        relations.append(told)
    return relations


def _span(form: Mapping[str, Any], first: str, last: str) -> dict[str, int | None]:
    span = {first: _year(form, first), last: _year(form, last)}
    begun, ended = span[first], span[last]
    if begun and ended and ended < begun:
        raise FormError(f"{ended} comes before {begun}")
    return span


def _year(form: Mapping[str, Any], name: str) -> int | None:
    typed = text_of(form, name)
    if not typed:
        return None
    if not (typed.isascii() and typed.isdecimal() and YEARS[0] <= int(typed[:9]) <= YEARS[1]):
        raise FormError(f"“{typed}” is no year; write it as 1952")
    return int(typed)


def _lines(form: Mapping[str, Any], name: str) -> list[str]:
    """Return what was typed on the lines of a field, one entry a line."""
    typed = form.get(name, "")
    lines = [" ".join(line.split()) for line in str(typed).splitlines()] if isinstance(typed, str) else []
    if any(len(line) > MOST_TEXT for line in lines) or len(lines) > 10 * _MOST_ROWS:
        raise FormError(f"{name} is too long: {MOST_TEXT} characters a line at most")
    return [line for line in lines if line]
