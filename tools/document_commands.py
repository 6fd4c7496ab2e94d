"""Write `docs/commands.md` from what `--help` says, so that page and program never differ.

python tools/document_commands.py           write it anew
python tools/document_commands.py --check   fail when it is not current
"""

import sys
from pathlib import Path

import click

from plankwright.cli.commands import SUMMARIES, plankwright

PAGE = Path(__file__).resolve().parent.parent / "docs" / "commands.md"
WIDTH = 100
HEAD = """# Commands

Written by `tools/document_commands.py` from what `--help` says; change the commands, not this page.

An answer goes to stdout; progress, remarks and errors go to stderr. When stderr is no terminal there is no
progress, and when stdout is no terminal there is no colour. Options that name a variable such as
`PLANKWRIGHT_EFFORT` may be set by it. What `--json` gives is described in [json.md](json.md).
"""


def page() -> str:
    """Give the whole page."""
    whole = plankwright.make_context("plankwright", [], resilient_parsing=True, terminal_width=WIDTH)
    sections = [HEAD, f"```text\n{plankwright.get_help(whole)}\n```\n"]
    for name in SUMMARIES:
        command = plankwright.get_command(whole, name)
        if command is None:
            sys.exit(f"{name} is listed but cannot be loaded")
        context = click.Context(command, info_name=name, parent=whole, terminal_width=WIDTH)
        sections.append(f"## {name}\n\n```text\n{command.get_help(context)}\n```\n")
    return "\n".join(sections)


def main() -> None:
    """Write the page, or compare it with what is there."""
    if "--check" not in sys.argv[1:]:
        PAGE.write_text(page(), encoding="utf-8")
        return
    if not PAGE.exists() or PAGE.read_text(encoding="utf-8") != page():
        sys.exit("docs/commands.md is not what --help says: run 'python tools/document_commands.py'")


if __name__ == "__main__":
    main()
