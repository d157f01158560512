"""`adminer doctor`: which reader programs, models and libraries are in use."""

from __future__ import annotations

import typer

from adminer.engine.doctor import examine


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("doctor")(doctor)


def doctor() -> None:
    """Say which reader programs, models and libraries are used, and what is missing. Asks no network."""
    report = examine()
    for name, value in report.lines:
        typer.echo(f"{name:24} {value}")
    for trouble in report.troubles:
        typer.echo(f"missing: {trouble}", err=True)
    if report.troubles:
        raise typer.Exit(5)
