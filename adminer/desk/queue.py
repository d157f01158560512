"""Which clippings are worth a look, and in which order; counts follow the acts newer than the database."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Final

from adminer.desk.desk import Desk
from adminer.desk.facts_in_order import WORTH_SQL, facts_of
from adminer.desk.shelf import Row
from adminer.errors import ScanError

PAGE: Final = 100
_BUILD_TIME: Final = timedelta(minutes=10)  # acts so long before the snapshot's time may not be in it yet
_QUEUE: Final = f"""
    SELECT c.clipping_id, c.file, c.leaf, c.publication, c.published, c.city,
        count(o.offer_id) FILTER (o.status = 'read') AS open,
        count(o.offer_id) FILTER (o.status <> 'read') AS seen,
        coalesce(max({WORTH_SQL}) FILTER (o.status = 'read'), 0) AS worth
    FROM clippings c LEFT JOIN adverts a USING (clipping_id) LEFT JOIN offers o USING (advert_id)
    GROUP BY ALL
    ORDER BY worth DESC, c.file, c.leaf
    LIMIT $most OFFSET $before
"""  # noqa: S608 - the spliced piece is a constant of our own


@dataclass(frozen=True, slots=True)
class Queue:
    """Hold one page of the list of clippings, the most worthwhile first."""

    rows: tuple[Row, ...]
    whole: int
    page: int


def queue_of(desk: Desk, page: int = 1) -> Queue:
    """Return the clippings in the order in which a look at them is worth most; pages count from 1."""
    if not desk.shelf.exists:
        return Queue((), 0, 1)
    rows = _listed(desk, page)
    touched = touched_since_build(desk)
    for row in rows:
        if row["clipping_id"] in touched:
            _recount(desk, row)
    whole = desk.shelf.rows("SELECT count(*) AS n FROM clippings")[0]["n"]
    return Queue(tuple(rows), whole, page)


def make_ahead(desk: Desk) -> None:
    """List the clippings before anyone looks at them: the first page of the list is asked for by every clipping."""
    _listed(desk, 1)


def neighbours(desk: Desk, clipping_id: str) -> tuple[str | None, str | None]:
    """Return the clipping before this one in the file, and the next one that still has something to check."""
    if not desk.shelf.exists:
        return None, None
    before = desk.shelf.rows(
        "SELECT clipping_id FROM clippings WHERE (file, leaf) < "
        "(SELECT (file, leaf) FROM clippings WHERE clipping_id = ?) ORDER BY file DESC, leaf DESC LIMIT 1",
        [clipping_id],
    )
    touched = touched_since_build(desk)
    for row in _listed(desk, 1):
        if row["clipping_id"] == clipping_id:
            continue
        if row["clipping_id"] in touched:
            _recount(desk, row)
        if row["open"]:
            return (before[0]["clipping_id"] if before else None), row["clipping_id"]
    return (before[0]["clipping_id"] if before else None), None


def touched_since_build(desk: Desk) -> frozenset[str]:
    """Return the clippings with acts that the database may not show yet."""
    status = desk.shelf.path.stat() if desk.shelf.exists else None
    built = datetime.fromtimestamp(status.st_mtime if status else 0, UTC) - _BUILD_TIME
    since = built.strftime("%Y-%m-%dT%H:%M:%SZ")
    return frozenset(act.clipping_id for act in desk.journal.acts if act.at >= since and act.clipping_id)


def _listed(desk: Desk, page: int) -> list[Row]:
    return desk.shelf.kept_rows(_QUEUE, {"most": PAGE, "before": (page - 1) * PAGE})


def _recount(desk: Desk, row: Row) -> None:
    try:
        facts = [fact for fact in facts_of(desk.page(row["clipping_id"])) if fact.kind == "offer"]
    except ScanError:
        return
    row["open"] = sum(fact.open for fact in facts)
    row["seen"] = len(facts) - row["open"]
