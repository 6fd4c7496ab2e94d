"""The commands in the order of work, each loaded only when it is called."""

from importlib import import_module

import click

SUMMARIES = {
    "app": "Open the app: the whole job on this computer and on phones.",
    "start": "Make a job folder with commented templates.",
    "tally": "Read a tally and judge it: totals, recovery, doubtful rows.",
    "hazards": "Say what can hurt on this job, and where that is from.",
    "enough": "Say whether the pile is enough, and what would close it.",
    "lay": "Lay out the boards; write map, papers, cut list and layout.",
    "moisture": "Say whether the boards are dry enough, and how far they move.",
    "prepare": "List what is done to each board before it is cut.",
    "nails": "Say what each piece is nailed with, and how deep that goes.",
    "edges": "Say what boxes, openings and trim ask for.",
    "buy": "List what has to be bought for a layout.",
    "lumber": "Measure the pile: board feet, weight, worth, hours, carbon.",
    "map": "Draw the map of each surface from a layout made earlier.",
    "cuts": "List what is done at the saw, board by board.",
    "hanging": "List what hangs where and how, course by course.",
    "sheets": "Print the pack of papers from a layout made earlier.",
    "risk": "Say what it survives when boards break, and what to cut first.",
    "mark": "Mark what was cut, hung, broke or is lost; take marks back.",
    "now": "Say what now: lay out what is left, with little change.",
    "left": "Write what is left as a tally for the next surface.",
    "check": "List what is wrong with a layout, whoever made it.",
    "backup": "Copy the app's file of jobs.",
    "restore": "Put a backup in place of the app's file of jobs.",
}
"""Told by `plankwright --help` without loading the commands, a search and a geometry library with them."""


class CommandsOnDemand(click.Group):
    """A group that knows its commands by name and loads one when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002 - the library's signature
        """Give the names in the order of work."""
        return list(SUMMARIES)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002 - as above
        """Load a command; nothing when there is none of that name."""
        if cmd_name not in SUMMARIES:
            return None
        command = import_module(f"plankwright.cli.{cmd_name}_cmd").command
        return command if isinstance(command, click.Command) else None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002 - as above
        """Write the list of commands for the help page."""
        with formatter.section("Commands"):
            formatter.write_dl(list(SUMMARIES.items()))


@click.group(
    cls=CommandsOnDemand,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    invoke_without_command=True,
)
@click.version_option(package_name="plankwright", message="%(prog)s %(version)s")
@click.pass_context
def plankwright(context: click.Context) -> object:
    """Lay out salvaged boards on a wall, a ceiling or a floor: is the pile enough, which board goes where,
    and what to cut.

    On screen, with a phone beside the pile:

    \b
      plankwright                  opens the app

    With files and a terminal, from a pile to a cut list:

    \b
      plankwright start porch      a folder with templates; fill in
                                   porch/job.toml and porch/tally.csv
      plankwright tally porch      what the pile holds, what looks odd
      plankwright enough porch     is it enough, and what is missing
      plankwright lay porch        the layout, its map and its papers
      plankwright check porch      is the layout right?
      plankwright risk porch       what to cut first, as boards break

    What the trade knows of it, each figure with its source:

    \b
      plankwright hazards porch    what can hurt, before you pull or cut
      plankwright moisture porch   are the boards dry enough
      plankwright prepare porch    what is done to each board first
      plankwright nails porch      which nails, how deep, what they hold
      plankwright edges porch      boxes, openings and trim
      plankwright buy porch        what has to be bought
      plankwright lumber porch     board feet, weight, worth, hours

    While it is worked on, until all hangs:

    \b
      plankwright mark porch hung 1     what was cut, hung, broke, is lost
      plankwright now porch             what is left, laid out anew
      plankwright left porch            offcuts, for the next surface

    `plankwright COMMAND --help` shows each by example.

    \b
    Exit codes:
      0    done, and there is enough
      1    not enough wood, or a layout with faults: a result, no error
      2    bad input: every problem is told with its place and its mend
      3    file trouble: missing, unreadable or not to be written
      70   our fault: a report is left in a file
      130  stopped by you before there was any result
    """  # noqa: D205, D301 - the library shows this text as it stands, and \b keeps its lines
    return None if context.invoked_subcommand else _open_app(context)


def _open_app(context: click.Context) -> object:
    from plankwright.cli.app_cmd import command  # noqa: PLC0415 - loaded when called, as all are

    with command.make_context("app", [], parent=context) as own:
        return command.invoke(own)
