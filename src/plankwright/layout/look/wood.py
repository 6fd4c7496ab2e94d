"""What the pieces of a plan spend of each board, and what else could be cut from it."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence

from plankwright.layout.offcuts import offcuts
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from, free_sticks
from plankwright.measure import Nm
from plankwright.model import Job, Part

Spent = tuple[int, int, int]
"""Wood spent as the search counts it, and as the score does [nm²]; and what is left, a long stick counted for
more than short ones, less than nothing the more it is [nm³]."""


class Wood:
    """The boards of a plan.

    Parameters
    ----------
    job
        For the boards and the rules.
    stock
        The wood that the plan may use.
    faces
        Face area of each board of the tally, as the search counts it. [nm²]
    plan
        What is cut from it.
    """

    def __init__(
        self, job: Job, stock: Sequence[Stick], faces: Sequence[int], plan: Sequence[PlannedCourse]
    ) -> None:
        self._job, self._faces = job, faces
        self._stock: defaultdict[int, list[Stick]] = defaultdict(list)
        for stick in stock:
            self._stock[stick.board].append(stick)
        self._cut: dict[int, tuple[Stick, ...]] = {}
        for piece in (piece for course in plan for piece in course.pieces):
            self._cut[piece.stick.board] = (*self._cut.get(piece.stick.board, ()), piece.stick)
        self._known: dict[tuple[int, frozenset[Stick]], Spent] = {}

    @property
    def boards(self) -> tuple[int, ...]:
        """Places in the tally of the boards that there are."""
        return tuple(self._stock)

    def changed(
        self, old: Iterable[PlannedCourse], new: Iterable[PlannedCourse]
    ) -> dict[int, tuple[Stick, ...]]:
        """Give what would be cut from each board that courses cut otherwise once they are changed."""
        before, after = (
            Counter(piece.stick for course in row for piece in course.pieces) for row in (old, new)
        )
        gone, come = before - after, after - before
        return {
            board: (
                *(stick for stick in self._cut.get(board, ()) if stick not in gone),
                *(stick for stick in come if stick.board == board),
            )
            for board in sorted({stick.board for stick in (*gone, *come)})
        }

    def more_spent(self, cut: dict[int, tuple[Stick, ...]]) -> Spent:
        """Give how much more is spent when boards are cut otherwise; less than nothing when less is. [nm²]"""
        more = (0, 0, 0)
        for board, sticks in cut.items():
            then, now = self._spent(board, self._cut.get(board, ())), self._spent(board, sticks)
            more = (more[0] + now[0] - then[0], more[1] + now[1] - then[1], more[2] + now[2] - then[2])
        return more

    def take(self, cut: dict[int, tuple[Stick, ...]]) -> None:
        """Cut boards otherwise."""
        self._cut |= cut

    def another(
        self, board: int, length: Nm, height: Nm, without: Iterable[Stick] = (), beside: Iterable[Stick] = ()
    ) -> Stick | None:
        """Give the part of a board that a piece could be cut from and that spends least.

        Parameters
        ----------
        board
            Its place in the tally.
        length, height
            Of the piece. [nm]
        without, beside
            What is no longer cut from the board, and what besides.
        """
        gone = set(without)
        cut = (*(stick for stick in self._cut.get(board, ()) if stick not in gone), *beside)
        rules = self._job.rules
        parts = [
            cut_from(stick, stick.along_from, length, stick.across_from, min(height, stick.width))
            for stick in free_sticks(self._stock[board], _as_plan(cut), rules)
            if stick.length >= length and stick.makes(height, rules.width_tolerance_nm)
        ]
        return min(parts, key=lambda part: self._spent(board, (*cut, part)), default=None)

    def _spent(self, board: int, cut: tuple[Stick, ...]) -> Spent:
        key = board, frozenset(cut)
        if key not in self._known:
            self._known[key] = self._count(board, cut)
        return self._known[key]

    def _count(self, board: int, cut: tuple[Stick, ...]) -> Spent:
        left = free_sticks(self._stock[board], _as_plan(cut), self._job.rules)
        long = -sum(stick.length**2 * stick.width for stick in left)
        if not cut:
            return 0, 0, long
        whole = self._job.boards[board]
        parts = [
            Part(
                board_id=whole.id,
                along_from_nm=stick.along_from,
                along_to_nm=stick.along_to,
                across_from_nm=stick.across_from,
                across_to_nm=stick.across_to,
            )
            for stick in cut
        ]
        kept = sum(offcut.length_nm * offcut.width_nm for offcut in offcuts(self._job, whole, parts))
        search = self._faces[board] - sum(stick.length * stick.width for stick in left)
        return search, whole.face_area_nm2 - kept, long


def _as_plan(cut: Sequence[Stick]) -> tuple[PlannedCourse, ...]:
    return (PlannedCourse(0, 1, tuple(PlannedPiece(stick, 0, stick.length) for stick in cut)),)
