"""The cut list as CSV, one row a step, for those who keep theirs in a spreadsheet."""

import csv
import io
from collections.abc import Iterator

from plankwright.files.formulas import harmless
from plankwright.files.workbook import number_or_text, workbook
from plankwright.layout.at_saw import at_saw
from plankwright.layout.sawing import piece_name, saw_boards
from plankwright.measure import Nm, write_inches
from plankwright.model import NOTHING_DONE, BoardCuts, Cut, CutKind, Direction, Job, Layout, Offcut, Standing

HEADINGS = (
    "board",
    "lot",
    "step",
    "do",
    "mark",
    "other mark",
    "from",
    "to",
    "degrees",
    "frees",
    "length",
    "width",
    "piece",
    "note",
)
KEEP = "keep offcut"


def cut_list_csv(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> str:
    """Write the cut list of a layout as CSV.

    Parameters
    ----------
    job, layout
        The job and its layout.
    standing
        How far the job has come: only what is still to be sawn is told.

    Returns
    -------
    str
        By RFC 4180, with no cell that a spreadsheet would take for a formula. Marks are rounded to the tape.
    """
    here = at_saw(job, layout, standing)
    return cuts_csv(here.job, here.layout, saw_boards(here.job, here.layout))


def cut_list_xlsx(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> bytes:
    """Write the cut list of a layout as a workbook: what `cut_list_csv` writes, steps and angles as numbers.

    Parameters
    ----------
    job, layout, standing
        As in `cut_list_csv`.
    """
    here = at_saw(job, layout, standing)
    rows = _Rows(here.job, here.layout).rows(saw_boards(here.job, here.layout))
    numbers = [HEADINGS.index(heading) for heading in ("step", "degrees")]
    return workbook(
        "cut list",
        HEADINGS,
        ([number_or_text(cell) if at in numbers else cell for at, cell in enumerate(row)] for row in rows),
    )


def cuts_csv(job: Job, layout: Layout, board_cuts: tuple[BoardCuts, ...]) -> str:
    """Write cuts that are already known as CSV, as `cut_list_csv` does.

    Parameters
    ----------
    job, layout
        The job and its layout.
    board_cuts
        What is done to each board.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADINGS)
    writer.writerows([harmless(cell) for cell in row] for row in _Rows(job, layout).rows(board_cuts))
    return text.getvalue()


class _Rows:
    """Writes rows; holds what they all need."""

    def __init__(self, job: Job, layout: Layout) -> None:
        self.job = job
        self.sizes: dict[str, tuple[Nm, Nm]] = {}
        for part in layout.surfaces:
            level = job.surface(part.surface_id).courses_run is Direction.HORIZONTAL
            for piece in part.pieces:
                size = piece.place.width_nm, piece.place.height_nm
                self.sizes[piece_name(job, part.surface_id, piece)] = size if level else size[::-1]

    def rows(self, board_cuts: tuple[BoardCuts, ...]) -> Iterator[tuple[str, ...]]:
        for board in board_cuts:
            head = board.board_id, self.job.board(board.board_id).lot
            for step, cut in enumerate(board.cuts, start=1):
                yield (*head, str(step), *self.cut(cut))
            for step, offcut in enumerate(board.offcuts, start=len(board.cuts) + 1):
                yield (*head, str(step), *self.offcut(offcut))

    def cut(self, cut: Cut) -> tuple[str, ...]:
        lengths, widths = (
            " + ".join(self.mark(self.sizes[name][side]) for name in cut.yields) for side in (0, 1)
        )
        return (
            cut.kind.value,
            self.mark(cut.at_nm),
            self.mark(cut.other_at_nm if cut.other_at_nm != cut.at_nm else None),
            self.mark(cut.from_nm),
            self.mark(cut.to_nm),
            f"{cut.angle_mdeg / 1000:.1f}" if cut.kind is CutKind.ANGLED else "",
            " + ".join(cut.yields),
            lengths,
            widths,
            cut.label,
            self.notch(cut) or cut.what,
        )

    def notch(self, cut: Cut) -> str:
        if cut.notch is None:
            return ""
        place = cut.notch
        size = f"{self.mark(place.width_nm)} wide, {self.mark(place.height_nm)} high"
        where = f"{self.mark(place.left)} from its left end, {self.mark(place.bottom)} from its lower edge"
        return f"{cut.what}: {size}, {where}, as it hangs"

    def offcut(self, offcut: Offcut) -> tuple[str, ...]:
        return (
            KEEP,
            self.mark(offcut.along_from_nm),
            self.mark(offcut.along_to_nm),
            self.mark(offcut.across_from_nm),
            self.mark(offcut.across_to_nm),
            "",
            "",
            self.mark(offcut.length_nm),
            self.mark(offcut.width_nm),
            "",
            "",
        )

    def mark(self, nm: Nm | None) -> str:
        return "" if nm is None else write_inches(nm, self.job.tape)
