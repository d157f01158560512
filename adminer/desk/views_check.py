"""Checking: the scan on one side, its facts on the other; every act is one post."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from typing import Any, Final

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.routing import Route

from adminer.desk.desk import Desk, StaleError
from adminer.desk.drawn import read_drawn, rest_of
from adminer.desk.facts_in_order import facts_of, next_open
from adminer.desk.forms import FormError, IdOf, advert_from, box_from, known_name, offer_from, text_of
from adminer.desk.naming import learn_entry, learn_line, learn_repairs
from adminer.desk.pictures import TILE, level_count
from adminer.desk.queue import PAGE, make_ahead, neighbours, queue_of
from adminer.desk.rendering import ENVIRONMENT, page
from adminer.records import Box
from adminer.store.facts import Fields, box_list, box_of
from adminer.store.journal import last_to_undo

OFFER_ACTS: Final = {"confirm": "confirmed", "reject": "rejected", "correct": "corrected"}
ADVERT_ACTS: Final = {
    "confirm": "confirmed",
    "correct": "corrected",
    "move": "moved",
    "split": "split",
    "reject": "taken out",
}
Form = Mapping[str, Any]
Handler = Callable[[Request], Awaitable[Response]]


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Checking."""
    desk.shelf.ahead.append(lambda: make_ahead(desk))

    def listing(request: Request) -> Response:
        number = request.query_params.get("page", "1")
        queue = queue_of(desk, max(1, int(number)) if number.isdecimal() and len(number) < 7 else 1)
        if queue.rows:
            desk.pictures.prepare(queue.rows[0]["clipping_id"])
        return page(request, desk, "queue.html", {"here": "Checking", "queue": queue, "page_size": PAGE})

    def checking(request: Request) -> Response:
        context = _context(desk, request.path_params["clipping"])
        if context["next_clipping"]:
            desk.pictures.prepare(context["next_clipping"])
        return page(request, desk, "check.html", {**context, "said": desk.take_said()})

    def posted(act: Callable[[Desk, Mapping[str, str], Form], Any]) -> Handler:
        async def handler(request: Request) -> Response:
            async with request.form(max_files=0, max_fields=300) as form:
                typed = dict(form)
            return await run_in_threadpool(_answer, desk, request, act, typed)

        return handler

    base = "/check/{clipping}"
    return [
        Route("/check", listing),
        Route(base, checking),
        Route(base + "/offer/{fact}/{act}", posted(_offer_act), methods=["POST"]),
        Route(base + "/advert/{fact}/{act}", posted(_advert_act), methods=["POST"]),
        Route(base + "/read-box", posted(_read_box), methods=["POST"]),
        Route(base + "/add", posted(_add), methods=["POST"]),
        Route(base + "/continues", posted(_continues), methods=["POST"]),
        Route(base + "/same", posted(_same), methods=["POST"]),
        Route(base + "/undo", posted(_undo), methods=["POST"]),
    ]


def _answer(desk: Desk, request: Request, act: Callable[[Desk, Mapping[str, str], Form], Any], form: Form) -> Response:
    """Do the act, then answer with the facts as they are now (to a script) or the way back to them."""
    params = request.path_params
    clipping_id = params["clipping"]
    drawn, status, left = None, 200, params.get("fact")
    try:
        said, drawn = act(desk, params, form)
    except StaleError as error:
        said, status = f"Not saved: {error}.", 409
    except FormError as error:
        said, status = f"Not saved: {error}.", 422
    if "x-part" not in request.headers and drawn is None and status == 200:
        desk.say(said)
        return RedirectResponse(f"/check/{clipping_id}", status_code=303)
    context = {**_context(desk, clipping_id), "said": said, "drawn": drawn}
    if "x-part" not in request.headers:
        return page(request, desk, "check.html", context, status=status)
    html = ENVIRONMENT.get_template("facts.html").render(context)
    following = next_open(context["facts"], after=left)
    # where a mistake was made, the hand stays on its fact
    onward = left if status != 200 else (following.id if following else None)
    return HTMLResponse(html, status_code=status, headers={"x-next": onward} if onward else {})


def _context(desk: Desk, clipping_id: str) -> dict[str, Any]:
    laid = desk.page(clipping_id)
    clipping = desk.clipping(clipping_id)
    before, following = neighbours(desk, clipping_id)
    names = desk.authorities()
    facts = facts_of(laid)
    return {
        "here": "Checking",
        "clipping": clipping,
        "facts": facts,
        # a small place lies over the large one around it, or no pointer would reach it
        "marks": sorted(facts, key=lambda fact: -fact.box.w * fact.box.h),
        "levels": level_count(clipping["width"], clipping["height"]),
        "tile": TILE,
        "said": "",
        "drawn": None,
        "can_undo": last_to_undo(desk.journal.acts) is not None,
        "lost": [row for row in laid.rows if not row.found],
        "previous_clipping": before,
        "next_clipping": following,
        "others": desk.shelf.rows(
            "SELECT clipping_id, file FROM clippings WHERE clipping_id <> ? ORDER BY file LIMIT 500", [clipping_id]
        ),
        "lines": sorted({line.name for line in names.lines}),
        "retailers": sorted({retailer.name for retailer in names.retailers}),
        "pieces": sorted(names.pieces.pieces),
    }


def _offer_act(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    clipping_id, offer_id, act = params["clipping"], params["fact"], params["act"]
    if act not in OFFER_ACTS:
        raise FormError(f"an offer cannot be “{act}”")
    said: Callable[[Fields], Fields] | None = None
    if act == "correct":

        def said(seen: Fields) -> Fields:
            return offer_from(form, box_of(seen["box"]), *_teachers(desk), seen)

    elif act == "confirm":

        def said(seen: Fields) -> Fields:
            return {**seen, "line": known_name(seen["line"], lambda name: learn_line(desk, name))}

    written = desk.offer_act(clipping_id, offer_id, act, str(form.get("mark", "")), said)
    if written is None:
        return "Nothing was changed.", None
    learned = learn_repairs(desk) if "item" in written.new and act == "correct" else ()
    taught = f" From now on {', '.join(learned)}, wherever it is read." if learned else ""
    return f"Saved: {OFFER_ACTS[act]}.{taught}", None


def _teachers(desk: Desk) -> tuple[IdOf, IdOf]:
    """Return what gives the ids of a line and of a maker a person names, and makes their entries."""
    return lambda name: learn_line(desk, name), lambda name: learn_entry(desk, "makers", name)


def _advert_act(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    clipping_id, advert_id, act = params["clipping"], params["fact"], params["act"]
    if act not in ADVERT_ACTS:
        raise FormError(f"an advert cannot be “{act}”")
    said: Callable[[Fields], Fields] | None = None
    if act == "correct":

        def said(seen: Fields) -> Fields:
            return advert_from(form, lambda name: learn_entry(desk, "retailers", name), seen)

    elif act == "confirm":

        def said(seen: Fields) -> Fields:
            return {**seen, "retailer": known_name(seen["retailer"], lambda name: learn_entry(desk, "retailers", name))}

    elif act in ("move", "split"):
        drawn = box_from(form)

        def said(seen: Fields) -> Fields:
            whole = box_of(seen["box"])
            return (
                {"box": box_list(drawn)}
                if act == "move"
                else {"boxes": [box_list(rest_of(whole, drawn)), box_list(drawn)]}
            )

    written = desk.advert_act(
        clipping_id, advert_id, "correct" if act == "move" else act, str(form.get("mark", "")), said
    )
    return (f"Saved: advert {ADVERT_ACTS[act]}." if written else "Nothing was changed."), None


def _read_box(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, Any]:
    clipping_id = params["clipping"]
    clipping = desk.clipping(clipping_id)
    box = _on_scan(box_from(form), clipping["width"], clipping["height"])
    if form.get("as") == "advert":
        desk.add(clipping_id, "advert", {"box": box_list(box)})
        return "Saved: a new advert was marked.", None
    return "Read. Look it over, then add it.", read_drawn(desk, clipping_id, box)


def _add(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    box = box_from(form)
    fields = offer_from(form, box, *_teachers(desk))
    desk.add(params["clipping"], "offer", fields)
    return "Saved: the offer was added.", None


def _continues(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    clipping = desk.clipping(params["clipping"])
    target = text_of(form, "continues")
    desk.set_notes([clipping["file"]], {"continues": target})
    return "Saved: the clipping goes on from there." if target else "Saved: it stands alone.", None


def _same(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    other = text_of(form, "same")
    if not other:
        return "Nothing was changed.", None
    desk.clipping(other)
    desk.tell("same_advert", "clipping", params["clipping"], {}, {"same_advert": other})
    return "Saved: both show the same advert.", None


def _undo(desk: Desk, params: Mapping[str, str], form: Form) -> tuple[str, None]:
    act = last_to_undo(desk.journal.acts)
    if act is None:
        return "There is nothing to undo.", None
    desk.undo(act.id)
    where = " on another clipping" if act.clipping_id not in ("", params["clipping"]) else ""
    return f"Undone: the last act{where} ({act.act}).", None


def _on_scan(box: Box, width: int, height: int) -> Box:
    if box.x >= width or box.y >= height:
        raise FormError("that box lies beside the scan")
    return Box(box.x, box.y, min(box.w, width - box.x), min(box.h, height - box.y))
