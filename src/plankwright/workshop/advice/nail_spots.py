"""Where a piece is nailed: at its tongue and through its face, clear of what runs behind."""

from collections.abc import Callable, Iterator

import shapely

from plankwright.draw.subject import HungRow, Subject
from plankwright.layout.hanging import grown
from plankwright.layout.regions import along_and_across, extent_in_course, member_at, place_on_surface
from plankwright.measure import MILLIMETRE, Nm
from plankwright.model import EdgeKind, EdgeTreatment, KeepOut, Point, Surface
from plankwright.trade.fasteners.facts import BLIND_ALONE_NM, NEAR_END_NM


def nail_spots(what: Subject, row: HungRow, aside_nm: Nm) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Give where a piece is nailed: at its tongue, and through its face.

    A tongue that the next course covers takes the nails, a face nail besides where the board is wide or where
    no tongue holds its other edge: the starter, a board over an opening, and one on a board that does not
    interlock with it.

    Parameters
    ----------
    what, row
        The piece on its surface.
    aside_nm
        How far from where it goes in the tip of a nail at a tongue may lie, towards the start. [nm]

    Returns
    -------
    tuple
        Places at the tongue, then places through the face, which are among those of the layout.
    """
    piece, surface = row.piece, what.surface
    blind = tuple(_at_tongue(what, row, aside_nm)) if _takes_blind_nails(what, row) else ()
    if not blind:
        return (), piece.nails
    held = {member_at(surface, spot) for spot in blind}
    on_tongue = _meets(what, row, row.course.from_nm) if piece.near is EdgeTreatment.AS_FOUND else _nowhere
    wide = row.course.height_nm > BLIND_ALONE_NM.value
    kept: list[Point] = []
    for member, nails in _by_member(surface, piece.nails).items():
        if member not in held:
            kept += nails
        elif wide or not on_tongue(along_and_across(surface, nails[0])[0]):
            # Of two nails at a member the one nearer to the start: the tongue holds the other side.
            kept.append(min(nails, key=lambda nail: along_and_across(surface, nail)[1]))
    return blind, tuple(kept)


def _takes_blind_nails(what: Subject, row: HungRow) -> bool:
    board = what.job.board(row.piece.board_id)
    # The tongue lies along the edge that is not the reference edge: the far one, unless the piece is turned.
    return (
        board.profile.kind is EdgeKind.TONGUE_AND_GROOVE
        and row.piece.far is EdgeTreatment.AS_FOUND
        and not row.piece.turned
        and not what.surface.framing.solid
    )


def _at_tongue(what: Subject, row: HungRow, aside_nm: Nm) -> Iterator[Point]:
    """Give the places at the far edge of a piece, on the centres of the members it is nailed at.

    Nails lean back under their board, so that nothing may run behind anywhere between head and tip.
    """
    surface, rules, edge = what.surface, what.job.rules, row.course.to_nm
    barred = [
        extent_in_course(surface, grown(keep_out.place, rules.nail_clearance_nm))
        for keep_out in surface.keep_outs
    ]
    covered = _meets(what, row, edge)
    shape = shapely.Polygon(row.hung.shape)
    for nails in _by_member(surface, row.piece.nails).values():
        along, _ = along_and_across(surface, nails[0])
        if not covered(along) or any(
            along_from < along < along_to and across_from < edge and across_to > edge - aside_nm
            for along_from, along_to, across_from, across_to in barred
        ):
            continue
        spot = place_on_surface(surface, along, edge)
        if shape.distance(shapely.Point(spot)) < MILLIMETRE:
            yield spot


def _meets(what: Subject, row: HungRow, across: Nm) -> Callable[[Nm], bool]:
    """Give what tells whether a piece of another course reaches an edge of this one at a place along it."""
    shapes = [
        shapely.Polygon(other.hung.shape)
        for other in what.rows
        if other.course is not row.course and across in {other.course.from_nm, other.course.to_nm}
    ]

    def meets(along: Nm) -> bool:
        spot = shapely.Point(place_on_surface(what.surface, along, across))
        return any(shape.distance(spot) < MILLIMETRE for shape in shapes)

    return meets


def _nowhere(_: Nm) -> bool:
    return False


def _by_member(surface: Surface, nails: tuple[Point, ...]) -> dict[int | None, list[Point]]:
    found: dict[int | None, list[Point]] = {}
    for nail in nails:
        found.setdefault(member_at(surface, nail), []).append(nail)
    return found


def crossed(what: Subject, row: HungRow) -> Iterator[int]:
    """Give the members that a piece crosses, those that it only touches at an end apart."""
    along_from, along_to, *_ = extent_in_course(what.surface, row.piece.place)
    for number, member in enumerate(what.surface.crossing_members):
        if along_from <= member.centre_nm <= along_to:
            yield number


def covers(what: Subject, keep_out: KeepOut, row: HungRow, number: int) -> bool:
    """Tell whether a keep-out bars the whole of a member behind a piece, or much of it."""
    place = grown(keep_out.place, what.job.rules.nail_clearance_nm)
    along_from, along_to, across_from, across_to = extent_in_course(what.surface, place)
    member = what.surface.crossing_members[number]
    return (
        along_from < member.centre_nm < along_to
        and across_from < row.course.to_nm
        and across_to > row.course.from_nm
    )


def near_end(surface: Surface, row: HungRow, spot: Point) -> bool:
    """Tell whether a place stands so near to an end of its piece that it is drilled first."""
    along, _ = along_and_across(surface, spot)
    along_from, along_to, *_ = extent_in_course(surface, row.piece.place)
    return min(along - along_from, along_to - along) <= NEAR_END_NM.value
