"""What keeps work from being done elsewhere."""

from typing import ClassVar

from plankwright.errors import ExitCode, PlankwrightError


class CrewError(PlankwrightError):
    """Nobody does the work: not there, not able to, or gone; the message says which and what to do."""

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT
    default_message: ClassVar[str] = "Nobody was there to do the work."
