"""The web application of the desk: its addresses, its guard, and what a mistake looks like."""

from __future__ import annotations

from typing import Final

import duckdb
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp

from adminer.desk import (
    views_ask,
    views_check,
    views_front,
    views_in,
    views_journal,
    views_lists,
    views_look,
    views_names,
    views_runs,
    views_scan,
)
from adminer.desk.desk import Desk, StaleError
from adminer.desk.forms import FormError
from adminer.desk.guard import Guard
from adminer.desk.rendering import page
from adminer.errors import AdminerError, FolderError, MachineError, QueryError, ScanError, UsageError

_STATUS: Final[dict[type[AdminerError], int]] = {
    UsageError: 422,
    ScanError: 404,
    FolderError: 409,
    QueryError: 422,
    MachineError: 507,
}
_OLDER: Final = "The database was built by another version of this program; it is being built anew. Look again soon."
_REPORT: Final = "What was said to be saved is kept; please report it with what the desk's window shows."
_HEADINGS: Final = {404: "Not here", 405: "Not that way", 409: "Look once more", 422: "That cannot be taken"}


def make_app(desk: Desk) -> ASGIApp:
    """Return the application behind its guard."""

    def failed(request: Request, status: int, text: str) -> Response:
        if "x-part" in request.headers or request.url.path.startswith("/scan/"):
            return PlainTextResponse(text, status_code=status)
        context = {"heading": _HEADINGS.get(status, "It did not work"), "text": text, "back": ""}
        return page(request, desk, "message.html", context, status=status)

    def of_program(request: Request, error: Exception) -> Response:
        if isinstance(error, HTTPException):
            text = "There is no such page at this desk." if error.status_code == 404 else error.detail
            return failed(request, error.status_code, text)
        if isinstance(error, AdminerError):
            return failed(request, _STATUS.get(type(error), 500), str(error))
        status = 409 if isinstance(error, StaleError) else 422
        return failed(request, status, f"Not saved: {error}.")

    def of_older(request: Request, error: Exception) -> Response:
        desk.reader.start()
        return failed(request, 409, f"{_OLDER} ({str(error).splitlines()[0]})")

    def of_fault(request: Request, error: Exception) -> Response:
        return failed(request, 500, f"A fault of the program ({type(error).__name__}: {error}). {_REPORT}")

    sections = (
        views_front, views_scan, views_in, views_check, views_names, views_ask, views_look, views_lists,
        views_runs, views_journal,
    )  # fmt: skip
    routes: list[Route | Mount] = [route for section in sections for route in section.routes(desk)]
    routes.append(Mount("/static", StaticFiles(packages=[("adminer.desk", "static")])))
    app = Starlette(
        routes=routes,
        exception_handlers={
            HTTPException: of_program,
            AdminerError: of_program,
            StaleError: of_program,
            FormError: of_program,
            duckdb.CatalogException: of_older,
            duckdb.BinderException: of_older,
            Exception: of_fault,
        },
    )
    return Guard(app, desk.door)
