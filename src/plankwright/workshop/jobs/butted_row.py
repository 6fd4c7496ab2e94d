"""Whether pieces that butt in sight go together, and with which shims."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace

from plankwright.layout.joints import butt_joints
from plankwright.measure import Nm
from plankwright.model import Course, Job, Piece, SurfaceLayout

Pairs = Sequence[tuple[str, str]]
"""Labels of pieces that butt in sight, in order along their course."""


def pairs_in_sight(job: Job, laid: SurfaceLayout, course: Course) -> Pairs:
    """Give the pieces of a course that butt in sight.

    Parameters
    ----------
    job, laid, course
        The job, the layout of one of its surfaces, and a course of it.
    """
    joints = butt_joints(job, replace(laid, courses=(course,)))
    return [(joint.before, joint.after) for joint in joints if joint.in_sight]


def shims_between(
    job: Job, pieces: Iterable[Piece], pairs: Pairs, hanging: Collection[str]
) -> dict[str, Nm] | None:
    """Give the thinnest shims that let pieces of a course butt in sight.

    Parameters
    ----------
    job
        The job.
    pieces
        Any of the course; what butts only others is not looked at.
    pairs
        Which of the course butt in sight.
    hanging
        Labels of those that hang already, shimmed as they are.

    Returns
    -------
    dict or None
        The shim of each of them by its label [nm]; nothing where they do not go together: their edges are
        milled otherwise, or their faces cannot be levelled.
    """
    by_label = {piece.label: piece for piece in pieces}
    joined = [pair for pair in pairs if set(pair) <= set(by_label) and not set(pair) <= set(hanging)]
    boards = {label: job.board(piece.board_id) for label, piece in by_label.items()}
    if any(boards[one].profile != boards[other].profile for one, other in joined):
        return None
    faces = {
        label: board.thickness_nm + (by_label[label].shim_nm if label in hanging else 0)
        for label, board in boards.items()
    }
    for one, other in (*joined, *((after, before) for before, after in reversed(joined))):
        needed = faces[one] - job.rules.thickness_tolerance_nm
        if needed > faces[other]:
            if other in hanging:
                return None
            faces[other] = needed
    shims = {label: faces[label] - board.thickness_nm for label, board in boards.items()}
    thickest = job.rules.shim_up_to_nm
    too_thick = any(shims[label] > thickest for pair in joined for label in pair if label not in hanging)
    return None if too_thick else shims
