"""What the eye minds in a plan: worst faces, odd boards, patterns of joints, loose seams, clumped tones.

How much each counts is common practice, no source: worst faces first, then patterns, then tones.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise, product
from typing import NamedTuple

from plankwright.layout.butting import joints_of
from plankwright.layout.milling import LongEdge, Shape, edge_as_cut, interlocks
from plankwright.layout.plan import PlannedCourse, PlannedPiece
from plankwright.layout.strips import Strips
from plankwright.measure import INCH, METRE, Nm
from plankwright.model import Board, Edge, Face, Severity

_ODD_SHARE = 8
"""Boards of one lot and species look odd where fewer than one board in so many is of them. Rule of thumb."""

_ALIKE: Nm = INCH
"""Joints are in line, and steps even, that are no farther off than this. Common practice, no source. [nm]"""

_LONGEST_STEP: Nm = 36 * INCH
"""A step that is longer does not read as one of a stair. Common practice, no source. [nm]"""

_ECHO = 8
"""Like tones with just one course between count one part in so many of those that touch."""

_BLEMISH, _ODD, _LOOSE = 8, 4, 2
"""A length of blemish, of an odd board, of a loose seam counts as so much more than one of like tones."""

_IN_LINE: Nm = METRE
_STEP: Nm = METRE // 2
"""A pair of joints in line, and three that step evenly, count as so much length of like tones. [nm]"""


class Look(NamedTuple):
    """How a plan looks, in what the eye minds; the less of each the better.

    Parameters
    ----------
    blemished
        Length of blemishes in sight. [nm]
    odd
        Length in sight of pieces of which few boards look alike. [nm]
    in_line
        Pairs of joints in sight in line, right above one another or with just one course between.
    steps
        Threes of joints in sight, in successive courses, that step by the same length the same way.
    loose
        Length of seams with a tongue or a groove that does not interlock. [nm]
    fitted
        Length of seams with a tongue that fits, which is no fault. [nm]
    clumped
        Length along which pieces of the same tone touch. [nm]
    echoed
        Length along which they would, were it not for one course between. [nm]
    touching
        Length along which pieces touch whose tones are known, which is no fault. [nm]
    """

    blemished: Nm = 0
    odd: Nm = 0
    in_line: int = 0
    steps: int = 0
    loose: Nm = 0
    fitted: Nm = 0
    clumped: Nm = 0
    echoed: Nm = 0
    touching: Nm = 0

    def and_(self, other: "Look") -> "Look":
        """Add up the looks of two parts."""
        return Look(*(one + more for one, more in zip(self, other, strict=True)))

    @property
    def fault(self) -> int:
        """All that the eye minds, in length of like tones that touch. [nm]"""
        return (
            _BLEMISH * self.blemished
            + _ODD * self.odd
            + _IN_LINE * self.in_line
            + _STEP * self.steps
            + _LOOSE * self.loose
            + self.clumped
            + self.echoed // _ECHO
        )


class Eye:
    """Looks at plans made of the boards of one pile.

    Parameters
    ----------
    strips
        The surface.
    boards
        The tally.
    """

    def __init__(self, strips: Strips, boards: Sequence[Board]) -> None:
        self._strips, self._boards = strips, boards
        words = [" ".join(board.tone.casefold().split()) for board in boards]
        known = sorted({"", *words})
        self._tones = [known.index(word) for word in words]
        self._blemished = [any(flaw.severity is Severity.BLEMISH for flaw in board.flaws) for board in boards]
        self._milled = [board.profile.milled for board in boards]
        alike = Counter((board.lot_key, board.species) for board in boards)
        self._odd = [
            len(alike) > 1 and _ODD_SHARE * alike[board.lot_key, board.species] < len(boards)
            for board in boards
        ]

    def sees_apart(self, one: int, other: int) -> bool:
        """Whether it makes a difference which of two boards hangs where."""
        return (
            self._tones[one] != self._tones[other]
            or self._odd[one] != self._odd[other]
            or self._boards[one].profile != self._boards[other].profile
            or self._blemished[one]
            or self._blemished[other]
        )

    def looks_at(self, plan: Sequence[PlannedCourse]) -> Look:
        """Look at a whole plan."""
        look = Look()
        for number in range(len(plan)):
            look = look.and_(self.looks_at_course(plan, number))
        return look

    def looks_at_course(self, plan: Sequence[PlannedCourse], number: int) -> Look:
        """Look at a course, at its seam with the one before it, and at patterns with the two before it.

        Parameters
        ----------
        plan
            The courses from the start side on.
        number
            Of the course, from 0.
        """
        course = plan[number]
        below = plan[number - 1] if number and plan[number - 1].high == course.low else None
        beneath = plan[number - 2] if below and number > 1 and plan[number - 2].high == below.low else None
        joints = self._seen_joints(course)
        look = self._faces(course)
        if below is not None:
            lower = self._seen_joints(below)
            look = look.and_(self._seam(below, course)).and_(Look(in_line=_in_line(lower, joints)))
            if beneath is not None:
                lowest = self._seen_joints(beneath)
                patterns = Look(
                    in_line=_in_line(lowest, joints),
                    steps=_steps(lowest, lower, joints),
                    echoed=self._echo(beneath, course),
                )
                look = look.and_(patterns)
        return look

    def _seen_joints(self, course: PlannedCourse) -> list[Nm]:
        return [at for at, hidden in joints_of(self._strips, course) if not hidden]

    def _faces(self, course: PlannedCourse) -> Look:
        """Look at the pieces of a course one by one, and where their ends meet."""
        runs = self._strips.runs(course.low, course.high)
        concealed = runs[0].concealed if runs else ()
        blemished = odd = clumped = touching = 0
        for piece in course.pieces:
            if self._odd[piece.stick.board]:
                odd += _shown(piece.start, piece.end, concealed)
            if self._blemished[piece.stick.board]:
                blemished += sum(_shown(*stretch, concealed) for stretch in self._blemishes(piece))
        for one, other in pairwise(course.pieces):
            tones = self._tones[one.stick.board], self._tones[other.stick.board]
            if one.end == other.start and all(tones):
                touching += course.height
                clumped += course.height * (tones[0] == tones[1])
        return Look(blemished=blemished, odd=odd, clumped=clumped, touching=touching)

    def _blemishes(self, piece: PlannedPiece) -> list[tuple[Nm, Nm]]:
        """Give where along the course the blemishes of a piece show. [nm]"""
        stick, board = piece.stick, self._boards[piece.stick.board]
        found = []
        for flaw in board.flaws:
            start, end = max(flaw.start_nm, stick.along_from), min(flaw.end_nm, stick.along_to)
            if flaw.severity is not Severity.BLEMISH or start >= end or not flaw.shows_on(stick.face):
                continue
            start, end = start - stick.along_from, end - stick.along_from
            mirrored = self._strips.surface.start in {Edge.TOP, Edge.LEFT}
            if mirrored ^ piece.turned ^ (stick.face is Face.BACK):
                start, end = stick.length - end, stick.length - start
            found.append((piece.start + start, piece.start + end))
        return found

    def _seam(self, below: PlannedCourse, above: PlannedCourse) -> Look:
        """Look along the seam of two courses."""
        loose = fitted = clumped = touching = 0
        for lower, upper, length in _meeting(below, above):
            one, other = lower.stick.board, upper.stick.board
            if self._tones[one] and self._tones[other]:
                touching += length
                clumped += length * (self._tones[one] == self._tones[other])
            milled = self._milled[one] or self._milled[other]
            if milled and length > self._strips.rules.gap_tolerance_nm:
                edges = self._edge(lower, far=True), self._edge(upper, far=False)
                fits = interlocks(*edges) or interlocks(*reversed(edges))
                fitted += length * fits
                loose += length * (not fits and any(edge.shape is not Shape.SQUARE for edge in edges))
        return Look(loose=loose, fitted=fitted, clumped=clumped, touching=touching)

    def _echo(self, beneath: PlannedCourse, course: PlannedCourse) -> Nm:
        """Give along what length pieces of one tone lie across from each other, one course apart. [nm]"""
        return sum(
            length
            for one, other, length in _meeting(beneath, course)
            if self._tones[one.stick.board] == self._tones[other.stick.board] != 0
        )

    def _edge(self, piece: PlannedPiece, *, far: bool) -> LongEdge:
        stick = piece.stick
        return edge_as_cut(
            self._boards[stick.board], stick.across_from, stick.across_to, far=far, turned=piece.turned
        )


def _meeting(lower: PlannedCourse, upper: PlannedCourse) -> Iterator[tuple[PlannedPiece, PlannedPiece, Nm]]:
    """Give the pieces of two courses that lie across from each other, and along what length. [nm]"""
    for one in lower.pieces:
        for other in upper.pieces:
            if other.start < one.end and one.start < other.end:
                yield one, other, min(one.end, other.end) - max(one.start, other.start)


def _shown(start: Nm, end: Nm, concealed: Sequence[tuple[Nm, Nm]]) -> Nm:
    """Give how much of a stretch no fixture hides. [nm]"""
    shown, at = 0, start
    for left, right in sorted(concealed):
        shown += max(0, min(left, end) - at)
        at = min(max(at, right), end)
    return shown + end - at


def _in_line(lower: Sequence[Nm], upper: Sequence[Nm]) -> int:
    return sum(abs(one - other) <= _ALIKE for one, other in product(lower, upper))


def _steps(lowest: Sequence[Nm], lower: Sequence[Nm], upper: Sequence[Nm]) -> int:
    return sum(
        abs(second - first - (third - second)) <= _ALIKE < abs(second - first) <= _LONGEST_STEP
        for first, second, third in product(lowest, lower, upper)
    )
