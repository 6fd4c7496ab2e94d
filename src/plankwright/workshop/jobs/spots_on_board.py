"""Where on a board there is sound wood that is long and wide enough for a piece, or why there is none."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plankwright.check.wording import tell
from plankwright.layout.capacity import capacity_of, within_reach
from plankwright.layout.offcuts import Stretch, clear_runs, usable_across
from plankwright.measure import Nm
from plankwright.model import Board, Face, Job, Part, Standing, Treatment
from plankwright.workshop.jobs.laid_piece import LaidPiece


@dataclass(frozen=True, slots=True)
class Spot:
    """A place on a board that a piece could be cut from.

    Parameters
    ----------
    source
        What there is of the board around it; nothing where that is all of it.
    part
        Where the piece would lie on the board.
    face, turned
        Which face of it would show, and whether its reference edge would hang farthest from the start side.
    """

    source: Part | None
    part: Part
    face: Face = Face.FRONT
    turned: bool = False


class SpotsOnBoard:
    """The places on a board that a piece could be cut from, for all that other pieces take of it.

    Parameters
    ----------
    job, standing
        The job, and how far it has come.
    board
        A board of the tally.
    place
        The piece, where it is laid out now.
    taken
        What other pieces take of the board: a piece may well be cut right beside them.
    """

    def __init__(
        self, job: Job, standing: Standing, board: Board, place: LaidPiece, taken: Sequence[Part]
    ) -> None:
        self._job, self._rules, self._standing = job, job.rules, standing
        self._board, self._place, self._taken = board, place, taken
        self._capacity = capacity_of(job)
        self._length, self._height = place.length_nm, place.course.height_nm
        self._sources: tuple[Part | None, ...] = (None,)
        if board.id in standing.sawn:
            self._sources = tuple(part for part in standing.left if part.board_id == board.id)

    def __iter__(self) -> Iterator[Spot]:
        for source, run in self._runs():
            for start in self._starts(run):
                end = start + self._length
                for low, high in self._strips(source, (start, end)):
                    yield Spot(
                        source,
                        Part(
                            board_id=self._board.id,
                            along_from_nm=start,
                            along_to_nm=end,
                            across_from_nm=low,
                            across_to_nm=high,
                        ),
                    )

    def why_none(self) -> str:
        """Say in one sentence why there is no such place."""
        board, name = self._board.id, self._place.name
        runs = [run for _, run in self._runs()]
        if not runs:
            return self._why_nothing()
        longest = max(end - start for start, end in runs)
        if longest < self._length:
            has, needs = tell(self._job.tape, longest, self._length)
            return f"The longest sound stretch of board {board} is {has}, and {name} is {needs} long."
        widths = [high - low for low, high in self._reach()]
        if not widths:
            return f"The saws listed cannot free a piece from board {board}."
        has, needs = tell(self._job.tape, max(widths), self._height)
        number, tolerance = self._place.course.number, self._rules.width_tolerance_nm
        why = "" if max(widths) + tolerance < self._height else ", and no saw listed rips it to that"
        return f"Board {board} gives {has} of width for {name}; course {number} takes {needs}{why}."

    def _why_nothing(self) -> str:
        board = self._board.id
        if self._board.treatment is not Treatment.NONE:
            return f"Board {board} was treated against rot: it never hangs in a house."
        if board in self._standing.lost:
            return f"Board {board} is marked as lost."
        if board in self._standing.sawn:
            return f"Nothing of use is left of board {board}."
        return f"No wood of board {board} is sound."

    def _runs(self) -> Iterator[tuple[Part | None, Stretch]]:
        for source in self._sources:
            for run in clear_runs(self._board, self._rules, source):
                yield source, run

    def _starts(self, run: Stretch) -> list[Nm]:
        """Give where along a run the piece could begin: at its ends, and beside all that is on it."""
        kerf = self._rules.crosscut_kerf_nm
        starts = {run[0], run[1] - self._length}
        for part in self._taken:
            starts |= {part.along_to_nm + kerf, part.along_from_nm - kerf - self._length}
        for flaw in self._board.flaws:
            starts |= {flaw.end_nm, flaw.start_nm - self._length}
        return sorted(start for start in starts if run[0] <= start <= run[1] - self._length)

    def _strips(self, source: Part | None, along: Stretch) -> Iterator[Stretch]:
        """Give the strips of a stretch that are as wide as the piece must be."""
        across = self._across(source, along)
        if across is None:
            return
        near, far = across
        as_it_is = self._capacity.rip == 0
        beside = () if as_it_is else [part.across_to_nm + self._rules.rip_kerf_nm for part in self._taken]
        for low in sorted({near, *(place for place in beside if place > near)}):
            width = far - near if as_it_is else min(self._height, far - low)
            if self._height - self._rules.width_tolerance_nm <= width <= self._height:
                yield low, low + width

    def _reach(self) -> Iterator[Stretch]:
        """Give what of the width the saws could free, wherever the piece could begin."""
        for source, run in self._runs():
            for start in self._starts(run):
                across = self._across(source, (start, start + self._length))
                if across is not None:
                    yield across

    def _across(self, source: Part | None, along: Stretch) -> Stretch | None:
        usable = usable_across(self._board, self._rules, along)
        return within_reach(self._board, usable, self._capacity, source)
