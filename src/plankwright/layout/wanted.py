"""The shortest list of further boards found that would close what is left bare."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.capacity import Capacity
from plankwright.layout.choose import Chooser
from plankwright.layout.courses import courses_from
from plankwright.layout.improve import Search, prices_for
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.result import Wanted
from plankwright.layout.rows import fixed_stack
from plankwright.layout.sticks import cut_from, free_sticks
from plankwright.layout.strips import Strips
from plankwright.measure import FOOT, INCH, Nm, TapeStyle, round_up
from plankwright.model import Board, EdgeProfile, Face

_ORDINARY_LENGTH: Nm = 8 * FOOT
"""A board of this length can be asked for even where the pile holds only shorter ones."""

_ORDINARY_THICKNESS: Nm = 3 * INCH // 4
"""Written down for a board that need match none."""

_COPIES = 4
"""How many further boards one course may ask for of each sort."""

_WORK = 2.0
"""Work on closing one course. [deterministic seconds]"""

_WIDTH_SPREAD: Nm = INCH
"""Pieces whose widths differ by no more may be asked for as one board."""


@dataclass(frozen=True, slots=True)
class Closing:
    """A plan closed with further boards.

    Parameters
    ----------
    wanted
        The list to show.
    boards
        The same as boards; the plan counts them on from `first`.
    plan
        With nothing bare.
    """

    wanted: tuple[Wanted, ...]
    boards: tuple[Board, ...]
    plan: Plan


def close(
    search: Search, tape: TapeStyle, first: int, stopped: Callable[[], bool] = lambda: False
) -> Closing | None:
    """Close the best plan of a search with boards that the pile does not have.

    Course by course, the solver may take boards of any length that can be asked for, at a price above all
    else, so that it takes as few as it can; short pieces are then put together on one board.

    Parameters
    ----------
    search
        Holding the plan; it is left as it is.
    tape
        Asked lengths are rounded up to its fraction.
    first
        Place in the tally of the first further board.
    stopped
        Whether somebody wants no more of it.

    Returns
    -------
    Closing or None
        Nothing when no such boards were found, as where a run without a place for a joint is longer than any
        board, or when it was stopped.
    """
    plan = search.plan
    for course in search.plan:
        if course.bare:
            closed = None if stopped() else _closed(search, plan, course, first, stopped)
            if closed is None:
                return None
            plan = tuple(closed if other.low == course.low else other for other in plan)
    return _asked(search.strips, plan, tape, first)


def _closed(
    search: Search, plan: Plan, course: PlannedCourse, first: int, stopped: Callable[[], bool]
) -> PlannedCourse | None:
    strips = search.strips
    if not _can_be_sawn(course.height, strips.capacity):
        return None
    others = tuple(other for other in plan if other.low != course.low)
    taken = max((piece.stick.board for other in others for piece in other.pieces), default=0)
    left = free_sticks(search.stock, others, strips.rules)
    new = _new_sticks(search, course, max(first, taken + 1))
    chooser = Chooser(
        strips,
        (*left, *new),
        fixed_stack(strips, [course], others),
        prices=prices_for(strips, [course], search.grid),
        grid=search.grid,
        now=(course,),
        first_new=first,
    )
    choice = chooser.solve(_WORK, 0, stopped)
    if choice.cuts is None:
        return None
    found = courses_from(strips, chooser.stack, choice.cuts, grid=search.grid, chance=search.chance)
    return found[0] if found and not found[0].bare else None


def _can_be_sawn(height: Nm, capacity: Capacity) -> bool:
    """Whether pieces as wide as a course can be sawn from some board: ripped to width, and cut across."""
    return capacity.rip != 0 and (capacity.crosscut is None or height <= capacity.crosscut)


def _new_sticks(search: Search, course: PlannedCourse, first: int) -> list[Stick]:
    """Give boards to think of: as long as can be asked for, of every sort that the course may take."""
    longest = max((*(stick.length for stick in search.stock), _ORDINARY_LENGTH))
    sorts = Counter((stick.thickness, stick.profile) for stick in search.stock)
    usual = sorts.most_common(1)[0][0] if sorts else (_ORDINARY_THICKNESS, EdgeProfile())
    wanted = {(piece.stick.thickness, piece.stick.profile) for piece in course.pieces} | {usual}
    ordered = sorted(wanted, key=lambda sort: (sort[0], sort[1].kind, sort[1].reach_nm))
    return [
        Stick(
            first + place,
            0,
            longest,
            0,
            course.height,
            Face.FRONT,
            False,  # noqa: FBT003 - a board asked for has no blemish
            thickness,
            profile,
        )
        for place, (thickness, profile) in enumerate(
            sort for sort in ordered for _ in range(_COPIES * max(1, len(course.bare)))
        )
    ]


def _asked(strips: Strips, plan: Plan, tape: TapeStyle, first: int) -> Closing:
    """Put the new pieces together on as few boards as they need, and write those down."""
    rules = strips.rules
    longest = max((*(piece.stick.length for course in plan for piece in course.pieces), _ORDINARY_LENGTH))
    new = [
        (number, piece)
        for number, course in enumerate(plan)
        for piece in course.pieces
        if piece.stick.board >= first
    ]
    bins: list[list[tuple[int, PlannedPiece]]] = []
    for number, piece in sorted(new, key=lambda entry: (-entry[1].stick.length, entry[0])):
        for together in bins:
            length = sum(other.stick.length + rules.crosscut_kerf_nm for _, other in together)
            alike = together[0][1].stick
            if (
                length + piece.stick.length <= longest
                and (alike.thickness, alike.profile) == (piece.stick.thickness, piece.stick.profile)
                and abs(alike.width - piece.stick.width) <= _WIDTH_SPREAD
            ):
                together.append((number, piece))
                break
        else:
            bins.append([(number, piece)])
    courses, boards = list(plan), []
    for place, together in enumerate(bins):
        board, pieces = _board(strips, together, place, first, tape)
        boards.append(board)
        for (number, old), moved in zip(together, pieces, strict=True):
            course = courses[number]
            courses[number] = replace(
                course, pieces=tuple(moved if piece == old else piece for piece in course.pieces)
            )
    return Closing(_listed(boards), tuple(boards), tuple(courses))


def _board(
    strips: Strips, together: Sequence[tuple[int, PlannedPiece]], place: int, first: int, tape: TapeStyle
) -> tuple[Board, list[PlannedPiece]]:
    rules, wood = strips.rules, together[0][1].stick
    loss = 0 if wood.profile.milled else rules.straight_edge_loss_nm
    along, pieces = rules.end_trim_nm, []
    widest = max(piece.stick.width for _, piece in together)
    for _, piece in together:
        part = cut_from(
            replace(piece.stick, board=first + place), along, piece.stick.length, loss, piece.stick.width
        )
        pieces.append(replace(piece, stick=part))
        along += piece.stick.length + rules.crosscut_kerf_nm
    width = round_up(widest + 2 * loss, tape.step_nm)
    length = round_up(along - rules.crosscut_kerf_nm + rules.end_trim_nm, tape.step_nm)
    board = Board(
        id=f"wanted-{place + 1}",
        length_nm=max(length, width),
        width_start_nm=width,
        width_end_nm=width,
        thickness_nm=wood.thickness,
        profile=wood.profile,
    )
    return board, pieces


def _listed(boards: Sequence[Board]) -> tuple[Wanted, ...]:
    counted = Counter(
        (board.length_nm, board.width_start_nm, board.thickness_nm, board.profile) for board in boards
    )
    return tuple(
        Wanted(count=count, length_nm=length, width_nm=width, thickness_nm=thickness, profile=profile)
        for (length, width, thickness, profile), count in sorted(
            counted.items(), key=lambda item: (-item[0][0], -item[0][1], item[0][2])
        )
    )
