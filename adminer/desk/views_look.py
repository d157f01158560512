"""Looking: timelines of runs, prices over time, chains by week, coverage of papers, and when an advert appeared."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from adminer.desk import look_data
from adminer.desk.desk import Desk
from adminer.desk.forms import FormError, text_of
from adminer.desk.fresh import newer_than_answers
from adminer.desk.notes_form import check_values
from adminer.desk.rendering import page
from adminer.desk.typed_dates import edtf_of
from adminer.errors import ScanError
from adminer.publish.charts_dating import months_of, stored_posterior
from adminer.publish.charts_prices import prices_picture
from adminer.publish.look import svg_of


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Looking."""
    desk.shelf.ahead.append(lambda: look_data.make_ahead(desk))
    return [*_table_routes(desk), *_date_routes(desk)]


def _table_routes(desk: Desk) -> list[Route]:
    """Return the addresses of prices, weeks and coverage."""

    def index(request: Request) -> Response:
        if not desk.shelf.exists:
            return _shown(desk, request, "look.html", {"empty": True})
        return _shown(desk, request, "look.html", {"empty": False})

    def prices(request: Request) -> Response:
        line, piece, retailer = _choice(request)
        named = {"line": line, "piece": piece, "retailer": retailer}
        context: dict[str, Any] = {**named, "rows": [], "choices": None, "whole": 0}
        at = _page_number(request)
        if desk.shelf.exists:
            found = look_data.prices(desk, line, piece, retailer)
            context["choices"] = look_data.choices(desk)
            context["rows"] = found[(at - 1) * look_data.PRICES_PAGE : at * look_data.PRICES_PAGE]
            context["whole"] = len(found)
        context |= {"page": at, "page_size": look_data.PRICES_PAGE, "most": look_data.MOST_PRICES}
        context["query"] = urlencode({name: value for name, value in named.items() if value})
        return _shown(desk, request, "prices.html", context)

    def prices_drawn(request: Request) -> Response:
        line, piece, retailer = _choice(request)
        rows = look_data.prices(desk, line, piece, retailer)
        title = ", ".join(name.replace("_", " ") for name in (line, piece, retailer) if name) or "All prices"
        svg = desk.shelf.kept(("prices drawn", line, piece, retailer), lambda: prices_picture(rows, title))
        return Response(svg, media_type="image/svg+xml")

    def weeks(request: Request) -> Response:
        year = request.query_params.get("year", "")
        line = request.query_params.get("line") or None
        grid = None
        if desk.shelf.exists:
            grid = look_data.week_grid(desk, line, int(year) if year.isdecimal() and len(year) == 4 else None)
        lines = look_data.choices(desk)["lines"] if desk.shelf.exists else []
        return _shown(desk, request, "weeks.html", {"grid": grid, "line": line, "lines": lines or []})

    def coverage(request: Request) -> Response:
        years, papers = look_data.coverage(desk) if desk.shelf.exists else ((), [])
        return _shown(desk, request, "coverage.html", {"years": years, "papers": papers})

    return [
        Route("/look", index),
        Route("/look/prices", prices),
        Route("/look/prices.svg", prices_drawn),
        Route("/look/weeks", weeks),
        Route("/look/coverage", coverage),
    ]


def _date_routes(desk: Desk) -> list[Route]:
    """Return the addresses of the adverts without a date."""

    def undated(request: Request) -> Response:
        at = _page_number(request)
        rows = look_data.undated(desk, at) if desk.shelf.exists else []
        return _shown(
            desk,
            request,
            "undated.html",
            {"rows": rows, "read": desk.shelf.exists, "page": at, "page_size": look_data.PAGE},
        )

    def one(request: Request) -> Response:
        return shown(request, desk.take_said())

    def shown(request: Request, said: str, typed: dict[str, str] | None = None) -> Response:
        advert = _advert(desk, request)
        context = {
            "advert": advert,
            "evidence": look_data.evidence_of(desk, advert["advert_id"]),
            "drawn": bool(months_of(advert.get("posterior"))),
            "said": said,
            "typed": typed or {},
        }
        return _shown(desk, request, "dating.html", context, 422 if typed else 200)

    def posterior(request: Request) -> Response:
        advert = _advert(desk, request)
        sets = {"50 % set": advert.get("edtf_50"), "90 % set": advert.get("edtf_90")}
        drawn = stored_posterior(advert.get("posterior"), sets, "When the advert appeared")
        if drawn is None:
            raise ScanError("has no estimate", file=request.path_params["advert"], remedy="read the scans once more")
        return Response(svg_of(drawn), media_type="image/svg+xml")

    async def add(request: Request) -> Response:
        async with request.form(max_files=0, max_fields=20) as form:
            values = {name: text_of(form, name) for name in ("dates", "reason", "source")}
        try:
            if not values["dates"] or not values["reason"]:
                raise FormError("say the dates and the reason")
            values["dates"] = edtf_of(values["dates"])
            check_values({"published": values["dates"]})
        except FormError as error:
            # what was typed stays in the form
            return await run_in_threadpool(shown, request, f"Not saved: {error}.", values)
        advert = await run_in_threadpool(_advert, desk, request)
        entry = {"advert": advert["advert_id"], **{name: value for name, value in values.items() if value}}
        await run_in_threadpool(desk.add_evidence, advert["clipping_id"], "add", entry)
        desk.say("Saved. The estimate is being made anew.")
        return RedirectResponse(f"/look/dates/{advert['advert_id']}", status_code=303)

    async def strike(request: Request) -> Response:
        async with request.form(max_files=0, max_fields=20) as form:
            values = {name: text_of(form, name) for name in ("kind", "text", "reason")}
        if not values["kind"]:
            raise FormError("no evidence was named")
        advert = await run_in_threadpool(_advert, desk, request)
        await run_in_threadpool(
            desk.add_evidence, advert["clipping_id"], "strike", {"advert": advert["advert_id"], **values}
        )
        desk.say("Struck out. The estimate is being made anew; the journal can take this back.")
        return RedirectResponse(f"/look/dates/{advert['advert_id']}", status_code=303)

    return [
        Route("/look/dates", undated),
        Route("/look/dates/{advert}", one),
        Route("/look/dates/{advert}/posterior.svg", posterior),
        Route("/look/dates/{advert}/add", add, methods=["POST"]),
        Route("/look/dates/{advert}/strike", strike, methods=["POST"]),
    ]


def _shown(desk: Desk, request: Request, template: str, context: dict[str, Any], status: int = 200) -> Response:
    whole = {"here": "Looking", "newer": newer_than_answers(desk), **context}
    return page(request, desk, template, whole, status=status)


def _page_number(request: Request) -> int:
    number = request.query_params.get("page", "1")
    return max(1, int(number)) if number.isdecimal() and len(number) < 7 else 1


def _choice(request: Request) -> tuple[str | None, str | None, str | None]:
    query = request.query_params
    return query.get("line") or None, query.get("piece") or None, query.get("retailer") or None


def _advert(desk: Desk, request: Request) -> dict[str, Any]:
    advert_id = request.path_params["advert"]
    advert = look_data.advert_to_date(desk, advert_id) if desk.shelf.exists else None
    if advert is None:
        raise ScanError("is no advert of this file", file=advert_id, remedy="look at the page Looking")
    return advert
