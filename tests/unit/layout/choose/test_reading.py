"""What the solver found, cut out of the sticks."""

from builders import board, nm, opening, studs, wall
from choosing import Question, plain
from plankwright.layout.plan import Stick


def _parts(question: Question) -> list[tuple[float, float, float, float]]:
    """Give the rectangles that are cut, from and to along and across. [in]"""
    cuts = question.answer().cuts
    assert cuts is not None
    return sorted(_inches(piece.stick) for cut in cuts for piece in cut.pieces)


def _inches(part: Stick) -> tuple[float, float, float, float]:
    sides = part.along_from, part.along_to, part.across_from, part.across_to
    along_from, along_to, across_from, across_to = (side / nm(1) for side in sides)
    return along_from, along_to, across_from, across_to


def test_pieces_of_a_lane_lie_a_kerf_apart() -> None:
    """Two of 48 from the end of the trimmed board on, each as wide as its course."""
    surface = wall(104, 12, framing=studs(24, 80), openings=(opening("door", 48, 0, 56, 12),))
    rules = plain(crosscut_kerf_nm=nm(0.125), end_trim_nm=nm(0.5), straight_edge_loss_nm=nm(0.25))
    assert _parts(Question(boards=[board("A", 100, 7)], rules=rules, surface=surface)) == [
        (0.5, 48.5, 0.25, 6.25),
        (48.625, 96.625, 0.25, 6.25),
    ]


def test_lanes_lie_a_kerf_apart() -> None:
    """Two courses of six out of thirteen inches, from the straightened edge on."""
    rules = plain(rip_kerf_nm=nm(0.125), straight_edge_loss_nm=nm(0.25))
    assert _parts(Question(boards=[board("A", 96, 13)], rules=rules, courses=[(0, 6), (6, 12)])) == [
        (0, 96, 0.25, 6.25),
        (0, 96, 6.375, 12.375),
    ]


def test_a_board_a_little_narrower_than_its_course_is_not_ripped() -> None:
    """Within the tolerance it keeps its own width."""
    tolerant = plain(width_tolerance_nm=nm(0.0625), gap_tolerance_nm=nm(0.0625))
    assert _parts(Question(boards=[board("A", 96, 5.9375)], rules=tolerant)) == [(0, 96, 0, 5.9375)]


def test_counted_courses_are_told_with_what_they_lose_to_the_closing_rip() -> None:
    """Three of five on thirteen inches lose two together; which of them loses it is not said."""
    question = Question(boards=[board(name, 96, 5) for name in "ABC"], heights=[5], span=(0, 13, 13))
    (cut,) = question.answer().cuts or ()
    assert (cut.height, cut.given_up, cut.count) == (nm(5), nm(2), 3)
    assert sorted(piece.stick.board for piece in cut.pieces) == [0, 1, 2]
    assert not cut.bare


def test_bare_stretches_are_told_course_by_course() -> None:
    """With no board for it, one of two courses is bare from end to end, in two stretches at its stud."""
    question = Question(
        boards=[board("A", 96, 6)],
        surface=wall(96, 12, framing=studs(48)),
        courses=[(0, 6), (6, 12)],
        more={"bare_allowed": True},
    )
    cuts = question.answer().cuts or ()
    assert sorted((len(cut.pieces), cut.bare) for cut in cuts) == [
        (0, ((nm(0), nm(48)), (nm(48), nm(96)))),
        (1, ()),
    ]
