"""Say in plain words what was marked, and how far a job has come."""

from collections.abc import Iterator

from plankwright.measure import TapeStyle, write_inches, write_length
from plankwright.model import Job, Layout, Mark, MarkKind, Part, Standing, Work
from plankwright.workshop.wording import capital, counted, listed, number

_HAPPENED = {
    MarkKind.CUT: "Cut",
    MarkKind.HUNG: "Hung",
    MarkKind.BROKE: "Broke",
    MarkKind.MISCUT: "Cut wrong",
    MarkKind.DOWN: "Taken down",
    MarkKind.LOST: "Lost",
}


def tell_mark(mark: Mark, tape: TapeStyle) -> tuple[str, ...]:
    """Say what a mark tells.

    Parameters
    ----------
    mark
        The mark.
    tape
        How lengths are written.

    Returns
    -------
    tuple of str
        What happened, where courses hang now, and what is left of the boards that were sawn.
    """
    return (
        f"{_HAPPENED[mark.kind]}: {', '.join(mark.what.split())}.",
        *(
            f"{row.surface_id}: course {row.course.number} ends {write_length(row.course.to_nm, tape)} "
            "from the start side."
            for row in mark.hung
        ),
        *(
            f"Left of piece {cut.piece.label}: {_size(cut.part, tape)}."
            for cut in mark.cut
            if mark.kind is MarkKind.MISCUT
        ),
        *(f"Left of board {sawn.board_id}: {_tell_parts(sawn.left, tape)}." for sawn in mark.boards),
    )


def tell_work(job: Job, layout: Layout, work: Work) -> tuple[str, ...]:
    """Say how far a job has come.

    Parameters
    ----------
    job, layout
        The job, and the layout that it is worked by.
    work
        What was marked.

    Returns
    -------
    tuple of str
        Surface by surface what hangs, then what is in hand, what is lost and what was found.
    """
    standing = work.standing
    if not standing.begun:
        return ("Nothing is marked yet: nothing is cut and nothing hangs.",)
    return (
        *(_tell_surface(layout, standing, surface.id) for surface in job.surfaces),
        *_tell_in_hand(standing),
        *((f"Lost: {_boards(standing.lost)}.",) if standing.lost else ()),
        *_tell_found(job, work),
    )


def found_since(job: Job, work: Work) -> tuple[str, ...]:
    """Give the boards of the tally that were not in it when work began."""
    before = set(work.boards)
    return tuple(board.id for board in job.boards if before and board.id not in before)


def _tell_surface(layout: Layout, standing: Standing, surface_id: str) -> str:
    pieces = sum(len(laid.pieces) for laid in layout.surfaces if laid.surface_id == surface_id)
    hanging = len(standing.hung_labels(surface_id))
    courses = standing.hung_on(surface_id)
    which = f", in {_courses([course.number for course in courses])}" if courses else ""
    verb = "hang" if hanging > 1 else "hangs"
    return (
        f"{surface_id}: {number(hanging) if hanging else 'none'} of {counted(pieces, 'piece')} {verb}{which}."
    )


def _tell_in_hand(standing: Standing) -> Iterator[str]:
    labels = [cut.piece.label for cut in standing.cut]
    if len(labels) == 1:
        yield f"One piece is cut and does not hang: {labels[0]}."
    elif labels:
        yield f"{capital(counted(len(labels), 'piece'))} are cut and do not hang: {listed(labels)}."


def _tell_found(job: Job, work: Work) -> Iterator[str]:
    found = found_since(job, work)
    if found:
        yield f"Found since work began: {_boards(found)}."


def _boards(names: tuple[str, ...]) -> str:
    return f"{'board' if len(names) == 1 else 'boards'} {listed(names)}"


def _courses(numbers: list[int]) -> str:
    """Say which courses, those in a row as from-to."""
    rows: list[list[int]] = []
    for each in sorted(numbers):
        if rows and each == rows[-1][-1] + 1:
            rows[-1].append(each)
        else:
            rows.append([each])
    told: list[str] = []
    for row in rows:
        told += [f"{row[0]} to {row[-1]}"] if len(row) > 2 else map(str, row)  # noqa: PLR2004 - "1 and 2"
    return f"{'course' if len(numbers) == 1 else 'courses'} {listed(told)}"


def _tell_parts(parts: tuple[Part, ...], tape: TapeStyle) -> str:
    return listed([_size(part, tape) for part in parts]) if parts else "nothing of use"


def _size(part: Part, tape: TapeStyle) -> str:
    return f"{write_length(part.length_nm, tape)} by {write_inches(part.width_nm, tape)}"
