"""Arguments and options that several commands share, so that they are named and explained alike."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from plankwright.cli.talk import Talk
from plankwright.store.place import usual_store
from plankwright.workshop.paper_size import PaperSize

Command = TypeVar("Command", bound=Callable[..., Any])

OUT = "out"
"""Where a job's results go inside its folder, when nothing else is said."""


def _remember(name: str) -> Callable[[click.Context, click.Parameter, bool], None]:
    """Keep a flag on the run's `Talk`, where the way out finds it too."""

    def keep(context: click.Context, _parameter: click.Parameter, value: bool) -> None:  # noqa: FBT001 - as called
        setattr(context.ensure_object(Talk), name, value)

    return keep


folder_argument = click.argument("folder", type=click.Path(path_type=Path))

layout_argument = click.argument("layout", type=click.Path(path_type=Path), required=False)

_json_option = click.option(
    "--json",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_remember("json"),
    help="Answer in JSON, for a script; docs/json.md describes it.",
)

_quiet_option = click.option(
    "-q",
    "--quiet",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    envvar="PLANKWRIGHT_QUIET",
    show_envvar=True,
    callback=_remember("quiet"),
    help="Only the answer: no progress and no remarks.",
)

out_option = click.option(
    "--out",
    type=click.Path(path_type=Path),
    envvar="PLANKWRIGHT_OUT",
    show_envvar=True,
    help="Folder to write to.  [default: FOLDER/out]",
)

paper_option = click.option(
    "--paper",
    type=click.Choice([size.value for size in PaperSize], case_sensitive=False),
    envvar="PLANKWRIGHT_PAPER",
    show_envvar=True,
    help="Size of the sheets.  [default: letter for inches, a4 for millimetres]",
)


store_option = click.option(
    "--store",
    type=click.Path(path_type=Path),
    envvar="PLANKWRIGHT_STORE",
    show_envvar=True,
    help="The app's file of jobs.  [default: jobs.db in your folder for data of programs]",
)


def store_path(store: Path | None) -> Path:
    """Give the file of jobs: the one asked for, or the usual one."""
    return usual_store() if store is None else store


def talking(command: Command) -> Command:
    """Give a command the options --json and --quiet."""
    return _json_option(_quiet_option(command))


def paper_size(paper: str | None) -> PaperSize | None:
    """Give the size of paper asked for, if one was."""
    return None if paper is None else PaperSize(paper)


def out_folder(folder: Path, out: Path | None) -> Path:
    """Give the folder to write to: the one asked for, or the job's own."""
    return folder / OUT if out is None else out
