"""A layout as a screen shows it."""

from dataclasses import replace
from xml.etree import ElementTree as ET

from builders import board, layout
from kept_jobs import whole_job, work_after
from plankwright.layout.result import Verdict
from plankwright.model import NOTHING_DONE, MarkKind
from plankwright.workshop.jobs.kept import KeptLayout, Made
from plankwright.workshop.jobs.see_layout import (
    MOST_FAULTS,
    draw_surface,
    faults_now,
    said,
    see_layout,
    see_surfaces,
    standing_of,
)
from village import small_job, small_layout, spoilt_layout

LAID = KeptLayout(layout=small_layout(), made=Made.BROUGHT, news=("Two are new.", "- 1a", "- 2a", "All."))


def test_a_layout_that_came_without_an_answer_gets_one() -> None:
    """It is worked out from the layout."""
    seen = see_layout(small_job(), LAID, NOTHING_DONE)
    assert seen.fits
    assert seen.answer is not None
    assert seen.answer.verdict is Verdict.ENOUGH
    assert [one.sentence for one in seen.pile] == list(seen.answer.pile)


def test_a_layout_that_breaks_a_rule_says_which() -> None:
    """In sentences without numbers to look up, and with no answer of its own."""
    seen = see_layout(small_job(), replace(LAID, layout=spoilt_layout()), NOTHING_DONE)
    assert not seen.fits
    assert seen.answer is None
    assert all(not fault.endswith("]") for fault in seen.faults)


def test_a_layout_fits_no_longer_when_what_is_done_is_not_in_it() -> None:
    """A hung piece that it has of another board."""
    standing = work_after((MarkKind.HUNG, "1a")).standing
    assert faults_now(small_job(), small_layout(), standing) == ()
    (laid,) = small_layout().surfaces
    lower, upper = laid.courses
    (piece,) = lower.pieces
    other = replace(lower, pieces=(replace(piece, board_id="C"),))
    changed = layout(replace(laid, courses=(other, upper)))
    assert faults_now(small_job(), changed, standing)


def test_many_faults_are_told_in_part() -> None:
    """The last line says how many more there are."""
    (laid,) = small_layout().surfaces
    many = layout(*(replace(laid, surface_id=f"gone {number}") for number in range(MOST_FAULTS + 5)))
    faults = faults_now(small_job(), many, NOTHING_DONE)
    assert len(faults) == MOST_FAULTS + 1
    assert faults[-1].endswith("more like these.")


def test_lines_with_a_dash_belong_to_the_sentence_before() -> None:
    """A dash with nothing before it stays as it is."""
    seen = see_layout(small_job(), LAID, NOTHING_DONE)
    assert [(one.sentence, one.items) for one in seen.news] == [("Two are new.", ("1a", "2a")), ("All.", ())]
    assert said(["- alone"])[0].sentence == "- alone"


def test_pieces_are_listed_course_by_course() -> None:
    """With their boards, how those look, and what is done."""
    job = replace(small_job(), boards=(replace(board("A", 97, 5.25), lot="floor", tone="dark"),))
    standing = work_after((MarkKind.HUNG, "1a"), (MarkKind.CUT, "2a")).standing
    (surface,) = see_surfaces(job, small_layout(), standing)
    assert surface.about == 'Wall 8\' 0" × 10", horizontal courses from the bottom.'
    (first,), (second,) = (course.pieces for course in surface.courses)
    assert (first.label, first.board, first.looks, first.state) == ("1a", "A", "lot floor, dark", "hangs")
    assert (second.label, second.board, second.looks, second.state) == ("2a", "B", "", "cut")
    assert first.size == '96" × 5"'


def test_a_surface_that_the_job_has_no_longer_is_listed_all_the_same() -> None:
    """Only nothing is known of it."""
    gone = layout(replace(small_layout().surfaces[0], surface_id="gone"))
    (surface,) = see_surfaces(small_job(), gone, NOTHING_DONE)
    assert (surface.id, surface.about) == ("gone", "")
    assert draw_surface(small_job(), gone.surfaces[0], NOTHING_DONE) == ""


def test_pieces_of_a_drawing_lead_to_their_pages() -> None:
    """Whatever is written on them."""
    (laid,) = small_layout().surfaces
    lower, upper = laid.courses
    odd = replace(lower, pieces=tuple(replace(piece, label="1 ä/?") for piece in lower.pieces))
    drawing = draw_surface(small_job(), replace(laid, courses=(odd, upper)), NOTHING_DONE, links="/pieces/0/")
    leads = [one.attrib["href"] for one in ET.fromstring(drawing).iter() if "href" in one.attrib]  # noqa: S314 - our own
    assert leads == ["/pieces/0/1%20%C3%A4%2F%3F", "/pieces/0/2a"]


def test_what_is_looked_at_again_is_not_drawn_again() -> None:
    """The same values give the very same text."""
    (laid,) = small_layout().surfaces
    first, second = (draw_surface(small_job(), laid, NOTHING_DONE) for _ in range(2))
    assert first is second


def test_a_job_that_nobody_has_begun_stands_where_it_began() -> None:
    """Marks change that."""
    assert standing_of(whole_job()) == NOTHING_DONE
    work = work_after((MarkKind.HUNG, "1a"))
    assert standing_of(replace(whole_job(), work=work)) == work.standing
