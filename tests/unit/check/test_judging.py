"""Any layout at all is judged, never choked on."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from builders import layout
from plankwright.check import check_layout
from plankwright.check.judging import LAYOUT_CHECKS, SURFACE_CHECKS
from plankwright.model import (
    Bound,
    Course,
    EdgeTreatment,
    Face,
    Layout,
    Piece,
    Rectangle,
    Score,
    SurfaceLayout,
)
from spoil.walls import Hanging, entry, gable, interlocked, plain, scored, upright

# Around the size of a wall, and a few as far off as may be: what is farther is not judged at all.
LENGTHS = st.integers(-(10**9), 5 * 10**9) | st.sampled_from([0, 1, -1, 10**12, -(10**12)])
FIRST, SECOND = entry(), upright()
FIELDS = ("place", "along_from_nm", "across_to_nm", "nails", "turned", "near")


@st.composite
def rectangles(draw: st.DrawFn) -> Rectangle:
    """Draw an upright rectangle."""
    left, bottom = draw(LENGTHS), draw(LENGTHS)
    size = st.integers(1, 3 * 10**9)
    return Rectangle(left=left, bottom=bottom, right=left + draw(size), top=bottom + draw(size))


PIECES = st.builds(
    Piece,
    label=st.sampled_from(["1a", "1b", "", "2a\n"]),
    board_id=st.sampled_from([*"ABCDEFGHI", "nobody's"]),
    place=rectangles(),
    along_from_nm=LENGTHS,
    along_to_nm=LENGTHS,
    across_from_nm=LENGTHS,
    across_to_nm=LENGTHS,
    face=st.sampled_from(Face),
    turned=st.booleans(),
    near=st.sampled_from(EdgeTreatment),
    far=st.sampled_from(EdgeTreatment),
    shim_nm=LENGTHS,
    nails=st.lists(st.tuples(LENGTHS, LENGTHS), max_size=3).map(tuple),
)
COURSES = st.builds(
    Course,
    number=st.integers(-3, 10),
    from_nm=LENGTHS,
    to_nm=LENGTHS,
    pieces=st.lists(PIECES, max_size=4).map(tuple),
)
SCORES = st.builds(Score, bare_nm2=LENGTHS, joints_in_sight=LENGTHS, wood_spent_nm2=LENGTHS, cuts=LENGTHS)
SURFACES = st.builds(
    SurfaceLayout,
    surface_id=st.sampled_from(["wall", "other wall", "barn"]),
    courses=st.lists(COURSES, max_size=4).map(tuple),
    bare=st.lists(rectangles(), max_size=2).map(tuple),
    score=SCORES,
    bound=st.just(Bound()),
)
LAYOUTS = st.builds(Layout, job_name=st.text(max_size=5), surfaces=st.lists(SURFACES, max_size=3).map(tuple))


@settings(max_examples=80, deadline=None)
@given(laid=LAYOUTS)
def test_whatever_a_layout_says_it_is_judged(laid: Layout) -> None:
    """A layout of random values comes back as findings, each with a sentence, and never as an exception."""
    surfaces = (*FIRST.job.surfaces, replace(SECOND.job.surfaces[0], id="other wall"))
    findings = check_layout(replace(FIRST.job, surfaces=surfaces), laid)
    assert findings
    assert all(finding.message.endswith(".") for finding in findings)


@settings(max_examples=100, deadline=None)
@given(data=st.data(), hanging=st.sampled_from([plain(), entry(), gable(), upright(), interlocked()]))
def test_a_right_layout_with_one_random_number_is_judged(data: st.DataObject, hanging: Hanging) -> None:
    """A layout that is right but for random numbers in one piece comes through every check."""
    (surface,) = hanging.layout.surfaces
    victim = data.draw(st.sampled_from(surface.pieces))
    other = data.draw(PIECES)
    fields = data.draw(st.sets(st.sampled_from(FIELDS)))
    changed = replace(victim, **{name: getattr(other, name) for name in fields})
    courses = tuple(
        replace(row, pieces=tuple(changed if each is victim else each for each in row.pieces))
        for row in surface.courses
    )
    findings = check_layout(hanging.job, layout(replace(surface, courses=courses)))
    assert all(finding.message.endswith(".") for finding in findings)


def test_an_empty_layout_of_a_surface_is_all_gap() -> None:
    """With no piece at all the whole wall is one gap."""
    work, laid = plain()
    nothing = scored(work, replace(laid.surfaces[0], courses=()))
    assert [finding.code for finding in check_layout(*nothing)] == [111]


def test_every_check_stands_in_the_list_once() -> None:
    """No check is run twice or forgotten: each function called check_ of the room is listed."""
    listed = [*SURFACE_CHECKS, *LAYOUT_CHECKS]
    assert len(set(listed)) == len(listed)
    modules = {check.__module__ for check in listed}
    assert all(check.__name__.startswith("check_") for check in listed)
    assert modules == {
        f"plankwright.check.{name}"
        for name in (
            "blemishes",
            "boards",
            "corners",
            "courses",
            "cover",
            "done",
            "joints",
            "nails",
            "saws",
            "score",
            "seams",
            "slivers",
        )
    }


def test_findings_come_surface_by_surface_and_always_alike() -> None:
    """The same layout is told in the same words and order every time."""
    work, laid = entry()
    spoiled = layout(replace(laid.surfaces[0], courses=laid.surfaces[0].courses[1:]))
    assert check_layout(work, spoiled) == check_layout(work, spoiled)
