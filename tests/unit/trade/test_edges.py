"""Boxes and trim: how far forward, and how much is covered."""

from plankwright.measure import INCH
from plankwright.trade.edges.boxes import extension_nm
from plankwright.trade.edges.trim import EdgeCover


def test_a_box_comes_forward_by_what_hides_it() -> None:
    """3/4 in boards over 1/2 in wallboard that the box was flush with: 3/4 in (NEC 314.20, read)."""
    assert extension_nm(INCH * 5 // 4, INCH // 2) == INCH * 3 // 4


def test_a_box_that_stands_out_needs_nothing() -> None:
    """Flush or projecting will do."""
    assert extension_nm(INCH, INCH) == 0
    assert extension_nm(INCH, INCH * 2) == 0


def test_trim_covers_the_gap_in_the_driest_season() -> None:
    """3/4 in of trim over a gap of 1/4 that grows by 1/8 lies on 3/8 of the boards."""
    cover = EdgeCover(trim_nm=INCH * 3 // 4, gap_nm=INCH // 4, shrinks_nm=INCH // 8)
    assert cover.overlap_nm == INCH * 3 // 8
    assert not cover.too_narrow
    assert not cover.untrimmed


def test_trim_that_is_too_narrow() -> None:
    """As wide as the gap, it shows it as soon as boards draw back; a 64th less than 1/4 in will not do."""
    cover = EdgeCover(trim_nm=INCH // 4, gap_nm=INCH // 4, shrinks_nm=INCH // 8)
    assert cover.overlap_nm < 0
    assert cover.too_narrow
    assert not cover.untrimmed
    assert EdgeCover(trim_nm=INCH // 2, gap_nm=INCH // 4, shrinks_nm=INCH // 64).too_narrow
    assert not EdgeCover(trim_nm=INCH // 2, gap_nm=INCH // 4, shrinks_nm=0).too_narrow


def test_no_trim_at_all() -> None:
    """It is not too narrow, it is not there: the gap shows, unless none was left."""
    bare = EdgeCover(trim_nm=0, gap_nm=INCH // 4, shrinks_nm=INCH // 8)
    assert bare.untrimmed
    assert not bare.too_narrow
    assert not EdgeCover(trim_nm=0, gap_nm=0, shrinks_nm=INCH // 8).untrimmed
