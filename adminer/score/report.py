"""Scores as tables for a terminal."""

from __future__ import annotations

from collections import Counter

from rich.table import Table

from adminer.score.causes import CAUSES, Miss, table_of
from adminer.score.measure import Score
from adminer.score.tally import Tally


def _share(value: float | None) -> str:
    return "-" if value is None else f"{value:.3f}"


def field_table(scores: dict[str, Score]) -> Table:
    """Build the table of fields, the first score in full (precision, recall, F1), the others by F1 beside it."""
    ours, *others = scores
    table = Table(title=f"How good: {ours} and the readers alone" if others else f"How good: {ours}")
    table.add_column("field")
    for head in ("true", "found", "precision", "recall", "F1"):
        table.add_column(head, justify="right")
    for name in others:
        table.add_column(f"F1 {name}", justify="right")
    for name, tally in scores[ours].fields.items():
        rivals = [scores[other].fields.get(name, Tally()) for other in others]
        # A reader alone finds no names or terms: a dash says so, where 0 would seem a defeat.
        beside = [_share(rival.f1 if rival.found else None) for rival in rivals]
        table.add_row(
            name,
            str(tally.true),
            str(tally.found),
            *map(_share, (tally.precision, tally.recall, tally.f1)),
            *beside,
        )
    blank = ("", "", "", "")
    table.add_section()
    for label, attribute in (
        ("character error rate", "error_rate"),
        ("the same, fewest edits", "least_error_rate"),
        ("calibration error of prices", "calibration"),
    ):
        table.add_row(label, *blank, *(_share(getattr(score, attribute)) for score in scores.values()))
    return table


def curve_table(score: Score) -> Table:
    """Build the reliability curve: of the prices given this confidence, how many are right."""
    table = Table(title="Reliability of price confidence")
    for head in ("confidence", "prices", "mean confidence", "share right"):
        table.add_column(head, justify="right")
    for one in score.curve:
        table.add_row(f"{one.low:.1f} to {one.high:.1f}", str(one.facts), f"{one.confidence:.3f}", f"{one.right:.3f}")
    return table


def cause_table(misses: tuple[Miss, ...]) -> Table:
    """Build the table of what became of every price, by typographic form."""
    table = Table(title="What became of every price, by typographic form")
    table.add_column("form")
    for cause in CAUSES:
        table.add_column(cause, justify="right")
    rows = table_of(misses)
    for form, counts in rows.items():
        table.add_row(form, *(str(counts[cause] or "") for cause in CAUSES))
    total = sum(rows.values(), Counter())
    table.add_section()
    table.add_row("all", *(str(total[cause] or "") for cause in CAUSES))
    return table


def miss_lines(misses: tuple[Miss, ...]) -> list[str]:
    """List every miss as one line: file, cause, form, printed and found text, place."""
    lines = []
    for miss in misses:
        if miss.cause == "right":
            continue
        place = f" at {miss.box.x},{miss.box.y},{miss.box.w},{miss.box.h}" if miss.box else ""
        item = f" | {miss.item!r} : {miss.item_found!r}" if miss.cause == "wrong item" else ""
        lines.append(f"{miss.file}: {miss.cause}: {miss.form} {miss.printed!r} read {miss.found!r}{place}{item}")
    return lines
