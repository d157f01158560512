"""Questions kept as SQL files: their headers name the question, the parameters and the columns.

A header is the leading comment lines of a file, for instance::

    -- question: Which chain offered which set at what price?
    -- param: line text none  only this line, by id or name
    -- param: from_year integer 1900  first year
    -- column: retailer  the chain or store

A parameter line has name, type (text, integer, number, date, yes_no), default (`none` for no limit) and what it is.
In the SQL a parameter stands as `$name`.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, Final, Literal, cast

import duckdb

from adminer.errors import QueryError, UsageError
from adminer.shipped import shipped

ParamKind = Literal["text", "integer", "number", "date", "yes_no"]
ParamValue = str | int | Decimal | date | bool | None

_HEADER_LINE: Final = re.compile(r"^--\s*(question|param|column|note)\s*:\s*(.+?)\s*$")
_PARAM: Final = re.compile(r"^(\w+)\s+(text|integer|number|date|yes_no)\s+(\"[^\"]*\"|\S+)\s+(.+)$")
_COLUMN: Final = re.compile(r"^(\w+)\s+(.+)$")
_DATABASE_TYPES: Final[Mapping[str, str]] = {
    "text": "VARCHAR",
    "integer": "BIGINT",
    "number": "DECIMAL(18, 6)",
    "date": "DATE",
    "yes_no": "BOOLEAN",
}


@dataclass(frozen=True, slots=True)
class Param:
    """Hold one parameter of a question."""

    name: str
    kind: ParamKind
    default: str | None  # as text; None means no limit
    about: str


@dataclass(frozen=True, slots=True)
class Column:
    """Hold one column of an answer and what it means."""

    name: str
    about: str


@dataclass(frozen=True, slots=True)
class Question:
    """Hold one question: its name (the file's), what it asks, its parameters and columns, and the SQL."""

    name: str
    question: str
    params: tuple[Param, ...]
    columns: tuple[Column, ...]
    sql: str
    note: str | None = None


def load_questions(folders: Iterable[Path] = ()) -> dict[str, Question]:
    """Read every question that comes with the program, then those of further folders; the name is the file's.

    Raises QueryError for a file whose header cannot be understood.
    """
    found: dict[str, Question] = {}
    for folder in (shipped("queries"), *folders):
        for path in sorted(folder.glob("*.sql")):
            question = read_question(path)
            found[question.name] = question
    return found


def read_question(path: Path) -> Question:
    """Read one question from its file.

    Raises QueryError where the header cannot be understood or names parameters that the SQL lacks.
    """
    text = path.read_text(encoding="utf-8")
    asked, note = "", None
    params: list[Param] = []
    columns: list[Column] = []
    for line in text.splitlines():
        if not line.startswith("--"):
            break
        found = _HEADER_LINE.match(line)
        if found is None:
            continue
        kind, value = found.groups()
        if kind == "question":
            asked = value
        elif kind == "note":
            note = value
        elif kind == "param":
            params.append(_param(value, path))
        else:
            parts = _COLUMN.match(value)
            if parts is None:
                raise _broken(path, f"the line 'column: {value}' needs a name and what it is")
            columns.append(Column(*parts.groups()))
    if not asked:
        raise _broken(path, "it has no line '-- question: ...'")
    for param in params:
        if not re.search(rf"\${param.name}\b", text):
            raise _broken(path, f"the SQL does not use the parameter ${param.name}")
    return Question(path.stem.replace("_", "-"), asked, tuple(params), tuple(columns), text, note)


def run_question(database: Path, question: Question, given: Mapping[str, str | None] | None = None) -> Any:
    """Answer a question from a database, opened for reading only; returns an Arrow table.

    Values are given as text and become what the header says. Raises UsageError for a value that cannot, QueryError
    where the database refuses.
    """
    values = bind(question, given or {})
    with open_readonly(database) as connection:
        try:
            # a bare parameter has no type of its own, and NULL would take any; the header's type decides
            for param in question.params:
                connection.execute(
                    f"SET VARIABLE {param.name} = CAST($value AS {_DATABASE_TYPES[param.kind]})",
                    {"value": values[param.name]},
                )
            return connection.sql(typed_sql(question)).to_arrow_table()
        except duckdb.Error as fault:
            raise QueryError(
                f"the question '{question.name}' failed",
                why=str(fault).splitlines()[0],
                remedy="bring the database up to date with adminer digitise, then ask again",
            ) from None


def typed_sql(question: Question) -> str:
    """Return the SQL with each $name replaced by the variable of that name, which has the type of the header."""
    sql = question.sql
    for param in question.params:
        sql = re.sub(rf"\${param.name}\b", f"getvariable('{param.name}')", sql)
    return sql


def open_readonly(database: Path) -> duckdb.DuckDBPyConnection:
    """Open a database for reading only; it cannot reach any other file.

    Raises QueryError where it is no database or another version wrote it.
    """
    try:
        return duckdb.connect(str(database), read_only=True, config={"enable_external_access": "false"})
    except duckdb.Error as fault:
        raise QueryError(
            "cannot be opened",
            file=str(database),
            why=str(fault).splitlines()[0],
            remedy="delete it and run adminer digitise again; nothing but time is lost",
        ) from None


def bind(question: Question, given: Mapping[str, str | None]) -> dict[str, ParamValue]:
    """Turn texts into the values of all parameters of a question, defaults where nothing was given.

    Raises UsageError for an unknown parameter or a value of the wrong kind.
    """
    known = {param.name for param in question.params}
    for name in given:
        if name not in known:
            raise UsageError(
                f"the question '{question.name}' has no parameter '{name}'",
                remedy=f"it has {', '.join(sorted(known)) or 'none'}",
            )
    return {param.name: _value(param, given.get(param.name, param.default)) for param in question.params}


def _value(param: Param, text: str | None) -> ParamValue:
    if text is None or (text == "" and param.kind != "text"):
        return None
    try:
        if param.kind == "integer":
            return int(text)
        if param.kind == "number":
            return Decimal(text)
        if param.kind == "date":
            return date.fromisoformat(text)
        if param.kind == "yes_no":
            return {"yes": True, "true": True, "1": True, "no": False, "false": False, "0": False}[text.lower()]
    except (ValueError, InvalidOperation, KeyError):
        needs = {
            "integer": "a whole number",
            "number": "a number",
            "date": "a day like 1952-03-14",
            "yes_no": "yes or no",
        }
        raise UsageError(f"'{text}' will not do for {param.name}", remedy=f"give {needs[param.kind]}") from None
    return text


def _param(value: str, path: Path) -> Param:
    parts = _PARAM.match(value)
    if parts is None:
        raise _broken(path, f"the line 'param: {value}' needs name, type, default and what it is")
    name, kind, default, about = parts.groups()
    return Param(name, cast(ParamKind, kind), None if default == "none" else default.strip('"'), about)


def _broken(path: Path, why: str) -> QueryError:
    return QueryError("has a header that cannot be understood", file=path.name, why=why, remedy="correct the file")
