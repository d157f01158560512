"""What is known of the line, maker and retailer named: their years, dated objects, and the line's dated adverts."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final

import numpy as np

from adminer.dating.evidence.base import Case, Clue, Context, Floats, KnownRun, YearSpan
from adminer.dating.evidence.shapes import faded, spell, stray, within
from adminer.dating.months import FIRST_YEAR, LAST_YEAR, MONTHS, first_day, index_of, last_day
from adminer.dating.schedules import read_schedule

LINE: Final = "the line's years"
SEEN: Final = "the line's dated adverts"
MAKER: Final = "the maker's years"
RETAILER: Final = "the retailer's years"
OBJECT: Final = "dated objects"
RUN: Final = "the promotion's run"
# A file gives the years that catalogues, marks and adverts prove: the true ones begin earlier and end later as often as
# not, and stock was sold off after its end. Months of half-life; judgement, no source
_HALF_LIFE: Final = {LINE: 12.0, MAKER: 12.0, RETAILER: 12.0, OBJECT: 30.0}
_BEYOND: Final = 0.5  # that the first or last year stated was not the first or last
_WRONG_NAME: Final = 0.03  # that the name was linked wrongly, or its years in the file are wrong


def find(case: Case, context: Context) -> Iterator[Clue]:
    """Yield the clues of the names an advert was linked with."""
    for line_id in case.line_ids:
        if line_id in context.lines:
            yield from _years(LINE, context.lines[line_id])
        for span in context.objects.get(line_id, ()):
            yield from _years(OBJECT, span)
        clue = _seen(case, context, line_id)
        if clue is not None:
            yield clue
        run = context.runs.get((line_id, case.retailer_id or ""))
        if run is not None:
            yield _in_run(case, run)
    for maker_id in case.maker_ids:
        if maker_id in context.makers:
            yield from _years(MAKER, context.makers[maker_id])
    if case.retailer_id in context.retailers:
        yield from _years(RETAILER, context.retailers[case.retailer_id or ""])


def _years(kind: str, span: YearSpan) -> Iterator[Clue]:
    first = date(span.first, 1, 1) if span.first and FIRST_YEAR < span.first <= LAST_YEAR else None
    last = date(span.last, 12, 31) if span.last and FIRST_YEAR <= span.last < LAST_YEAR else None
    if first is None and last is None:
        return
    # dated objects bound a line less sharply: others may be older or younger
    misread = 0.3 if kind == OBJECT else _WRONG_NAME
    shown = f"{span.name}: {span.first or '?'} to {span.last or '?'}"
    likelihood = spell(
        first, last, misread=misread, half_life=_HALF_LIFE[kind], floor=misread, lingering=_BEYOND, leading=_BEYOND
    )
    yield Clue(kind, shown, span.source, likelihood, None, first, last)


def _seen(case: Case, context: Context, line_id: str) -> Clue | None:
    months = sorted(month for month, advert_id in context.seen.get(line_id, ()) if advert_id != case.advert_id)
    if not months:
        return None
    first, last = months[0], months[-1]
    name = context.lines[line_id].name if line_id in context.lines else line_id
    span = f"{first_day(first):%Y-%m}" + (f" to {first_day(last):%Y-%m}" if last > first else "")
    text = f"{name} is seen in {len(months)} dated advert{'s' if len(months) > 1 else ''}, {span}"
    return Clue(
        SEEN,
        text,
        "dated adverts of this file",
        _near(tuple(months)),
        None,
        first_day(first),
        last_day(last),
    )


def _in_run(case: Case, run: KnownRun) -> Clue:
    of_schedule = [f for f in read_schedule(case.text) if f.week and f.of]
    if run.scheduled_start is not None and of_schedule:
        week = of_schedule[0].week or 1
        day = run.scheduled_start + timedelta(days=7 * (week - 1))
        text = f"'{of_schedule[0].text}' of the schedule that began {run.scheduled_start}"
        # the schedule may have been another one's, or have slipped a week; judgement, no source
        likelihood = within(index_of(day), index_of(day + timedelta(days=6)), stray(0.1, 1), edge=0.05, edge_months=1)
        return Clue(RUN, text, "printed schedule", likelihood, None, day, day + timedelta(days=6))
    first, last = index_of(run.first), index_of(run.last)
    text = f"{run.name}'s run here, {run.first} to {run.last}, by {run.method}"
    likelihood = within(first, last, stray(0.2, last - first + 1), edge=0.1, edge_months=1)
    return Clue(RUN, text, "runs of this file", likelihood, None, run.first, run.last)


def _near(months: tuple[int, ...]) -> Floats:
    at = np.arange(MONTHS)
    outside = np.clip(np.maximum(months[0] - at, at - months[-1]), 0, None)
    # few sightings say little about how long the line ran before and after them
    half_life = 30.0 / np.sqrt(len(months)) + 6.0
    return faded(np.asarray(-np.log(2) * outside / half_life), 0.9)
