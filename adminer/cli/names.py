"""`adminer names`: names found that the file does not know yet; accept, merge, split or reject them."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer
from rich.table import Table
from typer.core import TyperGroup

from adminer.cli.place import Folder, FolderOption, place_of
from adminer.engine.folder import open_folder
from adminer.errors import UsageError
from adminer.names.authority import UsedBy, load_authorities
from adminer.names.editing import accept_line, accept_maker, merge_into_line, reject_name, split_from_line
from adminer.names.proposals import NameSighting, Proposal, propose, read_rejected
from adminer.records import Box
from adminer.store.output import wide_console
from adminer.store.queries import open_readonly

_USERS: dict[str, UsedBy] = {
    "maker": "maker",
    "decal_supplier": "decal_supplier",
    "retailer": "retailer",
    "collectors": "collectors",
}
_AFTER = "Run adminer digitise again: the offers are linked anew, no scan is read again."


class _FolderFirst(TyperGroup):
    """Take the folder as the first word too, where that is none of the acts."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        if args and args[0] not in self.commands and Path(args[0]).is_dir():
            args = ["--folder", *args]
        return super().parse_args(ctx, args)


def register(app: typer.Typer) -> None:
    """Add the command with its acts."""
    names = typer.Typer(cls=_FolderFirst, invoke_without_command=True, no_args_is_help=False)
    names.callback(help="List the names found that no authority file knows; accept, merge, split or reject them.")(
        listing
    )
    names.command("accept")(accept)
    names.command("merge")(merge)
    names.command("split")(split)
    names.command("reject")(reject)
    app.add_typer(names, name="names")


def listing(
    ctx: typer.Context,
    option: FolderOption = None,
    everything: Annotated[bool, typer.Option("--all", help="Show every sighting, not only how many.")] = False,
) -> None:
    """List the names proposed as new lines and makers, the surest first, each with where it was seen."""
    if ctx.invoked_subcommand is not None:
        return
    proposals = proposals_of(place_of(None, option))
    if not proposals:
        typer.echo("No name is waiting: all that was found is known, rejected, or too doubtful.")
        return
    table = Table("name", "as", "score", "adverts", "spelled", "near", "first seen", box=None, pad_edge=False)
    for found in proposals:
        table.add_row(
            found.name,
            found.kind,
            f"{found.score:.2f}",
            str(len({s.advert_id for s in found.sightings})),
            ", ".join(found.spellings),
            ", ".join(found.near),
            f"{found.sightings[0].advert_id}: {found.sightings[0].why}",
        )
        if everything:
            for seen in found.sightings:
                table.add_row("", "", f"{seen.score:.2f}", "", seen.text, "", f"{seen.advert_id} @ {_place(seen.box)}")
    wide_console().print(table)


def accept(
    name: Annotated[str, typer.Argument(help="The name, as it shall be written.")],
    folder: Folder = None,
    option: FolderOption = None,
    maker: Annotated[str | None, typer.Option(help="Id of the maker.")] = None,
    remark: Annotated[str | None, typer.Option(help="A remark kept with the entry.")] = None,
    as_maker: Annotated[bool, typer.Option("--as-maker", help="It is a maker, not a line.")] = False,
) -> None:
    """Add a name to names/lines.toml as a new line, or to names/makers.toml as a new maker."""
    if as_maker and maker is not None:
        raise UsageError("a maker has no maker", remedy="give --as-maker or --maker, not both")
    names = open_folder(place_of(folder, option)).names
    if as_maker:
        typer.echo(f"{name} is now the maker {accept_maker(names, name, source=remark)}. {_AFTER}")
        return
    line_id = accept_line(names, name, maker=maker, source=remark)
    typer.echo(f"{name} is now the line {line_id}. {_AFTER}")


def merge(
    name: Annotated[str, typer.Argument(help="The other name.")],
    line: Annotated[str, typer.Argument(help="Id of the line it belongs to.")],
    folder: Folder = None,
    option: FolderOption = None,
    used_by: Annotated[str | None, typer.Option(help="maker, decal_supplier, retailer or collectors.")] = None,
    used_by_id: Annotated[str | None, typer.Option(help="Id of the maker or retailer that used it.")] = None,
    source: Annotated[str | None, typer.Option(help="Where that is written.")] = None,
) -> None:
    """Add a name to a line as one more name it goes by."""
    if used_by is not None and used_by not in _USERS:
        raise UsageError(f"nobody is called {used_by!r}", remedy=f"give one of {', '.join(_USERS)}")
    user = _USERS[used_by] if used_by else None
    merge_into_line(
        open_folder(place_of(folder, option)).names, name, line, used_by=user, used_by_id=used_by_id, source=source
    )
    typer.echo(f"{name} is now a name of {line}. {_AFTER}")


def split(
    line: Annotated[str, typer.Argument(help="Id of the line.")],
    name: Annotated[str, typer.Argument(help="The name to take away from it.")],
    folder: Folder = None,
    option: FolderOption = None,
) -> None:
    """Take a name away from a line and make it a line of its own."""
    line_id = split_from_line(open_folder(place_of(folder, option)).names, line, name)
    typer.echo(f"{name} is now the line {line_id}. {_AFTER}")


def reject(
    name: Annotated[str, typer.Argument(help="The name that is no line.")],
    folder: Folder = None,
    option: FolderOption = None,
) -> None:
    """Note a name as no line, so that it is not proposed again."""
    reject_name(open_folder(place_of(folder, option)).names, name, on=date.today())
    typer.echo(f"{name} will not be proposed again.")


def proposals_of(folder: Path) -> tuple[Proposal, ...]:
    """Return the proposals of a digitised folder; FolderError where it has no database yet."""
    opened = open_folder(folder)
    with open_readonly(opened.existing_database()) as connection:
        rows = connection.execute(
            "SELECT advert_id, text, x, y, w, h, score, why, kind FROM proposed_names ORDER BY advert_id, text, x, y"
        ).fetchall()
    sightings = [
        NameSighting(a, text, Box(x, y, w, h), score, why, kind) for a, text, x, y, w, h, score, why, kind in rows
    ]
    return propose(sightings, load_authorities(opened.names), read_rejected(opened.names))


def _place(box: Box) -> str:
    return f"{box.x},{box.y},{box.w},{box.h}"
