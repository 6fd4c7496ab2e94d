"""What of a course is left to be filled once some of it hangs.

Where a course came out at another height than planned, what hangs may reach a little less far than the course
asks under a slope, or a little farther. What is left beside it and too short for any piece cannot be helped.
"""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

from plankwright.layout.plan import PlannedPiece
from plankwright.layout.reading import uncovered
from plankwright.layout.runs import Run
from plankwright.layout.strips import Strips
from plankwright.measure import Nm

Stretch = tuple[Nm, Nm]


def left_to_fill(
    strips: Strips,
    strip: tuple[Nm, Nm],
    pieces: Sequence[PlannedPiece],
    hanging: Collection[PlannedPiece],
) -> tuple[Stretch, ...]:
    """Give the stretches of a course that nothing covers and that something could.

    Parameters
    ----------
    strips, strip
        The surface, and where the course lies on it. [nm]
    pieces
        The pieces of the course.
    hanging
        Those among them that hang already.
    """
    return uncovered(runs_to_fill(strips, strip, [piece for piece in pieces if piece in hanging]), pieces)


def runs_to_fill(strips: Strips, strip: tuple[Nm, Nm], hung: Sequence[PlannedPiece]) -> tuple[Run, ...]:
    """Give the runs of a course without the stretches that no piece fits into beside what hangs.

    Parameters
    ----------
    strips, strip
        The surface, and where the course lies on it. [nm]
    hung
        What hangs of the course.
    """
    runs = strips.runs(*strip)
    return tuple(part for run in runs for part in _parts(strips, run, hung)) if hung else runs


def within(piece: PlannedPiece, run: Run) -> PlannedPiece | None:
    """Give what of a piece lies in a run, if anything does."""
    start, end = max(piece.start, run.start), min(piece.end, run.end)
    if start >= end:
        return None
    along = piece.stick.along_from + start - piece.start
    return replace(
        piece,
        stick=replace(piece.stick, along_from=along, along_to=along + end - start),
        start=start,
        end=end,
    )


def _parts(strips: Strips, run: Run, hung: Sequence[PlannedPiece]) -> Iterator[Run]:
    inside = [part for piece in hung if (part := within(piece, run)) is not None]
    shortest = strips.rules.shortest_piece_nm
    beside = {edge for piece in inside for edge in (piece.start, piece.end)}
    lost = [
        (start, end)
        for start, end in uncovered((run,), inside)
        if end - start < shortest and {start, end} & beside
    ]
    at = run.start
    for start, end in lost:
        if at < start:
            yield _stretch(run, at, start)
        at = end
    if not lost:
        yield run
    elif at < run.end:
        yield _stretch(run, at, run.end)


def _stretch(run: Run, start: Nm, end: Nm) -> Run:
    return replace(
        run,
        start=start,
        end=end,
        joints=tuple(joint for joint in run.joints if start < joint.at < end),
        nails=tuple(nail for nail in run.nails if start < nail < end),
    )
