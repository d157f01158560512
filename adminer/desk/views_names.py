"""Names: what was found that the file does not know yet, and every entry with its names and sightings."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from typing import Any, Final, Literal

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from adminer.desk import naming
from adminer.desk.desk import Desk
from adminer.desk.entry_form import EMPTY_ROWS, RELATIONS, USERS, entry_from, entry_mark
from adminer.desk.forms import FormError, text_of
from adminer.desk.fresh import newer_than_answers
from adminer.desk.rendering import page
from adminer.desk.shelf import Row
from adminer.errors import FolderError
from adminer.names.authority import Entry, EntryKind

MOST_PROPOSALS: Final = 60
MOST_SIGHTINGS: Final = 500
Typed = dict[str, str]
_LINE_COUNTS: Final = "SELECT line_id, count(*) AS n FROM offers WHERE line_id IS NOT NULL GROUP BY line_id"
_SHOP_COUNTS: Final = (
    "SELECT retailer_id, count(*) AS n FROM adverts WHERE retailer_id IS NOT NULL GROUP BY retailer_id"
)
_MAKER_COUNTS: Final = "SELECT maker_id, count(*) AS n FROM offers WHERE maker_id IS NOT NULL GROUP BY maker_id"
_SEEN: Final = """
    SELECT c.clipping_id, c.file, c.publication, coalesce(a.valid_from, c.published_from) AS day, a.retailer,
        coalesce(a.city, c.city) AS city, o.line_text, o.item, o.offer_id AS fact, o.line_why AS why,
        o.line_warning AS warning
    FROM offers o JOIN adverts a USING (advert_id) JOIN clippings c USING (clipping_id)
    WHERE o.{column} = ? AND o.status <> 'rejected'
    ORDER BY day NULLS LAST, c.file, o.offer_id LIMIT ?
"""
_ADVERTS: Final = """
    SELECT c.clipping_id, c.file, c.publication, coalesce(a.valid_from, c.published_from) AS day, a.retailer,
        coalesce(a.city, c.city) AS city, a.advert_id AS fact, NULL AS line_text, NULL AS item, NULL AS why,
        NULL AS warning
    FROM adverts a JOIN clippings c USING (clipping_id) WHERE a.retailer_id = ?
    ORDER BY day NULLS LAST, c.file LIMIT ?
"""


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Names."""

    def listing(request: Request) -> Response:
        names = desk.authorities()
        proposals = naming.proposals_of(desk)
        context = {
            "here": "Names",
            "names": names,
            "proposals": proposals[:MOST_PROPOSALS],
            "whole": len(proposals),
            "makers": {maker.id: maker.name for maker in names.makers},
            "line_names": {line.id: line.name for line in names.lines},
            "counts": _counts(desk),
            "newer": newer_than_answers(desk),
            "said": desk.take_said(),
        }
        return page(request, desk, "names.html", context)

    def entry(request: Request) -> Response:
        return page(request, desk, "entry.html", _entry_context(desk, *_found(desk, request), desk.take_said()))

    async def changed(request: Request) -> Response:
        async with request.form(max_files=0, max_fields=1000) as form:
            typed = {name: value for name, value in form.items() if isinstance(value, str)}
        kind, found = await run_in_threadpool(_found, desk, request)
        try:
            wanted = entry_from(typed, found)
        except FormError as error:
            # what was typed stays in the form
            context = _entry_context(desk, kind, found, f"Not saved: {error}.", typed)
            return page(request, desk, "entry.html", context, status=422)
        changes = await run_in_threadpool(naming.change, desk, kind, wanted, typed.get("mark", ""))
        desk.say(f"Saved: {found.name} was changed." if changes else "Nothing was changed.")
        return RedirectResponse(f"/names/{kind}/{found.id}", status_code=303)

    def posted(change: Callable[[Desk, Typed], str]) -> Callable[[Request], Awaitable[Response]]:
        async def handler(request: Request) -> Response:
            async with request.form(max_files=0, max_fields=20) as form:
                typed = {name: text_of(form, name) for name in ("name", "maker", "line", "kind", "back")}
            if not typed["name"]:
                raise FormError("no name was given")
            said = await run_in_threadpool(change, desk, typed)
            desk.say(said)
            back = typed["back"] if typed["back"].startswith("/names/") else "/names"
            return RedirectResponse(back, status_code=303)

        return handler

    return [
        Route("/names", listing),
        Route("/names/accept", posted(_accept), methods=["POST"]),
        Route("/names/merge", posted(_merge), methods=["POST"]),
        Route("/names/split", posted(_split), methods=["POST"]),
        Route("/names/reject", posted(_reject), methods=["POST"]),
        Route("/names/new", posted(_new), methods=["POST"]),
        Route("/names/{kind}/{entry}", entry),
        Route("/names/{kind}/{entry}", changed, methods=["POST"]),
    ]


def _accept(desk: Desk, typed: Typed) -> str:
    naming.accept(desk, typed["name"], typed["maker"] or None)
    return f"Saved: {typed['name']} is a line of this file now."


def _merge(desk: Desk, typed: Typed) -> str:
    if not typed["line"]:
        raise FormError("say which line it is")
    naming.merge(desk, typed["name"], typed["line"])
    return f"Saved: {typed['name']} is one more name of that line."


def _split(desk: Desk, typed: Typed) -> str:
    naming.split(desk, typed["name"], typed["line"])
    return f"Saved: {typed['name']} is a line of its own now."


def _reject(desk: Desk, typed: Typed) -> str:
    naming.reject(desk, typed["name"])
    return f"Saved: {typed['name']} is no line, and will not be proposed again."


def _new(desk: Desk, typed: Typed) -> str:
    kinds: dict[str, Literal["makers", "retailers"]] = {"makers": "makers", "retailers": "retailers"}
    kind = kinds.get(typed["kind"])
    if kind is None:
        raise FormError("say whether it is a maker or a shop")
    naming.learn_entry(desk, kind, typed["name"])
    return f"Saved: {typed['name']} is in the names of this file."


def _found(desk: Desk, request: Request) -> tuple[EntryKind, Entry]:
    """Return the kind and the entry an address names. Raises FolderError where there is none."""
    kind, entry_id = request.path_params["kind"], request.path_params["entry"]
    names = desk.authorities()
    entries: dict[EntryKind, tuple[Entry, ...]] = {
        "lines": names.lines, "makers": names.makers, "retailers": names.retailers,
    }  # fmt: skip
    found = next((each for each in entries.get(kind, ()) if each.id == entry_id), None)
    if found is None:
        raise FolderError("is no entry of the names of this file", file=entry_id, remedy="look at the page Names")
    return kind, found


def _entry_context(
    desk: Desk, kind: EntryKind, entry: Entry, said: str, typed: Mapping[str, str] | None = None
) -> dict[str, Any]:
    names = desk.authorities()
    makers, shops = ([(each.id, each.name) for each in some] for some in (names.makers, names.retailers))
    lines = [(line.id, line.name) for line in names.lines]
    return {
        "here": "Names",
        "kind": kind,
        "entry": entry,
        "mark": entry_mark(entry),
        "typed": typed or {},
        "users": USERS,
        "relations": RELATIONS,
        "empty_rows": EMPTY_ROWS,
        # what a relation or a name can point to; a name is used by a maker or a shop
        "groups": (("lines", lines), ("makers", makers), ("shops", shops)),
        "makers": dict(makers),
        "shops": dict(shops),
        "line_names": dict(lines),
        "seen": _sightings(desk, kind, entry.id),
        "newer": newer_than_answers(desk),
        "said": said,
    }


def _counts(desk: Desk) -> dict[str, dict[str, int]]:
    if not desk.shelf.exists:
        return {"lines": {}, "retailers": {}, "makers": {}}
    return {
        "lines": {row["line_id"]: row["n"] for row in desk.shelf.rows(_LINE_COUNTS)},
        "retailers": {row["retailer_id"]: row["n"] for row in desk.shelf.rows(_SHOP_COUNTS)},
        "makers": {row["maker_id"]: row["n"] for row in desk.shelf.rows(_MAKER_COUNTS)},
    }


def _sightings(desk: Desk, kind: str, entry_id: str) -> list[Row]:
    if not desk.shelf.exists:
        return []
    if kind == "retailers":
        return desk.shelf.rows(_ADVERTS, [entry_id, MOST_SIGHTINGS])
    column = {"lines": "line_id", "makers": "maker_id"}[kind]
    return desk.shelf.rows(_SEEN.format(column=column), [entry_id, MOST_SIGHTINGS])
