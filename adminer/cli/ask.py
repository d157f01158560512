"""`adminer ask`: the questions of queries/, each a command with options made from its header."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any

import typer
from rich.table import Table

from adminer.cli.place import Folder, FolderOption, place_of
from adminer.engine.folder import open_folder
from adminer.store.no_rows import why_no_rows
from adminer.store.output import wide_console, write_answer
from adminer.store.plain import clean
from adminer.store.queries import Param, Question, load_questions, run_question

_KEYWORD = inspect.Parameter.KEYWORD_ONLY


def register(app: typer.Typer) -> None:
    """Add the command, with every question as a command below it."""
    asking = typer.Typer(invoke_without_command=True, no_args_is_help=False)
    asking.callback()(listing)
    for name, question in sorted(load_questions().items()):
        asking.command(name, help=_help(question), short_help=question.question)(_command(question))
    app.add_typer(asking, name="ask")


def listing(ctx: typer.Context) -> None:
    """Ask a question of the database; without a name, list the questions."""
    if ctx.invoked_subcommand is not None:
        return
    table = Table(box=None, pad_edge=False, show_header=False)
    for name, question in sorted(load_questions().items()):
        table.add_row(name, question.question)
    console = wide_console()
    console.print(table)
    console.print("\nAsk with: adminer ask NAME FOLDER; the options of one question: adminer ask NAME --help")


def _command(question: Question) -> Callable[..., None]:
    """Make a function whose signature typer turns into options, one for each parameter of the question."""

    def ask(
        folder: Path | None, option: Path | None, kind: str, out: Path | None, raw: bool, **given: str | None
    ) -> None:
        texts = {name: value for name, value in given.items() if value is not None}
        database = open_folder(place_of(folder, option)).existing_database()
        answer = run_question(database, question, texts)
        write_answer(answer, kind, out, raw=raw)
        if answer.num_rows == 0:
            typer.echo(clean(why_no_rows(database, question, texts)), err=True)

    kinds: dict[str, tuple[Any, Any]] = {
        "folder": (Folder, None),
        "option": (FolderOption, None),
        "kind": (Annotated[str, typer.Option("--format", help="table, csv, json, parquet or markdown.")], "table"),
        "out": (Annotated[Path | None, typer.Option(help="A file to write instead.")], None),
        "raw": (
            Annotated[bool, typer.Option("--raw", help="CSV without the apostrophe that stops spreadsheet formulas.")],
            False,
        ),
    }
    kinds |= {
        param.name: (Annotated[str | None, typer.Option(_option(param.name), help=_about(param))], None)
        for param in question.params
    }
    ask.__annotations__ = {name: kind for name, (kind, _default) in kinds.items()}
    parameters = [
        inspect.Parameter(name, _KEYWORD, default=default, annotation=kind) for name, (kind, default) in kinds.items()
    ]
    ask.__signature__ = inspect.Signature(parameters)  # type: ignore[attr-defined] # typer reads options from here
    return ask


def _option(name: str) -> str:
    return "--" + name.replace("_", "-")


def _about(param: Param) -> str:
    kind = {"yes_no": "yes or no", "integer": "whole number"}.get(param.kind, param.kind)
    return f"{param.about} ({kind}; default: {param.default or 'no limit'})"


def _help(question: Question) -> str:
    columns = "\n\n".join(f"{column.name}: {column.about}" for column in question.columns)
    parts = [question.question, question.note or "", "Columns:" if columns else "", columns]
    return "\n\n".join(part for part in parts if part)
