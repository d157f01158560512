"""Asking: every kept question as a form, its answer as a table with the way to each scan, and the search of words."""

from __future__ import annotations

import io
from typing import Any, Final
from urllib.parse import urlencode

import pyarrow.parquet as pq
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from adminer.desk.answer_picture import dated_prices, picture_of
from adminer.desk.asking import MOST_ROWS, Heads, answer_of, arrow_answer
from adminer.desk.desk import Desk
from adminer.desk.finding import MOST_FOUND, Finder
from adminer.desk.fresh import newer_than_answers
from adminer.desk.rendering import page
from adminer.errors import UsageError
from adminer.store.output import as_csv, as_json, as_markdown
from adminer.store.queries import Question, load_questions

KINDS: Final = {
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
    "markdown": "text/markdown; charset=utf-8",
    "parquet": "application/vnd.apache.parquet",
}

# columns that hold words of the vocabulary, which a page shows as words
IN_WORDS: Final = ("piece", "piece_or_set", "condition", "used_by", "relation", "status", "kind", "role")


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Asking."""
    finder, heads = Finder(desk.shelf), Heads(desk.shelf)
    desk.shelf.ahead += [finder.make_ahead, heads.make_ahead]

    def questions() -> dict[str, Question]:
        return load_questions([desk.folder.root / "queries"])

    def named(request: Request) -> tuple[Question, dict[str, str | None]]:
        known = questions()
        name = request.path_params["question"]
        if name not in known:
            raise UsageError("is no question of this file", file=name, remedy="choose one on the page Asking")
        question = known[name]
        given: dict[str, str | None] = {
            param.name: request.query_params[param.name]
            for param in question.params
            if request.query_params.get(param.name)
        }
        return question, given

    def listing(request: Request) -> Response:
        return page(request, desk, "ask.html", {"here": "Asking", "questions": list(questions().values())})

    def question(request: Request) -> Response:
        asked, given = named(request)
        context: dict[str, Any] = {
            "here": "Asking",
            "question": asked,
            "given": given,
            "query": urlencode({name: value for name, value in given.items() if value}),
            "kinds": KINDS,
            "most": MOST_ROWS,
            "in_words": IN_WORDS,
            "known": _known(desk),
            "answer": None,
            "picture": None,
            "newer": newer_than_answers(desk),
            "problem": "",
        }
        if desk.shelf.exists:
            try:
                head = heads.of(asked, given)
            except UsageError as error:
                return page(request, desk, "question.html", {**context, "problem": str(error)}, status=422)
            context["answer"] = answer_of(desk.shelf, head)
            context["picture"] = bool(dated_prices(head.table))
        return page(request, desk, "question.html", context)

    def picture(request: Request) -> Response:
        asked, given = named(request)
        key = ("answer drawn", asked.sql, *sorted(given.items()))
        drawn = desk.shelf.kept(key, lambda: picture_of(heads.of(asked, given).table, asked.question))
        if drawn is None:
            raise UsageError("this answer makes no picture", remedy="look at its table")
        return Response(drawn, media_type="image/svg+xml")

    def download(request: Request) -> Response:
        asked, given = named(request)
        kind = request.path_params["kind"]
        if kind not in KINDS:
            raise UsageError(f"'{kind}' is no form of download", remedy=f"choose one of {', '.join(KINDS)}")
        table = arrow_answer(desk.shelf, asked, given)
        ending = {"markdown": "md"}.get(kind, kind)
        headers = {"content-disposition": f'attachment; filename="{asked.name}.{ending}"'}
        return Response(_encoded(table, kind), media_type=KINDS[kind], headers=headers)

    def search(request: Request) -> Response:
        asked = " ".join(request.query_params.get("q", "").split())[:200]
        found = finder.find(asked)
        return page(request, desk, "search.html", {"asked": asked, "found": found, "most": MOST_FOUND})

    return [
        Route("/ask", listing),
        Route("/ask/{question}", question),
        Route("/ask/{question}/picture.svg", picture),
        Route("/ask/{question}/download/{kind}", download),
        Route("/search", search),
    ]


def _known(desk: Desk) -> dict[str, list[str]]:
    """Return the names a parameter of a question may be given, by its name."""
    names = desk.authorities()
    return {
        "line": sorted({line.name for line in names.lines}),
        "retailer": sorted({each.name for each in names.retailers}),
        "piece": sorted(names.pieces.pieces),
    }


def _encoded(table: Any, kind: str) -> bytes:
    if kind == "parquet":
        stream = io.BytesIO()
        pq.write_table(table, stream)
        return stream.getvalue()
    write = {"csv": as_csv, "json": as_json, "markdown": as_markdown}[kind]
    return write(table).encode("utf-8", "replace")
