"""The lists kept by hand: a row is added, corrected and taken out on a form; each change is an act of the journal."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import Any, Final
from urllib.parse import urlencode

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from adminer.desk.desk import Desk, StaleError
from adminer.desk.forms import FormError
from adminer.desk.fresh import newer_than_answers
from adminer.desk.kept_lists import OBJECTS, SEARCHES, Field, KeptList, cells_from, span_words
from adminer.desk.rendering import page
from adminer.desk.table_edit import Cells, TableRow, table_rows
from adminer.errors import UsageError

PAGE: Final = 200
_CHANGED: Final = "this row was changed meanwhile; look at it once more"


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the lists kept by hand."""
    return [route for kept in (SEARCHES, OBJECTS) for route in _routes(desk, kept)]


def _routes(desk: Desk, kept: KeptList) -> list[Route]:
    def listing(request: Request) -> Response:
        return _page(desk, kept, request, None, dict(request.query_params), desk.take_said())

    def one(request: Request) -> Response:
        row = _row(desk, kept, request)
        return _page(desk, kept, request, row, row.cells, desk.take_said())

    async def added(request: Request) -> Response:
        typed = await _typed(request)
        return await run_in_threadpool(_save, desk, kept, request, None, typed)

    async def changed(request: Request) -> Response:
        typed = await _typed(request)
        row = await run_in_threadpool(_row, desk, kept, request)
        if typed.get("mark") != _mark(row):
            raise StaleError(_CHANGED)
        return await run_in_threadpool(_save, desk, kept, request, row, typed)

    return [
        Route(kept.address, listing),
        Route(kept.address, added, methods=["POST"]),
        Route(kept.address + "/{place:int}", one),
        Route(kept.address + "/{place:int}", changed, methods=["POST"]),
    ]


def _save(desk: Desk, kept: KeptList, request: Request, row: TableRow | None, typed: Mapping[str, str]) -> Response:
    """Write what was typed, then go back to where the person came from; a mistake shows the form as it was typed."""
    old = row.cells if row else None
    try:
        new = None if row and "take_out" in typed else cells_from(typed, kept, kept.fields(desk), old or {})
    except FormError as error:
        return _page(desk, kept, request, row, typed, f"Not saved: {error}.", status=422)
    if new == old:
        desk.say("Nothing was changed.")
    else:
        desk.put_row(kept.act, row.place if row else len(_rows(desk, kept)), old, new)
        what = "taken out; the journal can bring it back" if new is None else "corrected" if row else "written down"
        desk.say(f"Saved: the {kept.one} is {what}.")
    return RedirectResponse(_back(typed) or kept.address, status_code=303)


def _page(
    desk: Desk,
    kept: KeptList,
    request: Request,
    row: TableRow | None,
    typed: Mapping[str, str],
    said: str,
    status: int = 200,
) -> Response:
    fields = kept.fields(desk)
    words = {field.name: dict(field.choices) for field in fields}
    number = request.query_params.get("page", "1")
    at = max(1, int(number)) if number.isdecimal() and len(number) < 7 else 1
    rows = _rows(desk, kept)
    only = {name: typed[name] for name in ("line", "retailer") if row is None and typed.get(name)}
    shown = [each for each in reversed(rows) if _concerns(each.cells, only, words)]
    context: dict[str, Any] = {
        "here": "Looking",
        "kept": kept,
        "fields": fields,
        "words": words,
        "titles": {field.name: field.title for field in fields if field.title},
        "row": row,
        "mark": _mark(row) if row else "",
        "typed": _offered(typed, fields, desk.who),
        "back": _back(typed),
        "rows": shown[(at - 1) * PAGE : at * PAGE],
        "whole": len(shown),
        "only": {name: words.get(name, {}).get(value, value) for name, value in only.items()},
        "page": at,
        "page_size": PAGE,
        "query": urlencode(only),
        "problems": kept.problems(desk),
        "span_words": span_words,
        "newer": newer_than_answers(desk),
        "said": said,
    }
    return page(request, desk, "list.html", context, status=status)


def _offered(typed: Mapping[str, str], fields: tuple[Field, ...], who: str) -> dict[str, str]:
    """Return what the form shows: names of lines and shops as the ids that the choices go by."""
    offered = {}
    for field in fields:
        value = typed.get(field.name, who if field.name == "who" and not typed.get("mark") else "")
        same = [choice for choice, words in field.choices if value.casefold() in (choice.casefold(), words.casefold())]
        offered[field.name] = same[0] if same else span_words(value) if field.name == "issues" else value
    return offered


def _concerns(cells: Cells, only: Mapping[str, str], words: Mapping[str, Mapping[str, str]]) -> bool:
    """Say whether a row is about a line and a shop; one that names none is about all."""
    for name, value in only.items():
        shown = words.get(name, {}).get(value, value)
        if cells.get(name) and cells[name].casefold() not in (value.casefold(), shown.casefold()):
            return False
    return True


def _rows(desk: Desk, kept: KeptList) -> tuple[TableRow, ...]:
    return table_rows(desk.folder.root / kept.where.file, kept.where.columns)


def _row(desk: Desk, kept: KeptList, request: Request) -> TableRow:
    place = request.path_params["place"]
    found = next((row for row in _rows(desk, kept) if row.place == place), None)
    if found is None:
        raise UsageError(f"there is no such {kept.one} any more", remedy=f"look at the page {kept.heading}")
    return found


def _mark(row: TableRow) -> str:
    return hashlib.sha256(json.dumps([row.place, row.cells], sort_keys=True).encode()).hexdigest()[:12]


def _back(typed: Mapping[str, str]) -> str:
    """Return where the person came from, where that is a page of Looking."""
    back = typed.get("back", "")
    return back if back.startswith("/look/") and back.isprintable() and len(back) < 1000 else ""


async def _typed(request: Request) -> dict[str, str]:
    async with request.form(max_files=0, max_fields=40) as form:
        return {name: value for name, value in form.items() if isinstance(value, str)}
