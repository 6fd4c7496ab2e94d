"""How gaps, overlaps and waste are measured."""

from dataclasses import replace

import pytest

from builders import (
    board,
    course,
    job,
    layout,
    nm,
    outline,
    piece,
    rectangle,
    surface_layout,
    wall,
    with_piece,
)
from plankwright.check import Finding, FindingCode, check_layout
from plankwright.check.cover import WIDTH_READING
from plankwright.model import Rectangle, SurfaceLayout
from spoil.walls import entry, plain

ROW = (0.25, 5.25)


def found(code: FindingCode, laid: SurfaceLayout) -> list[Finding]:
    """Give the findings of one code in a layout of the plain wall."""
    return [finding for finding in check_layout(plain().job, layout(laid)) if finding.code is code]


@pytest.mark.parametrize("gap", [0.25, 1.0, 3.0])
def test_a_gap_is_as_wide_as_the_disc_that_fits_in_it(gap: float) -> None:
    """A gap at the end of a course of 5 is as wide as the piece is short, up to the reading's fineness."""
    (good,) = plain().layout.surfaces
    short = with_piece(good, "2b", place=rectangle(72, 5.25, 96.25 - gap, 10.25))
    (finding,) = found(FindingCode.GAP, short)
    assert finding.allowed == nm(1 / 16)
    assert finding.measured == pytest.approx(nm(gap), abs=WIDTH_READING)
    assert "from the left" in finding.where


def test_a_gap_as_wide_as_the_tolerance_counts_as_none() -> None:
    """1/16 inch may stay open at an end; a hundredth of a millimetre more may not."""
    (good,) = plain().layout.surfaces
    for extra, count in ((0, 0), (10_000, 1)):
        place = Rectangle(left=nm(72), bottom=nm(5.25), right=nm(96.1875) - extra, top=nm(10.25))
        assert len(found(FindingCode.GAP, with_piece(good, "2b", place=place))) == count


def test_a_long_thin_gap_is_not_made_wide_by_its_length() -> None:
    """A slit of 1/32 inch along a whole course is within the tolerance."""
    (good,) = plain().layout.surfaces
    slit = with_piece(good, "1b", place=rectangle(40, 0.25, 96.25, 5.21875))
    assert found(FindingCode.GAP, slit) == []


def test_two_gaps_are_two_findings() -> None:
    """Gaps that do not touch are told one by one."""
    (good,) = plain().layout.surfaces
    holed = with_piece(good, "1a", place=rectangle(1.25, 0.25, 40, 5.25))
    holed = with_piece(holed, "2b", place=rectangle(72, 5.25, 95.25, 10.25))
    assert len(found(FindingCode.GAP, holed)) == 2


def test_what_is_declared_bare_is_no_gap() -> None:
    """A declared place takes the gap in it out; what reaches beyond it is still a gap."""
    (good,) = plain().layout.surfaces
    holed = with_piece(good, "2b", place=rectangle(72, 5.25, 94.25, 10.25))
    declared = replace(holed, bare=(rectangle(94.25, 5.25, 96.25, 10.25),))
    assert found(FindingCode.GAP, declared) == []
    (note,) = found(FindingCode.LEFT_BARE, declared)
    assert note.measured == pytest.approx(nm(2) * nm(5))
    half = replace(holed, bare=(rectangle(95.25, 5.25, 96.25, 10.25),))
    (finding,) = found(FindingCode.GAP, half)
    assert finding.measured == pytest.approx(nm(1), abs=WIDTH_READING)


def test_an_overlap_is_told_once_with_its_size() -> None:
    """A piece an inch over the next is told once, of the piece that comes first."""
    (good,) = plain().layout.surfaces
    (finding,) = found(FindingCode.OVERLAP, with_piece(good, "2a", place=rectangle(0.25, 5.25, 73, 10.25)))
    assert (finding.where, finding.measured) == ("course 2, piece 2a", nm(1))
    assert "piece 2b" in finding.message


def test_blanks_may_overlap_where_neither_hangs() -> None:
    """Two blanks that overlap in a window alone lie on nothing of one another."""
    surface = wall(96.5, 5.5, outline=outline((0, 0), (96.5, 0), (96.5, 5.5), (48, 0.25), (0, 5.5)))
    laid = surface_layout(
        surface,
        course(1, ROW, piece(surface, "1a A", (0.25, 48.5), ROW), piece(surface, "1b A", (47.5, 96.25), ROW)),
    )
    codes = {finding.code for finding in check_layout(job(surface, [board("A", 60, 6)]), layout(laid))}
    assert FindingCode.OVERLAP not in codes


def test_waste_is_told_along_and_across() -> None:
    """A blank past the wall's end is too long; a course past its top is too wide, which is told once."""
    (good,) = plain().layout.surfaces
    (long,) = found(
        FindingCode.BLANK_TOO_LARGE, with_piece(good, "2b", place=rectangle(72, 5.25, 97.25, 10.25))
    )
    assert (long.where, long.measured) == ("course 2, piece 2b", nm(1))
    high = with_piece(good, "2a", place=rectangle(0.25, 5.25, 72, 11.25))
    high = with_piece(high, "2b", place=rectangle(72, 5.25, 96.25, 11.25))
    (wide,) = found(FindingCode.BLANK_TOO_LARGE, high)
    assert (wide.where, wide.measured) == ("course 2", nm(1))


def test_a_blank_notched_at_a_window_is_not_too_large() -> None:
    """What a window takes out of a blank between its ends is no waste that could be spared."""
    codes = {finding.code for finding in check_layout(*entry())}
    assert FindingCode.BLANK_TOO_LARGE not in codes
