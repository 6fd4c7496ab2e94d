"""The command `plankwright`: it reads what was asked, has the workshop do it, and shows the answer.

Answers go to stdout, everything else to stderr. This is the only room that knows a terminal.
"""

from plankwright.cli.entry import main

__all__ = ["main"]
