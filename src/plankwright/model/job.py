"""The whole job: what is to be covered, with which boards, under which rules, with which saws."""

from dataclasses import dataclass
from itertools import pairwise

from plankwright.measure import TapeStyle
from plankwright.model.board import Board, lot_key
from plankwright.model.corners import Link, demand_corners
from plankwright.model.fastening import AS_USUAL, Fastening
from plankwright.model.means import Price, Task
from plankwright.model.origin import Lot, Treatment, demand_year
from plankwright.model.room import Room
from plankwright.model.rules import Rules, Saw, SawKind
from plankwright.model.surface import Surface
from plankwright.model.validity import demand


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Everything that a layout is made from.

    Parameters
    ----------
    name
        What the user calls the job.
    tape
        How lengths are written for this user.
    surfaces
        In order of importance: the first is served first.
    boards
        The tally.
    rules
        What a layout must respect.
    saws
        The saws at hand; none listed means that the cuts are not judged.
    linked
        Groups of walls whose courses run round the corners between them at the same heights; the first again
        at the end of a group where they run all round the room.
    room
        The air that the boards come to live in, if somebody measured it.
    house_built
        Year in which the house was built whose surfaces are covered, if it is known.
    lots
        What is known of the boards of a lot.
    fastening
        What is asked of nails.
    tasks, prices
        The user's own times, and wood that could be bought instead.
    currency
        Written before an amount of money.
    """

    name: str
    tape: TapeStyle
    surfaces: tuple[Surface, ...]
    boards: tuple[Board, ...]
    rules: Rules = Rules()
    saws: tuple[Saw, ...] = ()
    linked: tuple[Link, ...] = ()
    room: Room | None = None
    house_built: int | None = None
    lots: tuple[Lot, ...] = ()
    fastening: Fastening = AS_USUAL
    tasks: tuple[Task, ...] = ()
    prices: tuple[Price, ...] = ()
    currency: str = ""

    def __post_init__(self) -> None:
        demand(bool(self.surfaces), "a job needs a surface to cover", field="surfaces")
        for field, ids in (
            ("surfaces", [surface.id for surface in self.surfaces]),
            ("boards", [board.id for board in self.boards]),
            ("lots", [lot_key(lot.name) for lot in self.lots]),
        ):
            twice = sorted({name for name in ids if ids.count(name) > 1})
            demand(not twice, f"used more than once: {', '.join(twice)}", field=field)
        demand_corners(self.surfaces, self.linked)
        demand_year(self.house_built)
        self._demand_treated()

    def _demand_treated(self) -> None:
        """Refuse boards of a treated lot of which nothing is said: they would be hung."""
        treated = {lot_key(lot.name) for lot in self.lots if lot.treatment is not Treatment.NONE}
        doubtful = [
            board.id
            for board in self.boards
            if board.lot_key in treated and board.treatment is Treatment.NONE and not board.untreated
        ]
        demand(
            not doubtful,
            f"of a treated lot, but not treated themselves: {', '.join(doubtful)}: give each the treatment "
            "of its lot, or say that it is untreated",
            field="boards",
        )

    def surface(self, surface_id: str) -> Surface:
        """Give the surface of that name.

        Raises
        ------
        KeyError
            If the job has no such surface.
        """
        return {surface.id: surface for surface in self.surfaces}[surface_id]

    def beside(self, surface_id: str) -> tuple[str | None, str | None]:
        """Give the surfaces that the courses of one run round to: at its left end and at its right end."""
        corners = [corner for link in self.linked for corner in pairwise(link)]
        return (
            next((left for left, right in corners if right == surface_id), None),
            next((right for left, right in corners if left == surface_id), None),
        )

    def board(self, board_id: str) -> Board:
        """Give the board of that name.

        Raises
        ------
        KeyError
            If the tally has no such board.
        """
        return {board.id: board for board in self.boards}[board_id]

    def lot_of(self, board: Board) -> Lot | None:
        """Give what is known of the lot of a board, if anything is."""
        return next((lot for lot in self.lots if lot_key(lot.name) == board.lot_key), None)

    def saw_capacity_nm(self, kind: SawKind) -> int | None:
        """Give what the largest saw of a kind can cut, or nothing when no saws are listed. [nm]

        With saws listed but none of that kind, the capacity is zero: the cut cannot be made.
        """
        if not self.saws:
            return None
        return max((saw.capacity_nm for saw in self.saws if saw.cuts is kind), default=0)
