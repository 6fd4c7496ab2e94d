"""Rule 4 where courses meet: tongues and grooves fit, or the layout says what is done about it."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from shapely.geometry import LineString

from plankwright.check.case import Hung, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.shapes import line_in
from plankwright.check.slack import differs, exceeds
from plankwright.measure import Nm
from plankwright.model import Board, EdgeKind, EdgeTreatment


class Milled(StrEnum):
    """What stands at a long edge of a piece; an over-lap is a tongue here, an under-lap a groove."""

    SQUARE = "square edge"
    TONGUE = "tongue"
    GROOVE = "groove"


@dataclass(frozen=True, slots=True, kw_only=True)
class LongEdge:
    """A long edge of a piece that meets the next course.

    Parameters
    ----------
    hung, far
        The piece, and whether the edge is the one farther from the start side.
    found, kind, reach_nm
        What the board has there once cut: as found where the piece reaches its board's own edge, else square.
    stated
        What the layout says is done with it.
    """

    hung: Hung
    far: bool
    found: Milled
    kind: EdgeKind
    reach_nm: Nm
    stated: EdgeTreatment

    @property
    def meets(self) -> Milled:
        """What the neighbour meets: a tongue that is ripped off leaves a square edge."""
        return Milled.SQUARE if self.stated is EdgeTreatment.TONGUE_OFF else self.found

    @property
    def held(self) -> bool:
        """Whether a spline or nails through the face hold it."""
        return self.stated in {EdgeTreatment.SPLINE, EdgeTreatment.FACE_NAIL}

    @property
    def truly_stated(self) -> bool:
        """Whether what is stated can be true of this edge."""
        if self.stated is EdgeTreatment.TONGUE_OFF:
            return self.found is Milled.TONGUE
        if self.kind is EdgeKind.SQUARE or self.held:
            return True
        return (self.stated is EdgeTreatment.RIPPED) == (self.found is Milled.SQUARE)


def check_statements(case: SurfaceCase) -> Iterator[Finding]:
    """Find edges at a seam that are stated to be what they cannot be."""
    told: set[tuple[int, bool]] = set()
    for seam in _seams(case):
        for edge in seam:
            if not edge.hung.hangs and not edge.truly_stated and (id(edge.hung), edge.far) not in told:
                told.add((id(edge.hung), edge.far))
                side = "far" if edge.far else "near"
                message = (
                    f"Its {side} edge is stated as “{edge.stated}”, but cut like this"
                    f" board {edge.hung.piece.board_id} has a {edge.found} there."
                )
                yield found(FindingCode.EDGE_MISSTATED, edge.hung.place, message)


def check_tongues(case: SurfaceCase) -> Iterator[Finding]:
    """Find tongues and over-laps that meet nothing that they fit into."""
    for near, far in _seams(case):
        for edge, other in ((near, far), (far, near)):
            if edge.meets is Milled.TONGUE and not _fits(edge, other):
                message = (
                    f"Its {_milled(edge)} meets the {_milled(other)} of piece {other.hung.piece.label}"
                    f" in course {other.hung.course.number}, where it does not fit: rip it off."
                )
                yield found(FindingCode.TONGUE_CLASH, edge.hung.place, message)


def check_grooves(case: SurfaceCase) -> Iterator[Finding]:
    """Find grooves and under-laps that meet no tongue, with neither a spline nor nails through the face."""
    for near, far in _seams(case):
        met = {near.meets, far.meets}
        if Milled.GROOVE in met and Milled.TONGUE not in met and not (near.held or far.held):
            edge, other = (near, far) if near.meets is Milled.GROOVE else (far, near)
            message = (
                f"Its {_milled(edge)} meets the {_milled(other)} of piece {other.hung.piece.label} in course"
                f" {other.hung.course.number}: state a spline, or face-nail one of them."
            )
            yield found(FindingCode.GROOVE_OPEN, edge.hung.place, message)


def _fits(tongue: LongEdge, other: LongEdge) -> bool:
    """Whether a tongue goes into what it meets: grooves may be deeper, rabbets must be as wide as the lap."""
    if other.meets is not Milled.GROOVE or tongue.kind is not other.kind:
        return False
    if tongue.kind is EdgeKind.SHIPLAP:
        return not differs(tongue.reach_nm, other.reach_nm)
    return not exceeds(tongue.reach_nm, other.reach_nm)


def _milled(edge: LongEdge) -> str:
    if edge.kind is EdgeKind.SHIPLAP:
        return {Milled.TONGUE: "over-lap", Milled.GROOVE: "under-lap"}.get(edge.meets, edge.meets)
    return edge.meets


def _seams(case: SurfaceCase) -> Iterator[tuple[LongEdge, LongEdge]]:
    """Give the far edge of a piece and the near edge of the next course's that it meets on the surface."""
    tolerance = case.rules.gap_tolerance_nm
    for near_row, far_row in case.neighbouring_rows:
        for near in near_row:
            for far in far_row:
                start, end = max(near.u_from, far.u_from), min(near.u_to, far.u_to)
                if not near.board or not far.board or not exceeds(end - start, tolerance):
                    continue
                if near.hangs and far.hangs:
                    continue
                line = LineString(case.frame.surface_point(u, near.v_to) for u in (start, end))
                if case.may_cover.covers(line) or exceeds(line_in(line, case.may_cover).length, tolerance):
                    yield _edge(near, near.board, far=True), _edge(far, far.board, far=False)


def _edge(hung: Hung, board: Board, *, far: bool) -> LongEdge:
    """Tell what a piece has at an edge; unturned, its reference edge, grooved if milled, lies near."""
    piece, profile = hung.piece, board.profile
    tongue_side = far != piece.turned
    if tongue_side:
        reaches = not board.tapered and not differs(piece.across_to_nm, board.width_start_nm)
    else:
        reaches = not differs(piece.across_from_nm, 0)
    as_found = Milled.TONGUE if tongue_side else Milled.GROOVE
    return LongEdge(
        hung=hung,
        far=far,
        found=as_found if profile.milled and reaches else Milled.SQUARE,
        kind=profile.kind,
        reach_nm=profile.reach_nm,
        stated=piece.far if far else piece.near,
    )
