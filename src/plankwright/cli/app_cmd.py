"""`plankwright app`, and `plankwright` alone: open the app."""

from pathlib import Path

import click

from plankwright.cli.options import store_option, store_path
from plankwright.cli.outlets import tell
from plankwright.cli.talk import Talk, pass_talk
from plankwright.errors import ExitCode


@click.command("app")
@store_option
@click.option(
    "--port",
    type=click.IntRange(min=1, max=65535),
    envvar="PLANKWRIGHT_PORT",
    show_envvar=True,
    help="Where it listens.  [default: the first free one from 8642 on]",
)
@click.option("--alone", is_flag=True, help="For this computer alone: no phone can join.")
@click.option("--no-browser", is_flag=True, help="Open no browser.")
@pass_talk
def command(talk: Talk, /, store: Path | None, port: int | None, *, alone: bool, no_browser: bool) -> int:
    """Open the app: the whole job on this computer and on phones.

    It runs on this computer, and nothing leaves your network. A phone on the same network joins by scanning
    the code that the page “Phone” shows. Ctrl-C closes it; all that was entered is kept.

    \b
      plankwright                     the same
      plankwright app --alone
      plankwright app --store workshop.db --port 9000
    """  # noqa: D301 - \b keeps the lines of the examples
    from plankwright.web.serving import Opening, open_app  # noqa: PLC0415 - loads the solvers

    opening = Opening(store=store_path(store), port=port, alone=alone, browse=not no_browser)
    open_app(talk.bench, opening, tell)
    return ExitCode.DONE
