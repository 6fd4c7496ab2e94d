"""What can each board give: the rectangles of clear wood that are free to be cut."""

from collections.abc import Iterable, Sequence

from plankwright.layout.plan import Plan, Stick
from plankwright.measure import Nm
from plankwright.model import BlemishPolicy, Board, Face, Rules, Severity

Interval = tuple[Nm, Nm]


def whole_sticks(board: Board, place: int, rules: Rules) -> tuple[Stick, ...]:
    """Give the clear stretches of a board that nothing has been cut from.

    Where blemishes must be hidden, a blemished stretch is kept apart from its clean neighbours, so that either may
    be used; it is shown with its better face. A stretch shorter than the shortest piece is left out.

    Parameters
    ----------
    board
        The board.
    place
        Its place in the tally.
    rules
        For end trim, straight-edge loss, blemishes and the shortest piece.

    Returns
    -------
    tuple of Stick
        In order along the board; they do not overlap.
    """
    sticks = []
    for run in clear_runs(board, rules):
        face = _better_face(board, run)
        for start, end, blemished in _parted_at_blemishes(board, run, face, rules):
            low, high = usable_width(board, (start, end), rules)
            if end - start >= rules.shortest_piece_nm and high > low:
                sticks.append(
                    Stick(place, start, end, low, high, face, blemished, board.thickness_nm, board.profile)
                )
    return tuple(sticks)


def clear_runs(board: Board, rules: Rules) -> tuple[Interval, ...]:
    """Give the stretches inside the end trims that hold no lost flaw, in order. [nm]"""
    start, last = rules.end_trim_nm, board.length_nm - rules.end_trim_nm
    runs = []
    for flaw in sorted(board.flaws, key=lambda flaw: flaw.start_nm):
        if flaw.severity is Severity.LOST:
            if flaw.start_nm > start:
                runs.append((start, min(flaw.start_nm, last)))
            start = max(start, flaw.end_nm)
    runs.append((start, last))
    return tuple((low, high) for low, high in runs if low < high)


def usable_width(board: Board, run: Interval, rules: Rules) -> Interval:
    """Give from where to where across the board a piece over this stretch may be taken. [nm]"""
    loss = 0 if board.profile.milled else rules.straight_edge_loss_nm
    return loss, min(width_at(board, run[0]), width_at(board, run[1])) - loss


def width_at(board: Board, along: Nm) -> Nm:
    """Give the width of a board at a place along it, rounded down. [nm]"""
    taper = board.width_end_nm - board.width_start_nm
    return board.width_start_nm + taper * along // board.length_nm


def free_sticks(stock: Sequence[Stick], kept: Plan, rules: Rules) -> list[Stick]:
    """Give what is left of the stock once the pieces of a plan are cut out of it.

    Around each group of kept pieces that overlap along the board, what lies before and after it is free over the
    whole width, and what lies beside it is free over the group's length.

    Parameters
    ----------
    stock
        The sticks before anything is cut.
    kept
        Courses whose pieces are already cut.
    rules
        For the kerfs, the shortest piece and the narrowest course.
    """
    cut: dict[int, list[Stick]] = {}
    for course in kept:
        for piece in course.pieces:
            cut.setdefault(piece.stick.board, []).append(piece.stick)
    free: list[Stick] = []
    for stick in stock:
        inside = [
            part
            for part in cut.get(stick.board, ())
            if part.along_from < stick.along_to
            and stick.along_from < part.along_to
            and part.across_from < stick.across_to
            and stick.across_from < part.across_to
        ]
        free.extend(_left_of(stick, inside, rules) if inside else (stick,))
    return free


def _left_of(stick: Stick, parts: Iterable[Stick], rules: Rules) -> list[Stick]:
    clusters: list[list[Nm]] = []
    for part in sorted(parts, key=lambda part: part.along_from):
        if clusters and part.along_from < clusters[-1][1] + rules.crosscut_kerf_nm:
            clusters[-1][1] = max(clusters[-1][1], part.along_to)
            clusters[-1][2] = max(clusters[-1][2], part.across_to)
        else:
            clusters.append([part.along_from, part.along_to, part.across_to])
    left, start = [], stick.along_from
    for low, high, across in clusters:
        left.append(_part(stick, (start, low - rules.crosscut_kerf_nm), (stick.across_from, stick.across_to)))
        left.append(_part(stick, (low, high), (across + rules.rip_kerf_nm, stick.across_to)))
        start = high + rules.crosscut_kerf_nm
    left.append(_part(stick, (start, stick.along_to), (stick.across_from, stick.across_to)))
    return [
        part
        for part in left
        if part.length >= rules.shortest_piece_nm and part.width >= rules.narrowest_course_nm
    ]


def _part(stick: Stick, along: Interval, across: Interval) -> Stick:
    return Stick(stick.board, *along, *across, stick.face, stick.hidden_only, stick.thickness, stick.profile)


def cut_from(stick: Stick, along_from: Nm, length: Nm, across_from: Nm, width: Nm) -> Stick:
    """Give the rectangle of a stick that a piece takes up."""
    return _part(stick, (along_from, along_from + length), (across_from, across_from + width))


def _better_face(board: Board, run: Interval) -> Face:
    """Choose the face with less blemished length; the front when equal, and always for milled boards."""
    if board.profile.milled:
        return Face.FRONT
    return min(Face, key=lambda face: sum(end - start for start, end in _blemishes(board, run, face)))


def _blemishes(board: Board, run: Interval, face: Face) -> list[Interval]:
    return [
        (max(flaw.start_nm, run[0]), min(flaw.end_nm, run[1]))
        for flaw in sorted(board.flaws, key=lambda flaw: flaw.start_nm)
        if flaw.severity is Severity.BLEMISH
        and flaw.shows_on(face)
        and flaw.start_nm < run[1]
        and run[0] < flaw.end_nm
    ]


def _parted_at_blemishes(board: Board, run: Interval, face: Face, rules: Rules) -> list[tuple[Nm, Nm, bool]]:
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
            parts.append((max(start, low + kerf), high - kerf, True))
            start = high
    parts.append((start, run[1], False))
    return parts
