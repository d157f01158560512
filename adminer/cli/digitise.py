"""`adminer digitise`: read what is new in a clippings folder and bring its database up to date."""

from __future__ import annotations

from typing import Annotated

import typer

from adminer.cli.place import Folder, FolderOption, place_of
from adminer.engine.digitise import DigitiseSummary, digitise
from adminer.engine.progress import watcher
from adminer.errors import ScanError
from adminer.store.plain import clean

_MOST_LISTED = 40


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("digitise")(run)


def run(
    folder: Folder = None,
    workers: Annotated[
        int | None, typer.Option(min=1, max=256, help="Pages read at the same time; one a core by default.")
    ] = None,
    again: Annotated[bool, typer.Option("--again", help="Read every page afresh.")] = False,
    keep_older: Annotated[
        bool, typer.Option("--keep-older", help="Be content with readings of an earlier version of adminer.")
    ] = False,
    option: FolderOption = None,
) -> None:
    """Read the scans of a folder into its database. What was read before is not read again."""
    summary = digitise(place_of(folder, option), workers=workers, watch=watcher(), again=again, keep_older=keep_older)
    print_summary(summary)
    if summary.unread:
        raise typer.Exit(ScanError.exit_code)


def print_summary(summary: DigitiseSummary) -> None:
    """Print on stdout what a run did."""
    for line in report(summary):
        typer.echo(clean(line))  # the name of a file must not steer the terminal


def report(summary: DigitiseSummary) -> list[str]:
    """Say in sentences what was read, what was not and why, and what the database has."""
    if summary.files == 0:
        return ["There is no scan in the folder scans/ yet. Put some there and run the same command again."]
    lines = [
        f"{summary.files} files, {summary.pages} pages: {summary.read_now} read now, {summary.kept} read before, "
        f"{len(summary.unread)} not readable, in {summary.seconds:.1f} s."
    ]
    if summary.doubles:
        lines.append(f"{summary.doubles} files show a picture that another file shows as well; each is one clipping.")
    if summary.guesses:
        lines.append(
            "How each was read, where no note says (write it in the column 'recipe' of notes.csv to change it):"
        )
        lines += [f"  {file}: {recipe} ({why})" for file, recipe, why in summary.guesses[:_MOST_LISTED]]
        lines += _more(len(summary.guesses))
    if summary.unread:
        lines.append("Not read:")
        for item in summary.unread[:_MOST_LISTED]:
            name = item.file if item.leaf == 1 else f"{item.file} (page {item.leaf})"
            remedy = f" {item.remedy[0].upper()}{item.remedy[1:]}." if item.remedy else ""
            lines.append(f"  {name}: {item.reason}.{remedy}")
        lines += _more(len(summary.unread))
    if summary.problems:
        lines.append("To look at:")
        lines += [f"  {problem}" for problem in summary.problems[:_MOST_LISTED]]
        lines += _more(len(summary.problems))
    counts = summary.counts
    if counts is None:
        lines.append("The database was up to date.")
    else:
        lines.append(
            f"The database has {counts.clippings} clippings, {counts.adverts} adverts, {counts.offers} offers, "
            f"{counts.prices} prices, {counts.words} words, {counts.sightings} sightings of lines."
        )
    return lines


def _more(count: int) -> list[str]:
    return [f"  and {count - _MOST_LISTED} more; adminer status lists them all"] if count > _MOST_LISTED else []
