"""What can each board give: the rectangles of clear wood that are free to be cut."""

from collections.abc import Sequence

from plankwright.layout.capacity import UNLIMITED, Capacity, within_reach
from plankwright.layout.guillotine import Patch, Sawing, parts_without
from plankwright.layout.offcuts import Stretch, clear_runs, usable_across
from plankwright.layout.plan import Plan, PlannedCourse, Stick
from plankwright.measure import Nm
from plankwright.model import BlemishPolicy, Board, Face, Part, Rules, Severity


def whole_sticks(
    board: Board,
    place: int,
    rules: Rules,
    capacity: Capacity = UNLIMITED,
    part: Part | None = None,
    *,
    shortest: Nm | None = None,
) -> tuple[Stick, ...]:
    """Give the clear stretches of a board that nothing has been cut from, or of a part of one.

    Where blemishes must be hidden, a blemished stretch is kept apart from its clean neighbours, so that
    either may be used; each clear run is shown with its better face. A stretch that is too short to be of use
    is left out.

    Parameters
    ----------
    board
        The board.
    place
        Its place in the tally.
    rules
        For end trim, straight-edge loss, blemishes and the shortest piece.
    capacity
        What the saws at hand can do.
    part
        What there is of the board; all of it when left out.
    shortest
        No shorter stretch is of use; as short as the shortest piece when left out. [nm]

    Returns
    -------
    tuple of Stick
        In order along the board; they do not overlap.
    """
    sticks: list[Stick] = []
    shortest = rules.shortest_piece_nm if shortest is None else shortest
    for run in clear_runs(board, rules, part):
        face = _better_face(board, run)
        for low, end, blemished in _parted_at_blemishes(board, run, face, rules):
            # What parts two sticks may be narrower than the saw that cuts them apart.
            start = max(low, sticks[-1].along_to + rules.crosscut_kerf_nm) if sticks else low
            across = within_reach(board, usable_across(board, rules, (start, end)), capacity, part)
            if across and end - start >= shortest and across[1] > across[0]:
                sticks.append(
                    Stick(
                        place,
                        start,
                        end,
                        *across,
                        face,
                        blemished,
                        board.thickness_nm,
                        board.profile,
                        capacity.rip,
                    )
                )
    return tuple(sticks)


def free_sticks(stock: Sequence[Stick], kept: Plan, rules: Rules, released: Plan = ()) -> list[Stick]:
    """Give what is left of the stock once the pieces of a plan are cut out of it.

    Straight cuts clear of all pieces part the kept ones from the rest, the largest part first.

    Parameters
    ----------
    stock
        The sticks before anything is cut.
    kept
        Courses whose pieces are already cut.
    rules
        For the kerfs, the shortest piece and the narrowest course.
    released
        Courses whose pieces may be cut anew: no cut goes through one, so that it can also stay as it is.
    """
    cut, whole = _by_board(kept), _by_board(released)
    free: list[Stick] = []
    for stick in stock:
        patch = _patch(stick)
        inside = [] if stick.endless else list(filter(patch.common, cut.get(stick.board, ())))
        if not inside:
            free.append(stick)
            continue
        sawing = Sawing(
            crosscut_kerf_nm=rules.crosscut_kerf_nm, rip_kerf_nm=rules.rip_kerf_nm, rip_nm=stick.widest_rip
        )
        left = parts_without(
            patch,
            inside,
            list(filter(patch.common, whole.get(stick.board, ()))),
            sawing,
            lambda part: _size_is_worth_keeping(
                part.along_to - part.along_from, part.across_to - part.across_from, rules
            ),
        )
        free += [
            _part(stick, (rest.along_from, rest.along_to), (rest.across_from, rest.across_to))
            for rest in left
        ]
    return free


def _patch(stick: Stick) -> Patch:
    return Patch(stick.along_from, stick.along_to, stick.across_from, stick.across_to)


def _by_board(plan: Plan) -> dict[int, list[Patch]]:
    patches: dict[int, list[Patch]] = {}
    for course in plan:
        for piece in course.pieces:
            patches.setdefault(piece.stick.board, []).append(_patch(piece.stick))
    return patches


def without(sticks: Sequence[Stick], course: PlannedCourse, rules: Rules) -> list[Stick]:
    """Give what is left of sticks once a course is cut from them.

    Parameters
    ----------
    sticks
        The wood at hand.
    course
        Each of its pieces cut from the near corner of a stick, or of what others left of one.
    rules
        For the kerfs and what is worth keeping.

    Returns
    -------
    list of Stick
        In order, each stick that was cut replaced by what is left of it.
    """
    left = list(sticks)
    # In this order each piece comes before those that were cut from what it left.
    for part in sorted(
        (piece.stick for piece in course.pieces), key=lambda part: (part.along_from, part.across_from)
    ):
        for index, stick in enumerate(left):
            if (
                stick.board == part.board
                and stick.along_from <= part.along_from
                and part.along_to <= stick.along_to
                and stick.across_from <= part.across_from
                and part.across_to <= stick.across_to
            ):
                left[index : index + 1] = remainders(stick, part, rules)
                break
    return left


def remainders(stick: Stick, part: Stick, rules: Rules) -> list[Stick]:
    """Give what is left, and worth keeping, of a stick when a part is cut from its near corner.

    Parameters
    ----------
    stick, part
        The stick and what is cut from it.
    rules
        For the kerfs, the shortest piece and the narrowest course.

    Returns
    -------
    list of Stick
        What lies beyond the part, over the whole width, and what lies beside it.
    """
    along = part.along_to + rules.crosscut_kerf_nm
    beyond = _part(stick, (along, stick.along_to), (stick.across_from, stick.across_to))
    beside = _beside(stick, (part.along_from, part.along_to), part.across_to, rules)
    return [rest for rest in (beyond, *beside) if _worth_keeping(rest, rules)]


def cut_from(stick: Stick, along_from: Nm, length: Nm, across_from: Nm, width: Nm) -> Stick:
    """Give the rectangle of a stick that a piece takes up.

    Parameters
    ----------
    stick
        The stick.
    along_from, length, across_from, width
        Where on the board the piece begins, and its size. [nm]
    """
    return _part(stick, (along_from, along_from + length), (across_from, across_from + width))


def _part(stick: Stick, along: Stretch, across: Stretch) -> Stick:
    return Stick(
        stick.board,
        *along,
        *across,
        stick.face,
        stick.hidden_only,
        stick.thickness,
        stick.profile,
        stick.widest_rip,
        stick.endless,
    )


def _beside(stick: Stick, along: Stretch, across: Nm, rules: Rules) -> list[Stick]:
    """Give what lies beyond a place across a stick, if the strip before it can be ripped off."""
    if stick.widest_rip is not None and across - stick.across_from > stick.widest_rip:
        return []
    return [_part(stick, along, (across + rules.rip_kerf_nm, stick.across_to))]


def _worth_keeping(stick: Stick, rules: Rules) -> bool:
    return _size_is_worth_keeping(stick.length, stick.width, rules)


def _size_is_worth_keeping(length: Nm, width: Nm, rules: Rules) -> bool:
    return length >= rules.shortest_piece_nm and width >= rules.narrowest_course_nm


def _better_face(board: Board, run: Stretch) -> Face:
    """Choose the face with less blemished length; the front when equal, and always for milled boards."""
    if board.profile.milled:
        return Face.FRONT
    return min(Face, key=lambda face: sum(end - start for start, end in _blemishes(board, run, face)))


def _blemishes(board: Board, run: Stretch, face: Face) -> list[Stretch]:
    return [
        (max(flaw.start_nm, run[0]), min(flaw.end_nm, run[1]))
        for flaw in sorted(board.flaws, key=lambda flaw: flaw.start_nm)
        if flaw.severity is Severity.BLEMISH
        and flaw.shows_on(face)
        and flaw.start_nm < run[1]
        and run[0] < flaw.end_nm
    ]


def _parted_at_blemishes(board: Board, run: Stretch, face: Face, rules: Rules) -> list[tuple[Nm, Nm, bool]]:
    """Part a clear run into clean stretches and blemished ones.

    The kerf between two stretches is charged to the blemished one.
    """
    blemishes = _blemishes(board, run, face)
    if rules.blemishes is BlemishPolicy.ANYWHERE or not blemishes:
        return [(*run, False)]
    kerf, parts, start = rules.crosscut_kerf_nm, [], run[0]
    for low, high in blemishes:
        if low > start:
            parts.append((start, low, False))
        if high > start:
            parts.append((max(start, low), high - kerf, True))
            start = high
    parts.append((start, run[1], False))
    return parts
