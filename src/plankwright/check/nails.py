"""Rule 10: every piece is nailed at enough framing, and no nail is where it must not be."""

from collections.abc import Iterator

from shapely import intersects_xy
from shapely.geometry.base import BaseGeometry

from plankwright.check.case import Hung, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.frame import Extent, box_of
from plankwright.check.shapes import common, less, polygons
from plankwright.check.slack import SLACK, exceeds
from plankwright.check.wording import counted, tell
from plankwright.measure import MILLIMETRE, Nm
from plankwright.model import FramingMember, KeepOut, Point

ROOM: Nm = MILLIMETRE
"""A piece could be nailed at a member when a spot of this size is left there for the nail. [nm]"""


def check_nails_on_pieces(case: SurfaceCase) -> Iterator[Finding]:
    """Find nails beside what hangs of their piece: off it, in an opening or in a cut-out."""
    for hung, nail in _judged_nails(case):
        if not intersects_xy(hung.shape, *nail):
            message = f"The nail at {_at(case, nail)} misses what hangs of the piece."
            yield found(FindingCode.NAIL_OFF_PIECE, hung.place, message)


def check_nail_edges(case: SurfaceCase) -> Iterator[Finding]:
    """Find nails too near to the long edges of their blank."""
    least = case.rules.nail_edge_nm
    for hung, nail in _judged_nails(case):
        _, v = case.frame.point(*nail)
        yield from _too_near(
            case,
            FindingCode.NAIL_NEAR_EDGE,
            hung,
            nail,
            (min(v - hung.v_from, hung.v_to - v), least, "a long edge"),
        )


def check_nail_ends(case: SurfaceCase) -> Iterator[Finding]:
    """Find nails too near to the ends of their blank."""
    least = case.rules.nail_end_nm
    for hung, nail in _judged_nails(case):
        u, _ = case.frame.point(*nail)
        yield from _too_near(
            case,
            FindingCode.NAIL_NEAR_END,
            hung,
            nail,
            (min(u - hung.u_from, hung.u_to - u), least, "an end"),
        )


def check_nails_on_framing(case: SurfaceCase) -> Iterator[Finding]:
    """Find nails beside the face of every member that the courses cross."""
    members = case.surface.crossing_members
    for hung, nail in _judged_nails(case):
        u, _ = case.frame.point(*nail)
        if not any(_on(member, u) for member in members):
            message = f"The nail at {_at(case, nail)} hits no framing that the course crosses."
            yield found(FindingCode.NAIL_OFF_FRAMING, hung.place, message)


def check_keep_outs(case: SurfaceCase) -> Iterator[Finding]:
    """Find nails in a keep-out or too near to one, on solid backing too."""
    clearance = case.rules.nail_clearance_nm
    for hung in case.judged:
        for nail in hung.piece.nails:
            for keep_out in case.surface.keep_outs:
                clear = _clear_of(keep_out, nail)
                if exceeds(clearance, clear):
                    stands, needed = tell(case.job.tape, max(clear, 0), clearance)
                    message = (
                        f"The nail at {_at(case, nail)} stands {stands} from {keep_out.id};"
                        f" it must stay {needed} clear of it."
                    )
                    yield found(
                        FindingCode.NAIL_IN_KEEP_OUT,
                        hung.place,
                        message,
                        measured=clear,
                        allowed=clearance,
                    )


def check_nailing(case: SurfaceCase) -> Iterator[Finding]:
    """Find pieces nailed at fewer members than they could be, and pieces that cannot be nailed at enough."""
    if case.surface.framing.solid:
        return
    asked = case.rules.nailing_points
    butting = {id(hung) for joint in case.joints for hung in (joint.left, joint.right)}
    barred = tuple(box_of(each.place, case.rules.nail_clearance_nm) for each in case.surface.keep_outs)
    members = case.surface.crossing_members
    for hung in case.judged:
        spots = [case.frame.point(*nail)[0] for nail in hung.piece.nails]
        nailed = sum(any(_on(member, spot) for spot in spots) for member in members)
        if nailed >= asked or not polygons(hung.within):
            continue
        possible = max(nailed, sum(_takes_nail(case, hung, member, barred) for member in members))
        if nailed < min(asked, possible):
            wanted = min(asked, possible)
            message = (
                f"It is nailed at {counted(nailed, 'framing member')};"
                f" {wanted} {'is' if wanted == 1 else 'are'} asked for and in reach."
            )
            yield found(FindingCode.NAILS_TOO_FEW, hung.place, message, measured=nailed, allowed=wanted)
        if possible < asked and id(hung) in butting:
            message = f"It butts another piece, and {_in_reach(possible, asked)}: let it reach farther."
            yield found(
                FindingCode.JOINED_BUT_NOT_HELD, hung.place, message, measured=possible, allowed=asked
            )
        elif possible < asked:
            told = _in_reach(possible, asked)
            message = f"{told[0].upper()}{told[1:]}: add blocking or adhesive behind it."
            yield found(FindingCode.ADD_BLOCKING, hung.place, message, measured=possible, allowed=asked)


def _in_reach(possible: int, asked: int) -> str:
    """Say at how many members a piece could be nailed that could not be at as many as are asked for."""
    if possible == 0:
        return f"no framing member behind it takes a nail, and {asked} should"
    return f"it could be nailed at {counted(possible, 'framing member')} only, not {asked}"


def _judged_nails(case: SurfaceCase) -> Iterator[tuple[Hung, Point]]:
    """Give the nails that are held to every rule: those that need framing."""
    if not case.surface.framing.solid:
        for hung in case.judged:
            for nail in hung.piece.nails:
                yield hung, nail


def _too_near(
    case: SurfaceCase, code: FindingCode, hung: Hung, nail: Point, distance: tuple[float, Nm, str]
) -> Iterator[Finding]:
    stands, least, what = distance
    if exceeds(least, stands):
        near, needed = tell(case.job.tape, stands, least)
        message = (
            f"The nail at {_at(case, nail)} stands {near} from {what} of the piece; {needed} are needed."
        )
        yield found(code, hung.place, message, measured=stands, allowed=least)


def _on(member: FramingMember, u: float) -> bool:
    return 2 * abs(u - member.centre_nm) <= member.width_nm + SLACK


def _clear_of(keep_out: KeepOut, nail: Point) -> Nm:
    """Give how far a nail lies beyond the sides of a keep-out, negative inside; corners count square. [nm]"""
    (x, y), place = nail, keep_out.place
    return max(place.left - x, x - place.right, place.bottom - y, y - place.top)


def _takes_nail(
    case: SurfaceCase, hung: Hung, member: FramingMember, barred: tuple[BaseGeometry, ...]
) -> bool:
    """Whether a piece could be nailed at a member: where it hangs, clear of edges, ends and keep-outs."""
    edge, end = case.rules.nail_edge_nm, case.rules.nail_end_nm
    reach = Extent(
        u_from=max(hung.u_from + end, (2 * member.centre_nm - member.width_nm) / 2),
        u_to=min(hung.u_to - end, (2 * member.centre_nm + member.width_nm) / 2),
        v_from=hung.v_from + edge,
        v_to=hung.v_to - edge,
    )
    if min(reach.u_to - reach.u_from, reach.v_to - reach.v_from) < ROOM:
        return False
    free = less(common(case.frame.box(reach), hung.shape), *barred)
    return not free.buffer(-ROOM / 2 + 1).is_empty


def _at(case: SurfaceCase, nail: Point) -> str:
    across, up = tell(case.job.tape, *nail)
    return f"{across} from the left and {up} up"
