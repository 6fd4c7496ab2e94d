"""What was done already is a fact: what hangs, and what is left of the boards that were sawn."""

from collections.abc import Iterator

from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from plankwright.check.case import Case, Hung, SurfaceCase, hang
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.frame import frame_of
from plankwright.check.parts import lies_in
from plankwright.check.regions import may_cover
from plankwright.check.shapes import less, polygons
from plankwright.check.slack import differs
from plankwright.check.wording import tell
from plankwright.model import Course, CutPiece, Job, Piece, Surface, part_of


def check_hung(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces that hang and that the layout does not have, or has otherwise than they hang."""
    laid = {hung.piece.label: hung for hung in case.hung}
    for course in case.standing.hung_on(case.surface.id):
        for piece in course.pieces:
            hung = laid.get(piece.label)
            where = f"course {course.number}, piece {piece.label}"
            if hung is None:
                message = "It hangs already, but the layout does not have it."
                yield found(FindingCode.HUNG_MISSING, (case.surface.id, where), message)
                continue
            what = _difference(piece, hung.piece)
            if what:
                message = f"It hangs already, but the layout has {what} otherwise."
                yield found(FindingCode.HUNG_CHANGED, hung.place, message)
            elif differs(hung.course.from_nm, course.from_nm) or differs(hung.course.to_nm, course.to_nm):
                is_at, said = tell(case.job.tape, course.to_nm, hung.course.to_nm)
                message = (
                    f"Its course hangs up to {is_at} from the start side; the layout has it up to {said}."
                )
                yield found(
                    FindingCode.HUNG_CHANGED,
                    hung.place,
                    message,
                    measured=hung.course.to_nm,
                    allowed=course.to_nm,
                )


def check_wood_left(case: Case) -> Iterator[Finding]:
    """Find pieces cut from wood that is no longer there, and pieces that are larger than what is left."""
    for board, pieces in case.by_board:
        if board.id not in case.standing.sawn:
            continue
        parts = case.standing.parts_of(board.id)
        for hung in pieces:
            if hung.hangs or any(lies_in(part_of(hung.piece), part) for part in parts):
                continue
            larger = next((part for part in parts if part.meets(part_of(hung.piece))), None)
            if larger is None:
                lost = " is lost" if board.id in case.standing.lost else " was cut before"
                message = f"Board {board.id}{lost}: the wood that it is cut from is no longer there."
            else:
                long, wide, has_long, has_wide = tell(
                    case.job.tape,
                    part_of(hung.piece).length_nm,
                    part_of(hung.piece).width_nm,
                    larger.length_nm,
                    larger.width_nm,
                )
                message = (
                    f"It takes {long} by {wide}, and reaches beyond the {has_long} by {has_wide} that is left"
                    f" of board {board.id} there."
                )
            yield found(FindingCode.WOOD_GONE, hung.place, message)


def check_shapes_left(case: Case) -> Iterator[Finding]:
    """Find pieces cut from one in hand that reach to where that has a slope or a notch."""
    known = {surface.id for surface in case.job.surfaces}
    in_hand = [
        (cut, _shape_in_hand(case.job, cut))
        for cut in case.standing.cut
        if not cut.plain and cut.surface_id in known
    ]
    for surface in case.surfaces:
        for hung in surface.judged:
            for cut, shape in in_hand:
                if not lies_in(part_of(hung.piece), cut.part):
                    continue
                beyond = polygons(less(_on_board(surface.surface, hung), shape))
                if beyond:
                    message = (
                        f"It is cut from piece {cut.piece.label}, which has a slope or a notch where this one"
                        " has none."
                    )
                    yield found(FindingCode.SHAPE_GONE, hung.place, message)


def hangs_as_cut(case: SurfaceCase, hung: Hung) -> bool:
    """Whether a piece is in hand and hangs just where it was cut for, so that no saw has to touch it."""
    return any(
        cut.surface_id == case.surface.id
        and not cut.plain
        and cut.part == part_of(hung.piece)
        and cut.piece.place == hung.piece.place
        for cut in case.standing.cut
    )


def _difference(fact: Piece, laid: Piece) -> str:
    """Say what of a piece that hangs is otherwise in a layout; nothing when it is the same."""
    if fact.board_id != laid.board_id:
        return "its board"
    places = (
        (fact.place.left, laid.place.left),
        (fact.place.bottom, laid.place.bottom),
        (fact.place.right, laid.place.right),
        (fact.place.top, laid.place.top),
    )
    if any(differs(one, other) for one, other in places):
        return "its place"
    one, other = part_of(fact), part_of(laid)
    wood = (
        (one.along_from_nm, other.along_from_nm),
        (one.along_to_nm, other.along_to_nm),
        (one.across_from_nm, other.across_from_nm),
        (one.across_to_nm, other.across_to_nm),
    )
    if any(differs(a, b) for a, b in wood):
        return "what of its board it is"
    if (fact.face, fact.turned) != (laid.face, laid.turned):
        return "which way it hangs"
    return "its shim" if differs(fact.shim_nm, laid.shim_nm) else ""


def _shape_in_hand(job: Job, cut: CutPiece) -> BaseGeometry:
    """Give what a piece in hand looks like on its board, with the slopes and notches of its place."""
    surface = job.surface(cut.surface_id)
    course = Course(number=0, from_nm=0, to_nm=1, pieces=(cut.piece,))
    return _on_board(
        surface, hang(surface, frame_of(surface), may_cover(surface, job.rules), course, cut.piece, None)
    )


def _on_board(surface: Surface, hung: Hung) -> BaseGeometry:
    """Give what hangs of a piece as it lies on its board: along it from its marked end, and across it."""
    frame, piece = frame_of(surface), hung.piece
    last = piece.marked_end_last(surface.start)

    def place(x: float, y: float) -> tuple[float, float]:
        u, v = frame.point(x, y)
        along = piece.along_to_nm - (u - hung.u_from) if last else piece.along_from_nm + u - hung.u_from
        across = (
            piece.across_to_nm - (v - hung.v_from) if piece.turned else piece.across_from_nm + v - hung.v_from
        )
        return along, across

    (at, off), (right, right_off), (up, up_off) = place(0, 0), place(1, 0), place(0, 1)
    return affine_transform(hung.shape, (right - at, up - at, right_off - off, up_off - off, at, off))
