"""How far the pieces of a course may differ, and how small courses and pieces may be."""

from dataclasses import replace

import pytest

from builders import course, layout, nm, rectangle, with_piece
from plankwright.check import Finding, FindingCode, check_layout
from plankwright.model import Course, Edge, Rules
from spoil.walls import Hanging, entry, plain, upright


def found(code: FindingCode, hanging: Hanging) -> list[Finding]:
    """Give the findings of one code."""
    return [finding for finding in check_layout(*hanging) if finding.code is code]


def with_courses(hanging: Hanging, *courses: Course) -> Hanging:
    """Give the same with other courses."""
    return Hanging(hanging.job, layout(replace(hanging.layout.surfaces[0], courses=courses)))


@pytest.mark.parametrize(
    ("narrower", "count"), [(0, 0), (1 / 64, 0), (1 / 32, 0), (1 / 32 + 1 / 64, 1), (-1 / 64, 1)]
)
def test_a_piece_may_be_narrower_within_the_tolerance_and_never_wider(narrower: float, count: int) -> None:
    """Up to 1/32 inch is matched by eye; a wider piece would hold the next course off."""
    work, laid = plain()
    piece = with_piece(laid.surfaces[0], "1a", place=rectangle(0.25, 0.25, 40, 5.25 - narrower))
    assert len(found(FindingCode.COURSE_WIDTH, Hanging(work, layout(piece)))) == count


def test_a_near_edge_off_its_course_is_told_either_way() -> None:
    """Pieces share one line; a hundredth of a millimetre above or below it is off it."""
    work, laid = plain()
    whole = laid.surfaces[0].courses[0].pieces[0].place
    for off, count in ((0, 0), (10_000, 1), (-10_000, 1)):
        place = replace(whole, bottom=whole.bottom + off)
        hanging = Hanging(work, layout(with_piece(laid.surfaces[0], "1a", place=place)))
        assert len(found(FindingCode.COURSE_EDGE, hanging)) == count


def test_courses_from_the_right_are_measured_from_the_right() -> None:
    """On a wall hung from its right side edges and widths are told from there."""
    assert check_layout(*upright(Edge.RIGHT)) == ()
    work, laid = upright(Edge.RIGHT)
    narrow = with_piece(laid.surfaces[0], "1a", place=rectangle(10.5, 0.25, 15.25, 90.25))
    (finding,) = found(FindingCode.COURSE_WIDTH, Hanging(work, layout(narrow)))
    assert finding.measured == nm(0.25)


@pytest.mark.parametrize("numbers", [(2, 3), (1, 3), (0, 1), (1, 1)])
def test_courses_are_numbered_from_one_without_a_gap(numbers: tuple[int, int]) -> None:
    """Whoever hangs course 3 right on the starter looks for one that is not there."""
    hanging = plain()
    courses = (
        replace(each, number=number)
        for each, number in zip(hanging.layout.surfaces[0].courses, numbers, strict=True)
    )
    assert found(FindingCode.OUT_OF_ORDER, with_courses(hanging, *courses))


def test_courses_in_any_order_are_told_to_overlap() -> None:
    """An overlap of courses is found wherever they stand in the list."""
    hanging = plain()
    first, second = hanging.layout.surfaces[0].courses
    low = replace(first, to_nm=nm(5.5))
    for courses in ((low, second), (second, low)):
        (finding,) = found(FindingCode.COURSES_OVERLAP, with_courses(hanging, *courses))
        assert (finding.where, finding.measured, finding.allowed) == ("course 2", nm(5.25), nm(5.5))


def test_a_course_turned_inside_out_is_too_narrow() -> None:
    """A course that ends before it begins is narrower than any may be."""
    hanging = plain()
    backwards = with_courses(hanging, course(1, (5.25, 0.25)))
    (finding,) = found(FindingCode.COURSE_NARROW, backwards)
    assert finding.measured == nm(-5)


def test_a_course_may_be_as_narrow_as_the_rules_say() -> None:
    """The narrowest course allowed is allowed."""
    hanging = plain()
    for least, count in ((5, 0), (5.01, 2)):
        rules = replace(hanging.job.rules, narrowest_course_nm=nm(least))
        held = Hanging(replace(hanging.job, rules=rules), hanging.layout)
        assert len(found(FindingCode.COURSE_NARROW, held)) == count


def test_three_pieces_with_one_label_are_one_finding() -> None:
    """A label is told once with how many pieces bear it."""
    work, laid = plain()
    surface = with_piece(with_piece(laid.surfaces[0], "1b", label="1a"), "2a", label="1a")
    (finding,) = found(FindingCode.LABEL_TWICE, Hanging(work, layout(surface)))
    assert (finding.where, finding.measured) == ("piece 1a", 3)


def test_a_short_run_of_its_own_may_be_short() -> None:
    """A piece of 15 inches by a window butts nothing and need not be 16; butting pieces are held to it."""
    hanging = entry()
    assert found(FindingCode.PIECE_SHORT, hanging) == []
    work = replace(hanging.job, rules=Rules(shortest_piece_nm=nm(20)))
    (finding,) = found(FindingCode.PIECE_SHORT, Hanging(work, hanging.layout))
    assert (finding.where, finding.measured) == ("course 1, piece 1b", nm(17.75))
