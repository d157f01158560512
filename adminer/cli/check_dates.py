"""Judge the dating on a folder whose true dates are known: hide them, date anew, and count what the sets held."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import typer

from adminer.dating.calibration import Calibration, calibrate
from adminer.dating.estimate import estimate_adverts, without_dates
from adminer.engine.folder import ClippingsFolder
from adminer.errors import FolderError, UsageError
from adminer.names.authority import load_authorities
from adminer.store.dating_rows import read_cases, read_context
from adminer.store.queries import open_readonly


def check(folder: ClippingsFolder, truth: Path) -> None:
    """Print how often the sets of months hold the true month, with every date of the folder hidden."""
    days = read_true_days(truth)
    with open_readonly(folder.existing_database()) as connection:
        cases = [without_dates(case) for case in read_cases(connection)]
        files = dict(connection.execute("SELECT clipping_id, file FROM clippings").fetchall())
        # nothing is dated, so neither prices nor runs of the file can date anything
        context = read_context(connection, (), load_authorities(folder.names), region=folder.settings.region)
    known = {c.advert_id: days[files[c.clipping_id]] for c in cases if files[c.clipping_id] in days}
    try:
        found = calibrate(estimate_adverts(cases, context, years=folder.settings.years), known)
    except ValueError as fault:
        raise UsageError(str(fault), file=str(truth), remedy="its rows need 'file' and 'true_date'") from None
    for line in told(found):
        typer.echo(line)


def told(found: Calibration) -> tuple[str, ...]:
    """Return a calibration in lines of text."""
    return (
        f"adverts with hidden dates       {found.adverts}",
        f"90 % sets that hold the truth   {found.held_90:.1%}   (promised: 85 to 95 %)",
        f"50 % sets that hold the truth   {found.held_50:.1%}",
        f"median width of the 90 % sets   {found.median_months_90:.0f} months",
        f"median width of the 50 % sets   {found.median_months_50:.0f} months",
        f"median error of the median      {found.median_error_months:.0f} months",
    )


def read_true_days(truth: Path) -> dict[str, date]:
    """Return the true day by file of a truth.jsonl; FolderError where it cannot be understood."""
    days: dict[str, date] = {}
    try:
        for line in truth.read_text(encoding="utf-8").splitlines():
            row = json.loads(line)
            day = row.get("true_date") or row.get("date_iso_or_null")
            if day:
                days[row["file"]] = date.fromisoformat(day)
    except FileNotFoundError:
        raise FolderError("does not exist", file=str(truth), remedy="name a truth.jsonl") from None
    except (ValueError, KeyError, TypeError, AttributeError) as fault:
        raise FolderError(
            "cannot be understood", file=str(truth), why=str(fault), remedy="write one JSON object a line"
        ) from None
    return days
