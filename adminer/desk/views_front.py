"""The first page: what lies in this folder and what is worth doing next."""

from __future__ import annotations

from typing import Final

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from adminer.desk.desk import Desk
from adminer.desk.look_data import UNDATED
from adminer.desk.naming import proposals_of
from adminer.desk.rendering import page

_COUNTS: Final = f"""
    SELECT
        (SELECT count(*) FROM clippings) AS clippings,
        (SELECT count(*) FROM adverts) AS adverts,
        (SELECT count(*) FROM offers) AS offers,
        (SELECT count(*) FROM offers WHERE status = 'read') AS open,
        (SELECT count(*) FROM adverts a JOIN clippings c USING (clipping_id) WHERE {UNDATED}) AS undated,
        (SELECT count(DISTINCT line) FROM offers WHERE line IS NOT NULL) AS lines,
        (SELECT count(*) FROM unread) AS unread
"""  # noqa: S608 - the spliced piece is a constant of our own


def routes(desk: Desk) -> list[Route]:
    """Return the address of the first page."""

    def front(request: Request) -> Response:
        counts = desk.shelf.rows(_COUNTS)[0] if desk.shelf.exists else None
        context = {"counts": counts, "proposed": len(proposals_of(desk)), "progress": desk.reader.progress()}
        return page(request, desk, "front.html", context)

    return [Route("/", front)]
