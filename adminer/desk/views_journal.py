"""The journal as a page: every act with its old and new word, what was lost, and the way to take one back."""

from __future__ import annotations

from typing import Any

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from adminer.desk.desk import Desk
from adminer.desk.rendering import page
from adminer.desk.row_files import ROW_FILES
from adminer.desk.shelf import Row
from adminer.store.facts import shown
from adminer.store.journal import Act, active, check_journal

PAGE = 100


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Journal."""

    def journal(request: Request) -> Response:
        number = request.query_params.get("page", "1")
        at = max(1, int(number)) if number.isdecimal() and len(number) < 7 else 1
        acts = desk.journal.acts
        standing = {act.id for act in active(acts)}
        part = list(reversed(acts))[(at - 1) * PAGE : at * PAGE]
        context = {
            "here": "Journal",
            "rows": [_row(act, act.id in standing) for act in part],
            "whole": len(acts),
            "page": at,
            "page_size": PAGE,
            "said": desk.take_said(),
            "files": _files(desk, part),
            "lost": _lost(desk),
            "problems": check_journal(desk.journal.path).problems,
        }
        return page(request, desk, "journal.html", context)

    async def undo(request: Request) -> Response:
        act = await run_in_threadpool(desk.undo, request.path_params["act"])
        desk.say(f"Undone: act {act.act_no} says so.")
        return RedirectResponse("/journal", status_code=303)

    return [Route("/journal", journal), Route("/journal/{act}/undo", undo, methods=["POST"])]


def _row(act: Act, stands: bool) -> dict[str, Any]:
    if act.act in ROW_FILES:
        return {**_row_of_list(act), "act": act, "stands": stands}
    names = [name for name in act.new if name not in ("box", "file")] if act.act in ("correct", "note") else []
    changes = [(name, shown(act.old.get(name)), shown(act.new[name])) for name in names]
    seen, new = act.seen, act.new
    about = [seen.get("item"), seen.get("retailer"), *(new.get(name) for name in ("said", "file", "dates", "kind"))]
    said = next((text for text in map(shown, about) if text), "")
    return {"act": act, "stands": stands, "verb": "", "changes": changes, "about": said}


def _row_of_list(act: Act) -> dict[str, Any]:
    whole = act.new or act.old
    verb = "corrected" if act.new and act.old else "written down" if act.new else "taken out"
    differing = [name for name in ROW_FILES[act.act].columns if act.new.get(name) != act.old.get(name)]
    changes = (
        [(name, act.old.get(name, ""), act.new.get(name, "")) for name in differing] if verb == "corrected" else []
    )
    return {"verb": verb, "changes": changes, "about": ", ".join(str(value) for value in whole.values())}


def _files(desk: Desk, acts: list[Act]) -> dict[str, str]:
    ids = sorted({act.clipping_id for act in acts if act.clipping_id})
    if not ids or not desk.shelf.exists:
        return {}
    rows = desk.shelf.rows("SELECT clipping_id, file FROM clippings WHERE list_contains(?, clipping_id)", [ids])
    return {row["clipping_id"]: row["file"] for row in rows}


def _lost(desk: Desk) -> list[Row]:
    if not desk.shelf.exists:
        return []
    return desk.shelf.rows("SELECT * FROM corrections WHERE NOT found ORDER BY act_no DESC LIMIT 200")
