"""Between the tables and the schedules of promotions: read from the words once, at the building, and kept as rows."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

import duckdb

from adminer.dating.schedules import MAY_TELL, ScheduleFact, facts_of_table, read_schedule
from adminer.store.rows import Row

_SCHEDULES: Final = """
SELECT s.advert_id, list(s.week ORDER BY s.week, s.piece), list(s.piece ORDER BY s.week, s.piece), any_value(f.pieces)
FROM schedules s
LEFT JOIN (
    SELECT o.advert_id, list(DISTINCT o.piece_or_set ORDER BY o.piece_or_set) AS pieces
    FROM offers o JOIN prices p USING (offer_id)
    WHERE p.condition = 'cardholder' AND o.status <> 'rejected' AND o.piece_or_set IS NOT NULL
    GROUP BY o.advert_id
) f USING (advert_id)
WHERE s.advert_id IN (SELECT advert_id FROM sightings)
GROUP BY s.advert_id ORDER BY s.advert_id"""
_KEPT: Final = """
    SELECT advert_id, what, text, week, of_weeks FROM schedule_facts SEMI JOIN (
        SELECT advert_id FROM sightings WHERE $line IS NULL OR lower(line_id) = lower($line)
            OR lower(line) = lower($line)
    ) USING (advert_id) ORDER BY rowid
"""


def read_schedules(connection: duckdb.DuckDBPyConnection) -> list[ScheduleFact]:
    """Return what adverts with a sighting print of the schedule of their promotion."""
    rows = connection.execute(
        """
        WITH telling AS MATERIALIZED (
            SELECT DISTINCT advert_id FROM words SEMI JOIN sightings USING (advert_id)
            WHERE regexp_matches(text, $telling, 'i')
        )
        SELECT w.advert_id, string_agg(w.text, ' ' ORDER BY w.word_no) FROM words w SEMI JOIN telling USING (advert_id)
        GROUP BY w.advert_id ORDER BY w.advert_id
        """,
        {"telling": MAY_TELL},
    ).fetchall()
    facts = [fact for advert_id, text in rows for fact in read_schedule(text, advert_id)]
    counted = {fact.advert_id for fact in facts if fact.what == "week_of"}
    for advert_id, weeks, pieces, featured in connection.execute(_SCHEDULES).fetchall():
        told = facts_of_table(advert_id, list(zip(weeks, pieces, strict=True)), featured or ())
        facts += [fact for fact in told if fact.what != "week_of" or advert_id not in counted]
    return facts


def schedule_rows(facts: Iterable[ScheduleFact]) -> list[Row]:
    """Turn what was read of schedules into rows of schedule_facts."""
    return [{"advert_id": f.advert_id, "what": f.what, "text": f.text, "week": f.week, "of_weeks": f.of} for f in facts]


def kept_schedules(connection: duckdb.DuckDBPyConnection, line: str | None = None) -> list[ScheduleFact]:
    """Return what the adverts of one line, or of all, print of their schedule, as the database keeps it."""
    try:
        rows = connection.execute(_KEPT, {"line": line}).fetchall()
    except duckdb.CatalogException:  # a database built before the table was kept: the words are looked through
        return read_schedules(connection)
    return [ScheduleFact(*row) for row in rows]
