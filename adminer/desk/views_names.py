"""Names: what was found that the file does not know yet, and every entry with its names and sightings."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import Any, Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from adminer.desk import naming
from adminer.desk.desk import Desk
from adminer.desk.forms import FormError, text_of
from adminer.desk.fresh import newer_acts
from adminer.desk.rendering import page
from adminer.desk.shelf import Row
from adminer.errors import FolderError

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
            "newer": newer_acts(desk),
            "said": desk.take_said(),
        }
        return page(request, desk, "names.html", context)

    def entry(request: Request) -> Response:
        kind, entry_id = request.path_params["kind"], request.path_params["entry"]
        names = desk.authorities()
        entries: dict[str, Any] = {"lines": names.lines, "makers": names.makers, "retailers": names.retailers}
        found = next((each for each in entries.get(kind, ()) if each.id == entry_id), None)
        if found is None:
            raise FolderError("is no entry of the names of this file", file=entry_id, remedy="look at the page Names")
        context = {
            "here": "Names",
            "kind": kind,
            "entry": found,
            "names": names,
            "makers": {maker.id: maker.name for maker in names.makers},
            "line_names": {line.id: line.name for line in names.lines},
            "seen": _sightings(desk, kind, entry_id),
            "newer": newer_acts(desk),
            "said": desk.take_said(),
        }
        return page(request, desk, "entry.html", context)

    def posted(change: Callable[[Desk, Typed], str]) -> Callable[[Request], Awaitable[Response]]:
        async def handler(request: Request) -> Response:
            async with request.form(max_files=0, max_fields=20) as form:
                typed = {name: text_of(form, name) for name in ("name", "maker", "line", "back")}
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
        Route("/names/{kind}/{entry}", entry),
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
