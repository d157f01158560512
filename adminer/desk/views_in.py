"""In: scans come in by drop or choice, notes are filled in for many at once, and reading shows how far it is."""

from __future__ import annotations

from typing import Any, Final

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response
from starlette.routing import Route

from adminer.desk.desk import Desk
from adminer.desk.forms import FormError, text_of
from adminer.desk.notes_form import FIELDS, check_values, scan_rows
from adminer.desk.rendering import ENVIRONMENT, page
from adminer.desk.typed_dates import edtf_of
from adminer.desk.uploads import Taken, take_in
from adminer.engine.folder import list_scans

MOST_FILES: Final = 2000
PAGE: Final = 300  # scans on one page
_CLEAR: Final = "-"  # what a person writes to empty a field of many scans


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section In."""

    def shown(request: Request, said: str = "", status: int = 200, **more: Any) -> Response:
        files = list_scans(desk.folder)
        only = request.query_params.get("file")
        number = request.query_params.get("page", "1")
        at = max(1, int(number)) if number.isdecimal() and len(number) < 7 else 1
        part = [file for file in files if file == only] if only else files[(at - 1) * PAGE : at * PAGE]
        rows, problems = scan_rows(desk, part)
        context: dict[str, Any] = {
            "here": "In",
            "rows": rows,
            "whole": len(files),
            "page": at,
            "page_size": PAGE,
            "only": only,
            "fields": FIELDS,
            "problems": problems,
            "progress": desk.reader.progress(),
            "said": said or desk.take_said(),
            **{"taken": [], "typed": {}, "chosen": (), **more},
        }
        return page(request, desk, "in.html", context, status=status)

    def progress(request: Request) -> Response:
        told = desk.reader.progress()
        return HTMLResponse(
            ENVIRONMENT.get_template("progress.html").render(progress=told), headers={"x-state": told.state}
        )

    async def scans(request: Request) -> Response:
        taken: list[Taken] = []
        async with request.form(max_files=MOST_FILES, max_fields=20) as form:
            for offered in form.getlist("scans"):
                if isinstance(offered, UploadFile) and offered.filename:
                    name, stream = offered.filename, offered.file
                    taken.append(await run_in_threadpool(take_in, desk.folder.scans, name, stream))
        count = sum(each.file is not None for each in taken)
        if count:
            desk.reader.start()
        scans = "1 scan" if count == 1 else f"{count} scans"
        said = f"{scans} taken in; the reading has begun." if count else "No scan was taken in."
        if all(each.file for each in taken):
            desk.say(said)
            return RedirectResponse("/in", status_code=303)
        return await run_in_threadpool(shown, request, said, 422, taken=[each for each in taken if each.file is None])

    async def notes(request: Request) -> Response:
        async with request.form(max_files=0, max_fields=20_000) as form:
            known = set(list_scans(desk.folder))
            files = [str(file) for file in form.getlist("file") if str(file) in known]
            typed = {name: text_of(form, name) for name, _ in FIELDS}
        values = {name: "" if value == _CLEAR else value for name, value in typed.items() if value}
        if values.get("published"):
            values["published"] = edtf_of(values["published"])
        try:
            _check(files, values)
        except FormError as error:
            # what was typed and chosen stays in the form
            return await run_in_threadpool(shown, request, f"Not saved: {error}.", 422, typed=typed, chosen=files)
        count = await run_in_threadpool(desk.set_notes, files, values)
        desk.reader.soon()
        desk.say("Saved: 1 note changed." if count == 1 else f"Saved: {count} notes changed.")
        return RedirectResponse("/in", status_code=303)

    async def read(request: Request) -> Response:
        desk.reader.start()
        return RedirectResponse("/in", status_code=303)

    async def pause(request: Request) -> Response:
        desk.reader.pause()
        return RedirectResponse("/in", status_code=303)

    return [
        Route("/in", shown),
        Route("/in/progress", progress),
        Route("/in/scans", scans, methods=["POST"]),
        Route("/in/notes", notes, methods=["POST"]),
        Route("/in/read", read, methods=["POST"]),
        Route("/in/pause", pause, methods=["POST"]),
    ]


def _check(files: list[str], values: dict[str, str]) -> None:
    if not files:
        raise FormError("no scan was chosen")
    if not values:
        raise FormError("nothing was filled in")
    check_values(values)
