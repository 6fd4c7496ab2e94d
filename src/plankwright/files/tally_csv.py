"""A tally written as CSV, so that it can be read as that of another job."""

import csv
import io
from collections.abc import Iterable, Iterator
from decimal import Decimal

from plankwright.files.flaws import goes_on_like_a_place
from plankwright.files.formulas import harmless
from plankwright.measure import Nm, TapeStyle, round_down, round_up, write_exact, write_length
from plankwright.model import Board, EdgeKind, Flaw, Severity, Treatment

HEADINGS = (
    "id",
    "lot",
    "species",
    "length",
    "width",
    "width other end",
    "thickness",
    "edge",
    "tongue",
    "flaws",
    "tone",
    "note",
    "moisture",
    "nails",
    "treatment",
)


def tally_csv(boards: Iterable[Board], tape: TapeStyle) -> str:
    """Write boards as a tally.

    Parameters
    ----------
    boards
        The boards.
    tape
        How lengths are written; lengths and widths are rounded down to its finest mark, flaws out to it.

    Returns
    -------
    str
        CSV with a row of headings.
    """
    return rows_csv(HEADINGS, (_row(board, tape) for board in boards))


def rows_csv(headings: Iterable[str], rows: Iterable[Iterable[str]]) -> str:
    """Write rows below headings as CSV, with no cell that a spreadsheet would take for a formula."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(headings)
    writer.writerows(map(harmless, row) for row in rows)
    return text.getvalue()


def _row(board: Board, tape: TapeStyle) -> tuple[str, ...]:
    return (
        board.id,
        board.lot,
        board.species,
        _down(board.length_nm, tape),
        _down(board.width_start_nm, tape),
        _down(board.width_end_nm, tape) if board.tapered else "",
        write_exact(board.thickness_nm, tape),
        board.profile.kind.value,
        "" if board.profile.kind is EdgeKind.SQUARE else write_exact(board.profile.reach_nm, tape),
        "; ".join(_flaw(flaw, board, tape) for flaw in own_flaws(board)),
        board.tone,
        board.note,
        moisture_text(board),
        "" if board.nails is None else board.nails.value,
        "" if board.treatment is Treatment.NONE and not board.untreated else board.treatment.value,
    )


def moisture_text(board: Board) -> str:
    """Write what a meter showed to its last figure; empty when nobody measured."""
    return "" if board.moisture_pct is None else f"{Decimal(str(board.moisture_pct)).normalize():f}"


def own_flaws(board: Board) -> Iterator[Flaw]:
    """Give the flaws of a board to be written down: that treated wood is lost goes without saying."""
    said = board.treatment is Treatment.NONE
    for flaw in board.flaws:
        whole = flaw.severity is Severity.LOST and (flaw.start_nm, flaw.end_nm) == (0, board.length_nm)
        if said or not whole:
            yield flaw
        else:
            said = True


def _flaw(flaw: Flaw, board: Board, tape: TapeStyle) -> str:
    """Write a flaw so that it reads back no smaller."""
    step = tape.step_nm
    last = round_down(board.length_nm, step)
    start = min(round_down(flaw.start_nm, step), last - step)
    end = min(round_up(flaw.end_nm, step), last)
    return flaw_text(flaw, write_length(start, tape), write_length(end, tape))


def flaw_text(flaw: Flaw, start: str, end: str) -> str:
    """Write a flaw as a tally has it, its ends as they are given."""
    how_bad = f" {flaw.severity} {flaw.face}" if flaw.face else f" {flaw.severity}"
    what = "" if flaw.what == flaw.severity else f" {flaw.what}"
    told = f"{how_bad}{what}" if goes_on_like_a_place(flaw.what) else f"{what}{how_bad}"
    return f"{start} to {end}{told}"


def _down(nm: Nm, tape: TapeStyle) -> str:
    return write_length(round_down(nm, tape.step_nm), tape)
