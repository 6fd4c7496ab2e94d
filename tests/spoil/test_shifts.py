"""A piece of a right layout that is moved anywhere beyond the tolerances is always found."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from builders import layout, nm, with_piece
from plankwright.check import check_layout, faults
from plankwright.check.slack import SLACK
from plankwright.measure import Nm
from plankwright.model import Edge, Rectangle
from spoil.walls import (
    Hanging,
    entry,
    gable,
    interlocked,
    one_wide_board,
    pinwheel,
    plain,
    uneven_floor,
    upright,
)

WALLS = [
    plain(),
    entry(),
    gable(),
    upright(),
    upright(Edge.RIGHT),
    uneven_floor(),
    interlocked(),
    one_wide_board(),
    pinwheel(),
]
BEYOND_GAP = nm(0.25)
"""Along a course a shift opens a gap as wide as itself, but at a slope of 3 in 4 only a triangle, in which a
disc of half the shift fits: beyond twice the 1/16 inch that may stay open it must be found."""


def shifts(least: Nm) -> st.SearchStrategy[Nm]:
    """Draw shifts either way."""
    return st.integers(least, nm(200)) | st.integers(-nm(200), -least)


def moved(hanging: Hanging, label: str, along: Nm, across: Nm) -> Hanging:
    """Move one piece, nails and all."""
    upward = hanging.job.surfaces[0].courses_run == "vertical"
    dx, dy = (across, along) if upward else (along, across)
    (one,) = (each for each in hanging.layout.pieces if each.label == label)
    place = Rectangle(
        left=one.place.left + dx,
        bottom=one.place.bottom + dy,
        right=one.place.right + dx,
        top=one.place.top + dy,
    )
    nails = tuple((x + dx, y + dy) for x, y in one.nails)
    surface = with_piece(hanging.layout.surfaces[0], label, place=place, nails=nails)
    return Hanging(hanging.job, layout(surface))


def pieces(hanging: Hanging) -> st.SearchStrategy[str]:
    """Draw the label of a piece."""
    return st.sampled_from([each.label for each in hanging.layout.pieces])


@settings(max_examples=150, deadline=None)
@given(data=st.data(), hanging=st.sampled_from(WALLS), along=shifts(BEYOND_GAP))
def test_a_shift_along_the_course_is_found(data: st.DataObject, hanging: Hanging, along: Nm) -> None:
    """Whichever piece is moved along its course, and however far, the layout is refused."""
    assert faults(check_layout(*moved(hanging, data.draw(pieces(hanging)), along, 0)))


@settings(max_examples=150, deadline=None)
@given(data=st.data(), hanging=st.sampled_from(WALLS), across=shifts(SLACK + 1))
def test_a_shift_off_the_course_is_found(data: st.DataObject, hanging: Hanging, across: Nm) -> None:
    """Whichever piece is moved off its course, by little more than a micrometre or by much, is refused."""
    assert faults(check_layout(*moved(hanging, data.draw(pieces(hanging)), 0, across)))


@settings(max_examples=100, deadline=None)
@given(data=st.data(), hanging=st.sampled_from(WALLS), beyond=st.integers(SLACK + 1, nm(200)))
def test_a_shift_off_the_board_is_found(data: st.DataObject, hanging: Hanging, beyond: Nm) -> None:
    """A piece cut from nearer to the end of its board than the trim is refused, however little nearer."""
    label = data.draw(pieces(hanging))
    (one,) = (each for each in hanging.layout.pieces if each.label == label)
    shift = hanging.job.rules.end_trim_nm - one.along_from_nm - beyond
    surface = with_piece(
        hanging.layout.surfaces[0],
        label,
        along_from_nm=one.along_from_nm + shift,
        along_to_nm=one.along_to_nm + shift,
    )
    assert faults(check_layout(hanging.job, replace(hanging.layout, surfaces=(surface,))))
