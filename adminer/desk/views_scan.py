"""The pictures of the scans: overview, tiles, and the piece that proves a fact."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from adminer.desk.desk import Desk
from adminer.desk.forms import FormError
from adminer.errors import ScanError
from adminer.records import Box

# a picture of a scan never changes: its id is the hash of its content
_KEEP: Final = {"cache-control": "private, max-age=604800, immutable"}
_MARGIN: Final = 12  # pixels of the scan left around a crop


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of pictures."""

    def overview(request: Request) -> Response:
        return _picture(lambda: desk.pictures.overview(request.path_params["clipping"]))

    def tile(request: Request) -> Response:
        params = request.path_params
        return _picture(
            lambda: desk.pictures.tile(params["clipping"], params["level"], params["column"], params["row"])
        )

    def crop(request: Request) -> Response:
        box = box_of_text(request.query_params.get("box", ""))
        grown = Box(max(0, box.x - _MARGIN), max(0, box.y - _MARGIN), box.w + 2 * _MARGIN, box.h + 2 * _MARGIN)
        return _picture(lambda: desk.pictures.crop(request.path_params["clipping"], grown))

    base = "/scan/{clipping}"
    return [
        Route(base + "/overview.jpg", overview),
        Route(base + "/tile/{level:int}/{column:int}/{row:int}.jpg", tile),
        Route(base + "/crop.jpg", crop),
    ]


def box_of_text(text: str) -> Box:
    """Return the box of "x,y,w,h".

    Raises FormError.
    """
    parts = text.split(",")
    if len(parts) != 4 or not all(part.isdecimal() and len(part) < 8 for part in parts):
        raise FormError("a box is four whole numbers with commas: left, top, width, height")
    return Box(*(int(part) for part in parts))


def _picture(draw: Callable[[], bytes]) -> Response:
    try:
        return Response(draw(), media_type="image/jpeg", headers=_KEEP)
    except FileNotFoundError as error:
        raise ScanError("is no longer there", file=str(error.filename), remedy="put the scan back") from error
