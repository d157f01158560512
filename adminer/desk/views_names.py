"""Looking."""

from __future__ import annotations

from starlette.routing import Route

from adminer.desk.desk import Desk


def routes(desk: Desk) -> list[Route]:
    """Return the addresses of the section Looking."""
    return []
