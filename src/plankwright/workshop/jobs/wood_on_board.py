"""The best wood for a piece on a board, and whom it takes that from."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.guillotine import Patch, Sawing, fewest_passes
from plankwright.layout.offcuts import Stretch, offcuts
from plankwright.layout.parting import PieceKey, apart
from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm
from plankwright.model import (
    BlemishPolicy,
    Board,
    Face,
    Flaw,
    Job,
    Part,
    SawKind,
    Severity,
    Standing,
)
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import LaidPiece
from plankwright.workshop.jobs.spots_on_board import Spot, SpotsOnBoard


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What is asked of a board.

    Parameters
    ----------
    place
        The piece, where it is laid out now.
    concealed
        Stretches of its course that a fixture hides over the whole height. [nm]
    staying
        What other pieces, that keep their wood, take of the board.
    others
        What those take of it that may lose their wood.
    """

    place: LaidPiece
    concealed: Sequence[Stretch]
    staying: Sequence[Part]
    others: Mapping[PieceKey, Part]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """What of a board a piece can be cut to.

    Parameters
    ----------
    part
        Where it lies on the board.
    face, turned
        Which face of it shows, and whether its reference edge hangs farthest from the start side.
    loses
        Pieces that lose their wood by it.
    waste_nm2
        How much more of the board is of no use any more, the piece aside. [nm²]
    """

    part: Part
    face: Face
    turned: bool
    loses: tuple[PieceKey, ...]
    waste_nm2: int


def wood_on(job: Job, standing: Standing, board: Board, asked: Asked) -> Wood:
    """Give the wood for a piece on a board: what takes the fewest pieces their wood, and then wastes least.

    Parameters
    ----------
    job, standing
        The job, and how far it has come.
    board
        A board of the tally.
    asked
        What is asked of it.

    Raises
    ------
    RefusedError
        If the board cannot give the piece: one sentence why.
    """
    return _OnBoard(job, standing, board, asked).best()


_WAYS = ((Face.FRONT, False), (Face.BACK, False), (Face.FRONT, True), (Face.BACK, True))
"""In which ways a piece can hang; one with milled edges only as the courses interlock."""


_Losing = Callable[[Spot], tuple[PieceKey, ...]]


class _OnBoard:
    """A board that is asked for a piece."""

    def __init__(self, job: Job, standing: Standing, board: Board, asked: Asked) -> None:
        self.job, self.rules, self.standing = job, job.rules, standing
        self.board, self.asked, self.place = board, asked, asked.place

    def best(self) -> Wood:
        """Give the best wood on it, or say why there is none."""
        taken = (*self.asked.staying, *self.asked.others.values())
        spots = SpotsOnBoard(self.job, self.standing, self.board, self.place, taken)
        large = list(spots)
        if not large:
            raise RefusedError(spots.why_none())
        name, board_id = self.place.name, self.board.id
        shown = [spot for each in large for spot in self._best_way(each)]
        if not shown:
            raise RefusedError(f"Wherever {name} is cut from board {board_id}, a blemish would show.")
        free = [
            spot for spot in shown if all(apart(spot.part, other, self.rules) for other in self.asked.staying)
        ]
        if not free:
            raise RefusedError(f"Pieces that are to stay leave too little of board {board_id} for {name}.")
        for losing in (self._those_in_the_way, self._all_others):
            wood = self._sawable(free, losing)
            if wood is not None:
                return wood
        raise RefusedError(f"The saws listed cannot free {name} from board {board_id}.")

    def _best_way(self, spot: Spot) -> Iterator[Spot]:
        """Give a spot with the face and the turn that show the least of its blemishes, if none shows."""
        ways = _WAYS[:1] if self.board.profile.milled else _WAYS
        turned = [replace(spot, face=face, turned=turn) for face, turn in ways]
        shown = [each for each in turned if not self._shows_blemish(each)]
        if shown:
            yield min(shown, key=lambda each: sum(end - start for start, end in self._blemishes(each)))

    def _shows_blemish(self, spot: Spot) -> bool:
        if self.rules.blemishes is BlemishPolicy.ANYWHERE:
            return False
        start, end, *_ = extent_in_course(self.place.surface, self.place.piece.place)
        hung = replace(self.place.piece, face=spot.face, turned=spot.turned)
        last = hung.marked_end_last(self.place.surface.start)
        for low, high in self._blemishes(spot):
            near, far = (end - high, end - low) if last else (start + low, start + high)
            if not any(left <= near and far <= right for left, right in self.asked.concealed):
                return True
        return False

    def _blemishes(self, spot: Spot) -> list[Stretch]:
        """Give the blemishes on the face that shows, from the marked end of the piece. [nm]"""
        first, last = spot.part.along_from_nm, spot.part.along_to_nm
        return [
            (max(flaw.start_nm, first) - first, min(flaw.end_nm, last) - first)
            for flaw in self.board.flaws
            if flaw.severity is Severity.BLEMISH and flaw.shows_on(spot.face) and _reach(flaw, first, last)
        ]

    def _sawable(self, spots: Iterable[Spot], losing: _Losing) -> Wood | None:
        """Give the best wood that straight cuts free, with all other pieces that do not lose theirs."""
        woods = [(self._wood(spot, losing(spot)), spot) for spot in spots]
        woods.sort(key=lambda each: _rank(each[0]))
        return next((wood for wood, spot in woods if self._can_be_freed(wood, spot.source)), None)

    def _those_in_the_way(self, spot: Spot) -> tuple[PieceKey, ...]:
        others = self.asked.others.items()
        return tuple(key for key, part in others if not apart(spot.part, part, self.rules))

    def _all_others(self, spot: Spot) -> tuple[PieceKey, ...]:
        others = self.asked.others.items()
        return tuple(key for key, part in others if _within(part, spot.source))

    def _wood(self, spot: Spot, loses: tuple[PieceKey, ...]) -> Wood:
        kept = self._kept(loses, spot.source)
        before, after = (
            sum(rest.length_nm * rest.width_nm for rest in offcuts(self.job, self.board, cut, spot.source))
            for cut in (kept, [*kept, spot.part])
        )
        waste = before - after - spot.part.length_nm * spot.part.width_nm
        return Wood(part=spot.part, face=spot.face, turned=spot.turned, loses=loses, waste_nm2=waste)

    def _kept(self, loses: Sequence[PieceKey], source: Part | None) -> list[Part]:
        """Give what other pieces go on taking of what there is of the board."""
        others = (part for key, part in self.asked.others.items() if key not in loses)
        return [part for part in (*self.asked.staying, *others) if _within(part, source)]

    def _can_be_freed(self, wood: Wood, source: Part | None) -> bool:
        sawing = Sawing(
            crosscut_kerf_nm=self.rules.crosscut_kerf_nm,
            rip_kerf_nm=self.rules.rip_kerf_nm,
            crosscut_nm=self.job.saw_capacity_nm(SawKind.CROSSCUT),
            rip_nm=self.job.saw_capacity_nm(SawKind.RIP),
        )
        patches = [_patch(part) for part in (*self._kept(wood.loses, source), wood.part)]
        part = None if source is None else _patch(source)
        return fewest_passes(self.board, patches, [], sawing, rip_first=False, part=part) is not None


def _rank(wood: Wood) -> tuple[int, int, bool, bool, Nm, Nm]:
    part = wood.part
    back = wood.face is Face.BACK
    return len(wood.loses), wood.waste_nm2, wood.turned, back, part.along_from_nm, part.across_from_nm


def _reach(flaw: Flaw, first: Nm, last: Nm) -> bool:
    return flaw.start_nm < last and first < flaw.end_nm


def _within(part: Part, source: Part | None) -> bool:
    return source is None or source.holds(part)


def _patch(part: Part) -> Patch:
    return Patch(part.along_from_nm, part.along_to_nm, part.across_from_nm, part.across_to_nm)
