"""The size of paper that a person prints on."""

from enum import StrEnum

from plankwright.draw.view import A4, LETTER, Page
from plankwright.measure import System, TapeStyle


class PaperSize(StrEnum):
    """A size of paper, as a person asks for it."""

    LETTER = "letter"
    A4 = "a4"


def usual_size(tape: TapeStyle) -> PaperSize:
    """Give the paper that goes with a tape: US Letter with inches, ISO 216 A4 with millimetres."""
    return PaperSize.A4 if tape.system is System.METRIC else PaperSize.LETTER


def page_of(tape: TapeStyle, size: PaperSize | None) -> Page:
    """Give the page to draw and print on: of the size asked for, or of the one that goes with the tape."""
    return A4 if (size or usual_size(tape)) is PaperSize.A4 else LETTER
