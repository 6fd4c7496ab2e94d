"""Boxes and trim: how far forward, and how much is covered."""

from plankwright.measure import INCH, Nm
from plankwright.trade.edges.boxes import extension_nm
from plankwright.trade.edges.trim import EdgeCover


def test_a_box_comes_forward_by_what_hides_it() -> None:
    """3/4 in boards over 1/2 in wallboard that the box was flush with: 3/4 in (NEC 314.20, read)."""
    assert extension_nm(INCH * 5 // 4, INCH // 2) == INCH * 3 // 4


def test_a_box_that_stands_out_needs_nothing() -> None:
    """Flush or projecting will do."""
    assert extension_nm(INCH, INCH) == 0
    assert extension_nm(INCH, INCH * 2) == 0


def cover(trim: Nm, gap: Nm, shrinks: Nm, widest: Nm | None = None) -> EdgeCover:
    """Give what trim covers where boards end by the gap of the rules, unless they end farther out."""
    return EdgeCover(
        trim_nm=trim, gap_nm=gap, widest_nm=gap if widest is None else widest, shrinks_nm=shrinks
    )


def test_trim_covers_the_gap_in_the_driest_season() -> None:
    """3/4 in of trim over a gap of 1/4 that grows by 1/8 lies on 3/8 of the boards."""
    covered = cover(INCH * 3 // 4, INCH // 4, INCH // 8)
    assert covered.overlap_nm == INCH * 3 // 8
    assert not covered.too_little
    assert not covered.untrimmed


def test_trim_that_is_too_narrow() -> None:
    """As wide as the gap, it shows it as soon as boards draw back; a 64th less than 1/4 in will not do."""
    narrow = cover(INCH // 4, INCH // 4, INCH // 8)
    assert narrow.overlap_nm is not None
    assert narrow.overlap_nm < 0
    assert narrow.too_narrow
    assert not narrow.untrimmed
    assert cover(INCH // 2, INCH // 4, INCH // 64).too_narrow
    assert not cover(INCH // 2, INCH // 4, 0).too_little


def test_boards_that_end_too_soon_under_trim_that_is_wide_enough() -> None:
    """3/4 in of trim over boards that end 5/8 from the edge lies on 1/8 of them; 7/8 would do."""
    short = cover(INCH * 3 // 4, INCH // 4, 0, widest=INCH * 5 // 8)
    assert short.overlap_nm == INCH // 8
    assert short.too_little
    assert not short.too_narrow
    assert short.wide_enough_nm == INCH * 7 // 8
    assert not cover(short.wide_enough_nm, INCH // 4, 0, widest=INCH * 5 // 8).too_little


def test_trim_where_no_board_ends() -> None:
    """It lies on none, and none is missing under it."""
    alone = EdgeCover(trim_nm=INCH, gap_nm=INCH // 4, widest_nm=None, shrinks_nm=0)
    assert alone.overlap_nm is None
    assert not alone.too_little
    assert not alone.too_narrow


def test_no_trim_at_all() -> None:
    """It is not too narrow, it is not there: the gap shows, unless none was left."""
    bare = cover(0, INCH // 4, INCH // 8)
    assert bare.untrimmed
    assert not bare.too_little
    assert not cover(0, 0, INCH // 8).untrimmed
