"""The order of work at the saw, board by board, that frees the pieces of a layout.

Boards follow one another as their first pieces are hung, so that hanging can begin while others are still
being cut; as all pieces of a course are equally wide, a fence set for a course serves its whole row.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import product

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.layout.guillotine import Pass, Patch, Sawing, fewest_passes, leftovers, whole_board
from plankwright.layout.hanging import hung_pieces
from plankwright.layout.offcuts import offcuts, wood_spent_nm2
from plankwright.layout.shaping import Workpiece, end_cut, shaping_cuts
from plankwright.model import (
    NOTHING_DONE,
    Board,
    BoardCuts,
    Course,
    Cut,
    CutKind,
    CutPiece,
    Edge,
    Job,
    Layout,
    Offcut,
    Part,
    Piece,
    SawKind,
    Score,
    Standing,
    SurfaceLayout,
    part_of,
)

__all__ = [
    "NoOrderOfCutsError",
    "count_cuts",
    "offcuts",
    "passes_for",
    "piece_name",
    "rests_after",
    "rips_first",
    "saw_boards",
    "sawn_from",
    "wood_spent_nm2",
    "work_in_hand",
    "works_by_part",
]

_NOT_COUNTED = Score(bare_nm2=0, joints_in_sight=0, wood_spent_nm2=0, cuts=0)


class NoOrderOfCutsError(PlankwrightError, ValueError):
    """No order of straight cuts from edge to edge frees the pieces of a board.

    Parameters
    ----------
    board_id
        The board.
    """

    exit_code = ExitCode.BAD_INPUT

    def __init__(self, board_id: str) -> None:
        self.board_id = board_id
        super().__init__(
            f"board {board_id}: no order of straight cuts from edge to edge frees its pieces; "
            "move them apart in the layout, or take one of them from another board"
        )

    def __reduce__(self) -> tuple[type["NoOrderOfCutsError"], tuple[str]]:
        """Rebuild from the board, not from the message, when the error comes from another process."""
        return type(self), (self.board_id,)


def saw_boards(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> tuple[BoardCuts, ...]:
    """Derive what is done to each board at the saw.

    Of the orders that the listed saws can do, each board gets one with the fewest passes, in which no offcut
    worth keeping is cut through. Where there is none, the offcuts are given up first and the capacities of
    the saws last; the checker tells of the latter.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it.
    standing
        How far the job has come: only what is still to be done is told.

    Returns
    -------
    tuple[BoardCuts, ...]
        One for each board that is cut into, and for each part of one that was sawn before, in the order in
        which their first pieces are hung.

    Raises
    ------
    NoOrderOfCutsError
        If the pieces of a board cannot be freed by straight cuts at all.
    """
    in_hand = {cut.part: cut for cut in standing.cut}
    every = (
        _saw(job, job.board(board_id), works, part, in_hand.get(part) if part else None)
        for (board_id, part), works in works_by_part(job, layout, standing).items()
    )
    # A piece in hand that hangs just as it was cut needs no saw.
    return tuple(cuts for cuts in every if cuts.cuts or not cuts.written)


def works_by_part(
    job: Job, layout: Layout, standing: Standing
) -> dict[tuple[str, Part | None], list[Workpiece]]:
    """Give the pieces that do not hang yet by what they come from.

    Parameters
    ----------
    job, layout, standing
        The job, a layout of it, and how far it has come.

    Returns
    -------
    dict
        In the order of hanging: a board and the part of it, or nothing for one that was never sawn; and the
        pieces that come from there.
    """
    by_part: defaultdict[tuple[str, Part | None], list[Workpiece]] = defaultdict(list)
    for laid in layout.surfaces:
        hanging = standing.hung_labels(laid.surface_id)
        for work in _workpieces(job, laid):
            if work.piece.label not in hanging:
                by_part[work.piece.board_id, sawn_from(standing, part_of(work.piece))].append(work)
    return dict(by_part)


def rests_after(job: Job, layout: Layout) -> dict[str, tuple[Part, ...]]:
    """Give what lies at the saw of each board that is cut into, besides pieces, once all is sawn.

    Parameters
    ----------
    job, layout
        The job and a layout of it.

    Returns
    -------
    dict
        By the id of the board, edges as found and all, whether worth keeping or not.
    """
    rests = {}
    for (board_id, _), works in works_by_part(job, layout, NOTHING_DONE).items():
        board, pieces = job.board(board_id), [part_of(work.piece) for work in works]
        passes, _ = passes_for(job, board, pieces, None, rip_first=rips_first(job, works))
        rests[board_id] = tuple(
            Part(
                board_id=board_id,
                along_from_nm=patch.along_from,
                along_to_nm=patch.along_to,
                across_from_nm=patch.across_from,
                across_to_nm=patch.across_to,
            )
            for patch in leftovers(whole_board(board), passes, [work.blank for work in works])
        )
    return rests


def rips_first(job: Job, works: Sequence[Workpiece]) -> bool:
    """Whether to rip first where it makes no difference: an end is angled in the same pass then."""
    return any(end_cut(work, cut) for work in works for cut in shaping_cuts(work, job.rules.rip_kerf_nm))


def _workpieces(job: Job, laid: SurfaceLayout) -> Iterable[Workpiece]:
    surface = job.surface(laid.surface_id)
    for piece, hung in zip(laid.pieces, hung_pieces(job, laid), strict=True):
        yield Workpiece(
            label=piece_name(job, laid.surface_id, piece),
            piece=piece,
            hung=hung,
            surface=surface,
            profile=job.board(piece.board_id).profile,
        )


def sawn_from(standing: Standing, piece: Part) -> Part | None:
    """Give the part of its board that a piece comes from; nothing for a board that was never sawn."""
    return next((part for part in standing.parts_of(piece.board_id) if part.holds(piece)), None)


def count_cuts(board_cuts: Iterable[BoardCuts]) -> int:
    """Count the passes of a saw, a notch as one."""
    return sum(len(board.cuts) for board in board_cuts)


def piece_name(job: Job, surface_id: str, piece: Piece) -> str:
    """Name a piece on paper: by its label, with the surface when the job has several."""
    return name_on(job, surface_id, piece.label)


def name_on(job: Job, surface_id: str, name: str) -> str:
    """Name on paper what is on a surface: with the surface when the job has several."""
    return name if len(job.surfaces) == 1 else f"{surface_id} {name}"


def passes_for(
    job: Job, board: Board, pieces: Sequence[Part], part: Part | None, *, rip_first: bool = False
) -> tuple[tuple[Pass, ...], tuple[Offcut, ...]]:
    """Give the passes of the saw that free the pieces of a board, or of a part of it.

    Parameters
    ----------
    job, board
        The job, and a board of it.
    pieces
        Where they lie on the board.
    part
        What there is of the board; all of it when nothing.
    rip_first
        Whether to rip first where crosscutting first would take as many passes.

    Returns
    -------
    tuple
        The passes in the order of work, and the offcuts worth keeping, which they go through only if they
        cannot but.

    Raises
    ------
    NoOrderOfCutsError
        If the pieces cannot be freed by straight cuts at all.
    """
    rules = job.rules
    worth_keeping = offcuts(job, board, pieces, part)
    blanks = [_lies(piece) for piece in pieces]
    keep = [_lies(offcut) for offcut in worth_keeping]
    at_hand = Sawing(
        crosscut_kerf_nm=rules.crosscut_kerf_nm,
        rip_kerf_nm=rules.rip_kerf_nm,
        crosscut_nm=job.saw_capacity_nm(SawKind.CROSSCUT),
        rip_nm=job.saw_capacity_nm(SawKind.RIP),
    )
    any_saw = replace(at_hand, crosscut_nm=None, rip_nm=None)
    for sawing, whole in product((at_hand, any_saw), (keep, [])):
        passes = fewest_passes(
            board, blanks, whole, sawing, rip_first=rip_first, part=None if part is None else _lies(part)
        )
        if passes is not None:
            return passes, worth_keeping
    raise NoOrderOfCutsError(board.id)


def _saw(
    job: Job, board: Board, works: list[Workpiece], part: Part | None, in_hand: CutPiece | None
) -> BoardCuts:
    works = sorted(works, key=lambda work: work.blank)
    shaping = {work.label: list(shaping_cuts(work, job.rules.rip_kerf_nm)) for work in works}
    rip_first = rips_first(job, works)
    blanks = [part_of(work.piece) for work in works]
    passes, worth_keeping = passes_for(job, board, blanks, part, rip_first=rip_first)
    if in_hand is not None and not passes:
        made = _made_before(job, in_hand)
        shaping = {label: [cut for cut in cuts if _bare(cut) not in made] for label, cuts in shaping.items()}
    keep = [_lies(offcut) for offcut in worth_keeping]
    cuts: list[Cut] = []
    for one in passes:
        frees = tuple(work.label for work in works if work.blank in {one.near, one.far})
        end = _end_made_by(one, works, shaping, keep)
        if end is None:
            cuts.append(_straight(board, one, works, keep, frees))
        else:
            shaping[end.label].remove(end)
            what = "" if frees else f"angle an end of {end.label}"
            cuts.append(replace(end, yields=frees, what=what))
    left = leftovers(
        whole_board(board) if part is None else _lies(part), passes, [work.blank for work in works]
    )
    return BoardCuts(
        board_id=board.id,
        cuts=(*cuts, *(cut for work in works for cut in shaping[work.label])),
        piece_labels=tuple(work.label for work in works),
        offcuts=_still_whole(job, worth_keeping, left),
        part=part,
        written="" if in_hand is None else piece_name(job, in_hand.surface_id, in_hand.piece),
    )


def work_in_hand(job: Job, cut: CutPiece) -> Workpiece:
    """Give a piece that is cut as it would hang in the place that it was cut for."""
    alone = Course(number=1, from_nm=0, to_nm=1, pieces=(cut.piece,))
    (work,) = _workpieces(job, SurfaceLayout(surface_id=cut.surface_id, courses=(alone,), score=_NOT_COUNTED))
    return work


def _made_before(job: Job, cut: CutPiece) -> frozenset[Cut]:
    """Give the slopes and notches that a piece in hand has, and the tongue that was taken off it."""
    if cut.plain:
        return frozenset()
    return frozenset(map(_bare, shaping_cuts(work_in_hand(job, cut), job.rules.rip_kerf_nm)))


def _bare(cut: Cut) -> Cut:
    """Give a cut without what it is called after."""
    return replace(cut, label="", what="")


def _end_made_by(
    one: Pass, works: list[Workpiece], shaping: dict[str, list[Cut]], keep: list[Patch]
) -> Cut | None:
    """Give the angled crosscut that can be made in place of a square one, since only waste lies behind it."""
    wanted = [*(work.blank for work in works), *keep]
    for work in works if one.kind is CutKind.CROSSCUT else ():
        blank = work.blank
        for cut in shaping[work.label]:
            end = end_cut(work, cut)
            made, waste = (one.far, one.near) if end is Edge.LEFT else (one.near, one.far)
            if end is None or made is None or not made.holds(blank) or made[2:] != blank[2:]:
                continue
            side = slice(0, 1) if end is Edge.LEFT else slice(1, 2)
            if made[side] == blank[side] and not any(waste and waste.holds(patch) for patch in wanted):
                return cut
    return None


def _straight(
    board: Board, one: Pass, works: list[Workpiece], keep: list[Patch], frees: tuple[str, ...]
) -> Cut:
    part = one.through
    if one.kind is CutKind.CROSSCUT:
        start, end = part.across_from, part.across_to
    else:
        start, end = part.along_from, part.along_to
    return Cut(
        kind=one.kind,
        at_nm=one.at_nm,
        other_at_nm=one.at_nm,
        from_nm=start,
        to_nm=end,
        yields=frees,
        what="" if frees else _purpose(board, one, works, keep),
    )


def _purpose(board: Board, one: Pass, works: list[Workpiece], keep: list[Patch]) -> str:
    """Say what a cut is for that frees no piece by itself."""
    near, far = (
        [work.label for work in works if side is not None and side.holds(work.blank)]
        or ["an offcut" for patch in keep if side is not None and side.holds(patch)]
        for side in (one.near, one.far)
    )
    if near and far:
        return f"part {', '.join(near)} from {', '.join(far)}"
    part = one.through
    if one.kind is CutKind.RIP:
        return "straighten the reference edge" if far and part.across_from == 0 else "rip to width"
    if far:
        return "trim the marked end" if part.along_from == 0 else f"cut off what lies before {far[0]}"
    if part.along_to == board.length_nm:
        return "trim the other end"
    return f"cut off what lies behind {near[-1]}"


def _lies(offcut: Offcut | Part) -> Patch:
    return Patch(offcut.along_from_nm, offcut.along_to_nm, offcut.across_from_nm, offcut.across_to_nm)


def _still_whole(job: Job, worth_keeping: tuple[Offcut, ...], left: tuple[Patch, ...]) -> tuple[Offcut, ...]:
    """Give what the cuts leave of the offcuts: all of each, unless the saws could not but go through it."""
    parts = [
        replace(
            offcut,
            along_from_nm=common.along_from,
            along_to_nm=common.along_to,
            across_from_nm=common.across_from,
            across_to_nm=common.across_to,
        )
        for offcut in worth_keeping
        for common in (_lies(offcut).common(part) for part in left)
        if common is not None
    ]
    return tuple(
        part
        for part in parts
        if part.length_nm >= job.rules.shortest_piece_nm and part.width_nm >= job.rules.narrowest_course_nm
    )
