"""The shortest list of further boards found that would close what is left bare."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.improve import Search
from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.result import Wanted
from plankwright.layout.sticks import cut_from
from plankwright.measure import FOOT, INCH, Nm, TapeStyle, round_up
from plankwright.model import Board, EdgeProfile, Face, Rules

_ORDINARY_LENGTH: Nm = 8 * FOOT
"""A board of this length can be asked for even where the pile holds only shorter ones."""

_ORDINARY_THICKNESS: Nm = 3 * INCH // 4
"""Written down for a board that need match none."""

_SORTS = 4
"""How many sorts of boards, by thickness and milling, may be asked for: those most common in the pile."""

_ONE_IN = 8
"""A width can be asked for when one in so many boards of the pile is as wide."""

_LENGTHS_ALIKE: Nm = 6 * INCH
_WIDTHS_ALIKE: Nm = INCH // 2
"""Boards that differ by no more are asked for in the size of the largest."""

_LATE = 8
"""A plan that is not closed may take this many times as long."""

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
    search: Search,
    stock: Sequence[Stick],
    tape: TapeStyle,
    first: int,
    *,
    work: float,
    stopped: Callable[[], bool] = lambda: False,
) -> Closing | None:
    """Close the best plan of a search with boards that the pile does not have.

    The search goes on with boards to think of beside the pile; what it asks of them is made as little as it
    can be. Pieces are then put together on as few boards as they need.

    Parameters
    ----------
    search
        Holding the plan; it is left as it is.
    stock
        The wood of the pile that may be used.
    tape
        Asked lengths are rounded up to its fraction.
    first
        Place in the tally of the first further board.
    work
        How long to look for little to ask for, as a search counts it; longer while something is bare. [s]
    stopped
        Whether somebody wants no more of it.

    Returns
    -------
    Closing or None
        Nothing when no such boards were found, as where a run without a place for a joint is longer than any
        board, or when it was stopped.
    """
    sorts = sorts_for(search, first)
    if not sorts:
        return None
    closer = Search(
        search.strips,
        (*stock, *sorts),
        search.faces,
        search.grid,
        search.chance,
        _opened(search),
        stopped,
        settled=search.settled,
    )
    while closer.figure[0] and closer.spent < _LATE * work and not stopped():
        closer.step()
    work += closer.spent
    while closer.figure[2] and closer.spent < work and not stopped():
        closer.step()
    return None if closer.figure[0] else asked(search, closer.plan, tape, first)


def _opened(search: Search) -> Plan:
    """Put courses that are bare for the most part together, as far as boards to think of are wide.

    The search leaves bare what little wood does not reach in courses of any height; further boards are better
    hung in fewer of them.
    """
    plan: list[PlannedCourse] = []
    for course in search.plan:
        below = plan[-1] if plan else course
        if (
            below is not course
            and not {below.low, course.low} & search.settled
            and _bare(below)
            and _bare(course)
            and course.high - below.low <= _width(search)
        ):
            runs = search.strips.runs(below.low, course.high)
            bare = tuple((run.start, run.end) for run in runs)
            plan[-1] = PlannedCourse(below.low, course.high, (), bare)
        else:
            plan.append(course)
    return tuple(plan)


def _bare(course: PlannedCourse) -> bool:
    """Whether a course is bare for the most part."""
    return sum(end - start for start, end in course.bare) > sum(piece.stick.length for piece in course.pieces)


def sorts_for(search: Search, first: int) -> list[Stick]:
    """Give boards to think of: long, wide, and of the sorts that the pile is made of.

    Parameters
    ----------
    search
        Holding the plan that is to be closed.
    first
        Place in the tally of the first further board.
    """
    width, rip = _width(search), search.strips.capacity.rip
    if rip == 0 or not width:
        return []
    return [
        Stick(
            first + place,
            0,
            _longest(search),
            0,
            width,
            Face.FRONT,
            False,  # noqa: FBT003 - a board asked for has no blemish
            thickness,
            profile,
            rip,
            endless=True,
        )
        for place, (thickness, profile) in enumerate(_usual(search))
    ]


def _usual(search: Search) -> list[tuple[Nm, EdgeProfile]]:
    """Give the most common sorts of boards."""
    sorts = Counter((stick.thickness, stick.profile) for stick in search.stock).most_common(_SORTS)
    return [sort for sort, _ in sorts] or [(_ORDINARY_THICKNESS, EdgeProfile())]


def _width(search: Search) -> Nm:
    """Give a width that can be asked for: the pile has several such boards, or a bare course needs it."""
    widths = sorted((stick.width for stick in search.stock), reverse=True)
    needed = max((course.height for course in search.plan if course.bare), default=0)
    width = max(needed, widths[len(widths) // _ONE_IN] if widths else 0)
    crosscut = search.strips.capacity.crosscut
    return width if crosscut is None else min(width, crosscut)


def _longest(search: Search) -> Nm:
    """Give the length of the longest board that can be asked for."""
    return max((*(stick.length for stick in search.stock), _ORDINARY_LENGTH))


def asked(search: Search, plan: Plan, tape: TapeStyle, first: int) -> Closing:
    """Put the new pieces of a plan together on as few boards as they need, and write those down.

    Parameters
    ----------
    search
        For the surface and the pile.
    plan
        With pieces of boards to think of, and nothing bare.
    tape
        Asked lengths are rounded up to its fraction.
    first
        Place in the tally of the first further board.
    """
    rules, longest = search.strips.rules, _longest(search)
    plan = tuple(_of_any_sort(course, search) for course in plan)
    new = [
        (number, piece)
        for number, course in enumerate(plan)
        for piece in course.pieces
        if piece.stick.endless
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
        board, pieces = _board(rules, together, place, first, tape)
        boards.append(board)
        for (number, old), moved in zip(together, pieces, strict=True):
            course = courses[number]
            courses[number] = replace(
                course, pieces=tuple(moved if piece == old else piece for piece in course.pieces)
            )
    boards = _evened(boards)
    return Closing(_listed(boards), tuple(boards), tuple(courses))


def _evened(boards: Sequence[Board]) -> list[Board]:
    """Ask for boards of one size where sizes are much alike: a short list is easier to shop from."""
    largest: list[Board] = []
    evened: dict[str, Board] = {}
    for board in sorted(boards, key=lambda board: (-board.length_nm, -board.width_start_nm, board.id)):
        like = next((other for other in largest if _alike(board, other)), None)
        if like is None:
            largest.append(board)
        evened[board.id] = board if like is None else replace(like, id=board.id)
    return [evened[board.id] for board in boards]


def _alike(board: Board, larger: Board) -> bool:
    return (
        (board.thickness_nm, board.profile) == (larger.thickness_nm, larger.profile)
        and larger.length_nm - board.length_nm <= _LENGTHS_ALIKE
        and 0 <= larger.width_start_nm - board.width_start_nm <= _WIDTHS_ALIKE
    )


def _of_any_sort(course: PlannedCourse, search: Search) -> PlannedCourse:
    """Let further boards that butt nothing be of the most common sort."""
    thickness, profile = _usual(search)[0]
    starts, ends = {piece.start for piece in course.pieces}, {piece.end for piece in course.pieces}
    pieces = tuple(
        replace(piece, stick=replace(piece.stick, thickness=thickness, profile=profile))
        if piece.stick.endless and piece.start not in ends and piece.end not in starts
        else piece
        for piece in course.pieces
    )
    return replace(course, pieces=pieces)


def _board(
    rules: Rules, together: Sequence[tuple[int, PlannedPiece]], place: int, first: int, tape: TapeStyle
) -> tuple[Board, list[PlannedPiece]]:
    wood = together[0][1].stick
    loss = 0 if wood.profile.milled else rules.straight_edge_loss_nm
    along, pieces = rules.end_trim_nm, []
    widest = max(piece.stick.width for _, piece in together)
    for _, piece in together:
        part = cut_from(
            replace(piece.stick, board=first + place, endless=False),
            along,
            piece.stick.length,
            loss,
            piece.stick.width,
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
