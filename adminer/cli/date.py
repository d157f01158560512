"""`adminer date`: when an advert appeared, as a range with its probability and reasons."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer
from rich.console import Console

from adminer.cli.check_dates import check
from adminer.cli.place import FolderOption, FolderWord, folder_and_name
from adminer.dating.estimate import NO_APPRAISAL, DateEstimate
from adminer.dating.personal import Added, Linked, Struck, append_entry
from adminer.engine.folder import ClippingsFolder
from adminer.errors import UsageError, machine_error
from adminer.store.dating_answers import evidence_table, fresh_estimates, list_estimates
from adminer.store.output import as_table, wide_console, write_answer
from adminer.store.plain import clean
from adminer.store.queries import open_readonly


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("date")(date)


def date(
    folder: FolderWord = None,
    what: Annotated[
        str | None, typer.Argument(help="A scan's file name, a clipping id or an advert id; none lists the estimates.")
    ] = None,
    every: Annotated[
        bool, typer.Option("--all", help="List dated adverts too, not only those without a date.")
    ] = False,
    kind: Annotated[str, typer.Option("--format", help="table, csv, json, parquet or markdown.")] = "table",
    out: Annotated[Path | None, typer.Option(help="A file to write the list or the evidence to.")] = None,
    picture: Annotated[Path | None, typer.Option(help="Draw the posterior into this file (.png or .svg).")] = None,
    crops: Annotated[
        Path | None, typer.Option(help="Write the crop of each piece of evidence into this folder.")
    ] = None,
    add: Annotated[str | None, typer.Option(help="Add evidence: the dates it gives, in EDTF.")] = None,
    strike: Annotated[str | None, typer.Option(help="Strike out evidence of this kind.")] = None,
    text: Annotated[str, typer.Option(help="With --strike: only evidence whose text has this in it.")] = "",
    link: Annotated[
        str | None, typer.Option(help="Another scan or advert of the same issue, as the reverse of this clipping.")
    ] = None,
    reason: Annotated[str, typer.Option(help="Why you add, strike out or link.")] = "",
    trust: Annotated[float, typer.Option(help="With --add: the chance that it holds.", min=0.01, max=0.99)] = 0.9,
    truth: Annotated[
        Path | None,
        typer.Option("--check", help="A truth.jsonl: hide the dates and count how often the sets hold them."),
    ] = None,
    option: FolderOption = None,
) -> None:
    """Date adverts: the 50 % and 90 % sets of months, EDTF, and the evidence ranked by how far it moved the answer."""
    opened, what = folder_and_name(folder, what, option)
    database = opened.existing_database()
    if truth is not None:
        check(opened, truth)
        return
    if what is None:
        if picture or crops or add or strike or link:
            raise UsageError("which advert is meant?", remedy="name a scan or an advert before the options")
        with open_readonly(database) as connection:
            listed = list_estimates(connection, every=every)
        write_answer(listed, kind, out)
        if listed.num_rows == 0:
            typer.echo("No advert is without a date" + ("." if every else "; --all lists the dated ones."), err=True)
        return
    if add or strike or link:
        _write_evidence(opened, what, add, strike, link, text=text, reason=reason, trust=trust)
    with open_readonly(database) as connection:
        found = fresh_estimates(
            connection, opened.root, what, region=opened.settings.region, years=opened.settings.years
        )
    console = wide_console()
    for number, estimate in enumerate(found):
        if kind == "table" and out is None:
            _tell(console, estimate)
        else:
            write_answer(evidence_table(estimate), kind, _numbered(out, number))
        if picture is not None:
            _draw(estimate, what, _numbered(picture, number) or picture)
        if crops is not None:
            _crop(opened, estimate, crops)
    if kind == "table":
        console.print(NO_APPRAISAL, style="dim", highlight=False)
    if add or strike or link:
        console.print("Written to evidence.toml; the database follows with the next adminer digitise.", highlight=False)


def _write_evidence(
    folder: ClippingsFolder,
    what: str,
    add: str | None,
    strike: str | None,
    link: str | None,
    *,
    text: str,
    reason: str,
    trust: float,
) -> None:
    if not reason:
        raise UsageError("evidence needs a reason", remedy="add --reason 'dated on the back in pencil'")
    meant = _ids_of(folder, what)
    others = _ids_of(folder, link) if link else []
    if strike:
        _check_strike(folder, what, strike, text)
    try:
        for advert in meant:
            if add:
                append_entry(folder.root, Added(advert=advert, dates=add, reason=reason, trust=trust))
            if strike:
                append_entry(folder.root, Struck(advert=advert, kind=strike, text=text, reason=reason))
        if others:
            append_entry(folder.root, Linked(adverts=(*meant, *others), reason=reason))
    except OSError as fault:
        raise machine_error(fault, folder.root) from None


def _check_strike(folder: ClippingsFolder, what: str, kind: str, text: str) -> None:
    settings = folder.settings
    with open_readonly(folder.existing_database()) as connection:
        found = fresh_estimates(connection, folder.root, what, region=settings.region, years=settings.years)
    clues = [weighed.clue for estimate in found for weighed in estimate.evidence]
    if not any(clue.kind == kind for clue in clues):
        raise UsageError(
            f"there is no evidence called '{kind}' for {what}",
            remedy=f"strike one of: {', '.join(sorted({clue.kind for clue in clues})) or 'none was found'}",
        )
    if not any(clue.kind == kind and text.lower() in clue.text.lower() for clue in clues):
        raise UsageError(f"no evidence called '{kind}' has '{text}' in it", remedy="leave --text out, or shorten it")


def _months(count: int) -> str:
    return f"{count} month{'' if count == 1 else 's'}"


def _ids_of(folder: ClippingsFolder, what: str) -> list[str]:
    with open_readonly(folder.existing_database()) as connection:
        meant = [
            row[0]
            for row in connection.execute(
                "SELECT DISTINCT CASE WHEN a.advert_id = $what THEN a.advert_id ELSE a.clipping_id END "
                "FROM adverts a JOIN clippings c USING (clipping_id) "
                "WHERE $what IN (a.advert_id, a.clipping_id, c.file)",
                {"what": what},
            ).fetchall()
        ]
    if not meant:
        raise UsageError(
            f"there is no clipping or advert '{what}'", remedy="take a file name, or an id of adminer date"
        )
    return meant


def _tell(console: Console, estimate: DateEstimate) -> None:
    console.print(f"Advert {estimate.advert_id}", style="bold", highlight=False)
    for share, found in (("90 %", estimate.ninety), ("50 %", estimate.half)):
        first, last = found.bounds
        console.print(
            f"  {share} set: {found.edtf}  ({first} to {last}, {_months(found.months)}, holds {found.mass:.0%})",
            highlight=False,
            markup=False,
        )
    console.print(f"  median {estimate.median:%Y-%m}; likeliest month {estimate.peak:.0%}", highlight=False)
    console.print(f"  {clean(estimate.note)}", highlight=False, markup=False)
    if estimate.evidence:
        console.print(as_table(evidence_table(estimate)))


def _numbered(path: Path | None, number: int) -> Path | None:
    return path if path is None or number == 0 else path.with_stem(f"{path.stem}-{number + 1}")


def _draw(estimate: DateEstimate, what: str, target: Path) -> None:
    from adminer.publish.charts_dating import posterior_of  # noqa: PLC0415 - drawing takes long to load
    from adminer.publish.look import write_chart  # noqa: PLC0415

    try:
        write_chart(posterior_of(estimate, f"When did {what} appear?"), target)
    except OSError as fault:
        raise machine_error(fault, target) from None
    typer.echo(f"Picture: {target}")


def _crop(folder: ClippingsFolder, estimate: DateEstimate, target: Path) -> None:
    from adminer.engine.show import describe, write_crop  # noqa: PLC0415 - reads pictures

    shown = describe(folder.existing_database(), estimate.advert_id)
    try:
        target.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise machine_error(fault, target) from None
    for number, weighed in enumerate(estimate.evidence, start=1):
        if weighed.clue.box is not None:
            piece = replace(shown, box=weighed.clue.box, marks=())
            typer.echo(f"Evidence {number}: {write_crop(folder, piece, target / f'{estimate.advert_id}-{number}.png')}")
