"""`adminer desk`: open the page where a person checks, corrects and looks."""

from __future__ import annotations

import os
import socket
import webbrowser
from typing import Annotated

import typer

from adminer.cli.place import Folder, FolderOption, place_of
from adminer.errors import MachineError

LOOPBACK = "127.0.0.1"


def register(app: typer.Typer) -> None:
    """Add the command."""
    app.command("desk")(run)


def run(
    folder: Folder = None,
    port: Annotated[int, typer.Option(min=1, max=65535, help="Where the page answers on this machine.")] = 8737,
    address: Annotated[
        str, typer.Option(help="Another address of this machine, to let a telephone on the same network in.")
    ] = LOOPBACK,
    who: Annotated[str | None, typer.Option(help="Your name, as the journal shall have it.")] = None,
    open_browser: Annotated[bool, typer.Option("--open/--no-open", help="Open the browser at the page.")] = True,
    option: FolderOption = None,
) -> None:
    """Check, correct, ask and look on a page of this machine. Ends with Ctrl-C; everything said is kept."""
    import uvicorn  # noqa: PLC0415 - only this command needs a server

    from adminer.desk.app import make_app  # noqa: PLC0415
    from adminer.desk.opening import open_desk  # noqa: PLC0415
    from adminer.engine.folder import create_folder  # noqa: PLC0415

    root = place_of(folder, option)
    if not root.exists() or (root.is_dir() and not any(root.iterdir())):
        create_folder(root)
        typer.echo(f"{root} is a new clippings folder.")
    desk = open_desk(root, port=port, hosts=(address,), who=who or os.environ.get("USER") or "reader")
    try:
        with _listening(address, port) as listening:
            url = f"http://{address}:{port}/open?token={desk.door.token}"
            typer.echo(f"The desk of “{desk.folder.settings.title}” is open at\n  {url}")
            if address != LOOPBACK:
                typer.echo("Others on this network can reach it with that address, and what it sends is not encrypted.")
            typer.echo("Ctrl-C closes it.")
            if open_browser:
                webbrowser.open(url)
            config = uvicorn.Config(
                make_app(desk), log_level="warning", access_log=False, server_header=False, timeout_graceful_shutdown=3
            )
            uvicorn.Server(config).run(sockets=[listening])
    finally:
        desk.reader.close()
        desk.journal.close()


def _listening(address: str, port: int) -> socket.socket:
    listening = socket.socket(socket.AF_INET6 if ":" in address else socket.AF_INET)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((address, port))
        listening.listen()  # so that a browser opened at once waits instead of being refused
    except OSError as error:
        listening.close()
        raise MachineError(
            f"port {port} of {address} cannot be used",
            why=error.strerror,
            remedy="choose another with --port",
        ) from error
    return listening
