"""Where the courses go that do not hang yet, once those that do came out as they did."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.again.carried import CarriedRow
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.strips import Strips
from plankwright.measure import Nm


@dataclass(frozen=True, slots=True)
class FrameRow:
    """A course with the place that it is to have from now on.

    Parameters
    ----------
    low, high
        Distances of its edges from the start side; of one that hangs as far as the next begins, where that
        is no wider than a gap that counts as none. [nm]
    row
        The course; nothing for one that the layout did not have.
    """

    low: Nm
    high: Nm
    row: CarriedRow | None = None


def frames_for(strips: Strips, rows: Sequence[CarriedRow]) -> list[tuple[FrameRow, ...]]:
    """Give the ways in which the courses can follow what hangs.

    Where a course that hangs came out otherwise than planned, those that follow keep their places if only a
    gap is left that counts as none. Else one of them takes up the difference, and the ones before it are
    shifted; or all are, and the last is ripped to end where it should.

    Parameters
    ----------
    strips
        The surface.
    rows
        Its courses.

    Returns
    -------
    list of tuple of FrameRow
        From the start side; the ones first that move the fewest courses.
    """
    frames: list[tuple[FrameRow, ...]] = [()]
    at = 0
    while at < len(rows):
        if rows[at].hung is not None:
            frames = [(*frame, _hanging(rows[at])) for frame in frames]
            at += 1
            continue
        last = next((place for place in range(at, len(rows)) if rows[place].hung is not None), len(rows))
        above = None if last == len(rows) else rows[last].hung
        below = rows[at - 1].hung if at else None
        ways = list(_ways(strips, rows[at:last], below, above))
        frames = [(*frame, *way) for frame in frames for way in ways[: _MOST_WAYS if len(frames) == 1 else 1]]
        at = last
    return [tuple(_closed(strips, frame)) for frame in frames]


_MOST_WAYS = 40
"""Of the ways to follow what hangs no more are looked at."""


def _hanging(row: CarriedRow) -> FrameRow:
    assert row.hung is not None  # noqa: S101 - asked before
    return FrameRow(row.hung.low, row.hung.high, row)


def _ways(
    strips: Strips, rows: Sequence[CarriedRow], below: PlannedCourse | None, above: PlannedCourse | None
) -> Iterator[tuple[FrameRow, ...]]:
    """Give the ways in which courses in a row can lie between what hangs below them and above."""
    tolerance, narrowest = strips.rules.gap_tolerance_nm, strips.rules.narrowest_course_nm
    edges = [(row.planned.low, row.planned.high) for row in rows]
    top = edges[-1][1] if above is None else above.low
    if above is not None and 0 <= above.low - edges[-1][1] <= tolerance:
        top = edges[-1][1]
    edges[-1] = edges[-1][0], top
    begin = edges[0][0] if below is None else below.high
    off = begin - edges[0][0]
    if -tolerance <= off <= 0:
        yield _framed(rows, edges)
        if off == 0:
            return
    for taking in range(len(edges)):
        shifted = [
            (low + off, high + off if place < taking else high) if place <= taking else (low, high)
            for place, (low, high) in enumerate(edges)
        ]
        if shifted[taking][1] - shifted[taking][0] >= narrowest:
            yield _framed(rows, shifted)
    if above is None:
        shifted = [(low + off, high + off) for low, high in edges]
        end = min(max(shifted[-1][1], min(strips.must_end, edges[-1][1])), strips.may_end)
        shifted[-1] = shifted[-1][0], end
        if end - shifted[-1][0] >= narrowest and end != edges[-1][1]:
            yield _framed(rows, shifted)
    if len(rows) > 1 and edges[0][1] - begin < narrowest:
        # What hangs has taken the place of the first of them.
        yield from _ways(strips, rows[1:], below, above)
    elif len(rows) == 1 and top - begin < narrowest:
        yield ()


def _framed(rows: Sequence[CarriedRow], edges: Sequence[tuple[Nm, Nm]]) -> tuple[FrameRow, ...]:
    return tuple(FrameRow(low, high, row) for row, (low, high) in zip(rows, edges, strict=True))


def _closed(strips: Strips, frame: Sequence[FrameRow]) -> Iterator[FrameRow]:
    """Let courses touch that only a gap parts that counts as none, and put one where there is room for it."""
    tolerance, narrowest = strips.rules.gap_tolerance_nm, strips.rules.narrowest_course_nm
    at = strips.start
    for place, each in enumerate(frame):
        if each.low - at >= narrowest:
            yield FrameRow(at, each.low)
        after = frame[place + 1].low if place + 1 < len(frame) else each.high
        hangs = each.row is not None and each.row.hung is not None
        at = after if hangs and 0 <= after - each.high <= tolerance else each.high
        yield replace(each, high=at)
    if strips.must_end - at > tolerance and strips.may_end - at >= narrowest:
        yield FrameRow(at, strips.may_end)
