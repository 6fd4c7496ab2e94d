"""What meets what where courses meet, and what must be said about it."""

import pytest

from builders import board, course, job, nm, opening, piece, surface_layout, wall
from plankwright.check import FindingCode
from plankwright.check.case import open_surface
from plankwright.check.seams import check_grooves, check_statements, check_tongues
from plankwright.model import EdgeKind, EdgeProfile, EdgeTreatment, Opening

AS_FOUND, RIPPED = EdgeTreatment.AS_FOUND, EdgeTreatment.RIPPED
TONGUE_OFF, SPLINE, FACE_NAIL = EdgeTreatment.TONGUE_OFF, EdgeTreatment.SPLINE, EdgeTreatment.FACE_NAIL
MISSTATED, CLASH, OPEN = FindingCode.EDGE_MISSTATED, FindingCode.TONGUE_CLASH, FindingCode.GROOVE_OPEN

SQUARE = EdgeProfile()
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
LONGER = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.375))
LAP = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))
WIDER_LAP = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.375))


class Row:
    """One of the two courses: how its board is milled, how its piece is cut and what is stated."""

    def __init__(
        self,
        profile: EdgeProfile,
        stated: EdgeTreatment = AS_FOUND,
        *,
        ripped: bool = False,
        turned: bool = False,
    ) -> None:
        self.profile, self.stated, self.ripped, self.turned = profile, stated, ripped, turned

    def across(self, *, lower: bool) -> float:
        """Give where the piece lies across a board of 6, so that the edge at the seam is ripped."""
        reference_edge_at_seam = lower == self.turned
        return 1.0 if self.ripped and reference_edge_at_seam else 0.0


def codes(
    lower: Row, upper: Row, *, openings: tuple[Opening, ...] = (), taper: float = 0
) -> set[FindingCode]:
    """Give what is found where an upper course hangs on a lower one."""
    surface = wall(96.5, 10.5, openings=openings)
    rows = ((0.25, 5.25), (5.25, 10.25))
    boards = [
        board(name, 98, width, profile=row.profile, width_end_nm=nm(width + taper))
        for name, row in (("A", lower), ("B", upper))
        for width in (6 if row.ripped else 5,)
    ]
    pieces = (
        piece(
            surface,
            "1a A",
            (0.25, 96.25),
            rows[0],
            at=(0.5, lower.across(lower=True)),
            far=lower.stated,
            turned=lower.turned,
        ),
        piece(
            surface,
            "2a B",
            (0.25, 96.25),
            rows[1],
            at=(0.5, upper.across(lower=False)),
            near=upper.stated,
            turned=upper.turned,
        ),
    )
    courses = (course(1, rows[0], pieces[0]), course(2, rows[1], pieces[1]))
    case = open_surface(job(surface, boards), surface_layout(surface, *courses))
    return {
        finding.code for check in (check_statements, check_tongues, check_grooves) for finding in check(case)
    }


@pytest.mark.parametrize(
    ("lower", "upper", "expected"),
    [
        pytest.param(Row(SQUARE), Row(SQUARE), set(), id="square on square"),
        pytest.param(Row(SQUARE, RIPPED), Row(SQUARE), set(), id="square ripped"),
        pytest.param(Row(SQUARE, SPLINE), Row(SQUARE, FACE_NAIL), set(), id="square held"),
        pytest.param(Row(SQUARE, TONGUE_OFF), Row(SQUARE), {MISSTATED}, id="square has no tongue"),
        pytest.param(Row(TONGUE), Row(TONGUE), set(), id="tongue in groove"),
        pytest.param(Row(TONGUE, turned=True), Row(TONGUE, turned=True), set(), id="groove on tongue"),
        pytest.param(Row(TONGUE), Row(TONGUE, turned=True), {CLASH}, id="tongue on tongue"),
        pytest.param(
            Row(TONGUE, TONGUE_OFF), Row(TONGUE, turned=True), {CLASH}, id="tongue on tongue, one off"
        ),
        pytest.param(
            Row(TONGUE, TONGUE_OFF), Row(TONGUE, TONGUE_OFF, turned=True), set(), id="both tongues off"
        ),
        pytest.param(Row(TONGUE, turned=True), Row(TONGUE), {OPEN}, id="groove on groove"),
        pytest.param(
            Row(TONGUE, SPLINE, turned=True), Row(TONGUE), set(), id="groove on groove, spline below"
        ),
        pytest.param(
            Row(TONGUE, turned=True), Row(TONGUE, FACE_NAIL), set(), id="groove on groove, nailed above"
        ),
        pytest.param(Row(TONGUE), Row(SQUARE), {CLASH}, id="tongue on square"),
        pytest.param(
            Row(TONGUE, FACE_NAIL), Row(SQUARE, FACE_NAIL), {CLASH}, id="nails do not remove a tongue"
        ),
        pytest.param(Row(TONGUE, TONGUE_OFF), Row(SQUARE), set(), id="tongue off on square"),
        pytest.param(Row(SQUARE), Row(TONGUE), {OPEN}, id="square on groove"),
        pytest.param(Row(SQUARE, FACE_NAIL), Row(TONGUE), set(), id="square, nailed, on groove"),
        pytest.param(Row(TONGUE, TONGUE_OFF), Row(TONGUE), {OPEN}, id="tongue off under a groove"),
        pytest.param(Row(TONGUE, TONGUE_OFF), Row(TONGUE, SPLINE), set(), id="tongue off, spline"),
        pytest.param(Row(TONGUE, RIPPED, ripped=True), Row(SQUARE), set(), id="ripped on square"),
        pytest.param(Row(TONGUE, ripped=True), Row(SQUARE), {MISSTATED}, id="ripped, stated as found"),
        pytest.param(Row(TONGUE, RIPPED), Row(SQUARE), {MISSTATED, CLASH}, id="not ripped, stated ripped"),
        pytest.param(
            Row(TONGUE, TONGUE_OFF, ripped=True), Row(SQUARE), {MISSTATED}, id="ripped has no tongue"
        ),
        pytest.param(Row(TONGUE, RIPPED, ripped=True), Row(TONGUE), {OPEN}, id="ripped under groove"),
        pytest.param(Row(TONGUE, SPLINE, ripped=True), Row(TONGUE), set(), id="ripped under groove, spline"),
        pytest.param(
            Row(TONGUE, RIPPED, ripped=True),
            Row(TONGUE, RIPPED, ripped=True),
            set(),
            id="ripped on ripped",
        ),
        pytest.param(
            Row(TONGUE, RIPPED, ripped=True, turned=True),
            Row(TONGUE, RIPPED, ripped=True, turned=True),
            set(),
            id="ripped on ripped, both turned",
        ),
        pytest.param(
            Row(TONGUE, TONGUE_OFF, turned=True), Row(SQUARE, SPLINE), {MISSTATED}, id="a groove is no tongue"
        ),
        pytest.param(Row(LONGER), Row(TONGUE), {CLASH}, id="tongue longer than groove"),
        pytest.param(Row(LONGER, TONGUE_OFF), Row(TONGUE, SPLINE), set(), id="long tongue off"),
        pytest.param(Row(TONGUE), Row(LONGER), set(), id="tongue shorter than groove"),
        pytest.param(Row(LAP), Row(LAP), set(), id="lap on lap"),
        pytest.param(Row(LAP, turned=True), Row(LAP, turned=True), set(), id="lap on lap, turned"),
        pytest.param(Row(WIDER_LAP), Row(LAP), {CLASH}, id="lap wider than rabbet"),
        pytest.param(Row(LAP), Row(WIDER_LAP), {CLASH}, id="lap narrower than rabbet"),
        pytest.param(Row(LAP), Row(TONGUE), {CLASH}, id="lap on groove"),
        pytest.param(Row(TONGUE), Row(LAP), {CLASH}, id="tongue on rabbet"),
        pytest.param(Row(LAP, turned=True), Row(LAP), {OPEN}, id="rabbet on rabbet"),
    ],
)
def test_what_meets_fits_or_is_seen_to(lower: Row, upper: Row, expected: set[FindingCode]) -> None:
    """Every pairing of edges at a seam, with what is stated of them."""
    assert codes(lower, upper) == expected


def test_a_tapered_board_has_no_edge_as_found_on_its_tongue_side() -> None:
    """A taper is ripped off on the tongue side, so that the edge there is square."""
    assert codes(Row(TONGUE, RIPPED), Row(SQUARE), taper=0.5) == set()
    assert codes(Row(TONGUE), Row(SQUARE), taper=0.5) == {MISSTATED}


def test_where_an_opening_parts_the_courses_nothing_meets() -> None:
    """A tongue that ends at a window all along meets nothing."""
    window = (opening("window", 0, 5.1, 96.5, 5.4),)
    assert codes(Row(TONGUE), Row(SQUARE), openings=window) == set()


def test_each_edge_is_told_once() -> None:
    """An edge stated wrong is told once, however many pieces it meets."""
    surface = wall(96.5, 10.5)
    low, high = (0.25, 5.25), (5.25, 10.25)
    wrong = piece(surface, "1a A", (0.25, 96.25), low, far=TONGUE_OFF)
    upper = (piece(surface, "2a A", (0.25, 40), high), piece(surface, "2b A", (40, 96.25), high))
    case = open_surface(
        job(surface, [board("A", 98, 6)]),
        surface_layout(surface, course(1, low, wrong), course(2, high, *upper)),
    )
    assert [finding.where for finding in check_statements(case)] == ["course 1, piece 1a"]


def test_a_piece_of_an_unknown_board_is_not_judged() -> None:
    """Nothing is known of its edges."""
    surface = wall(96.5, 10.5)
    low, high = (0.25, 5.25), (5.25, 10.25)
    rows = (
        course(1, low, piece(surface, "1a A", (0.25, 96.25), low, far=TONGUE_OFF)),
        course(2, high, piece(surface, "2a Z", (0.25, 96.25), high, near=TONGUE_OFF)),
    )
    case = open_surface(job(surface, [board("A", 98, 6)]), surface_layout(surface, *rows))
    assert list(check_statements(case)) == []


def test_laps_are_called_laps() -> None:
    """Over-laps and under-laps are told by their own names."""
    surface = wall(96.5, 10.5)
    low, high = (0.25, 5.25), (5.25, 10.25)
    rows = (
        course(1, low, piece(surface, "1a A", (0.25, 96.25), low, at=(0.5, 0))),
        course(2, high, piece(surface, "2a B", (0.25, 96.25), high, at=(0.5, 0))),
    )
    boards = [board("A", 98, 5, profile=WIDER_LAP), board("B", 98, 5, profile=LAP)]
    (finding,) = check_tongues(open_surface(job(surface, boards), surface_layout(surface, *rows)))
    assert "over-lap meets the under-lap of piece 2a" in finding.message
