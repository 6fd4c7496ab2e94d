"""Marks add up to how far a job has come, and the last can be taken back."""

from builders import nm
from plankwright.model import Mark, MarkKind, Part, SawnBoard, Standing, Work
from unit.model.test_standing import cut, hung, part


def work(*marks: Mark) -> Work:
    """Give the work after some marks."""
    return Work(job_name="village hall", marks=marks)


def sawn(*left: Part, board: str = "A") -> SawnBoard:
    """Give what is left of a board."""
    return SawnBoard(board_id=board, left=left)


CUT = Mark(kind=MarkKind.CUT, what="1a", cut=(cut("1a A"),), boards=(sawn(part((41, 97))),))
HUNG = Mark(kind=MarkKind.HUNG, what="1a", hung=(hung(1, 0, "1a A"),))


def test_what_is_cut_is_in_hand_and_what_is_left_of_its_board_is_known() -> None:
    """Until it hangs."""
    standing = work(CUT).standing
    assert [one.piece.label for one in standing.cut] == ["1a"]
    assert standing.left == (part((41, 97)),)
    assert standing.sawn == ("A",)


def test_what_hangs_is_no_longer_in_hand() -> None:
    """The board stays sawn."""
    standing = work(CUT, HUNG).standing
    assert standing.cut == ()
    assert standing.hung_labels("wall") == {"1a"}
    assert standing.sawn == ("A",)


def test_a_course_that_is_told_anew_takes_the_place_of_the_old_one() -> None:
    """Also when it grew by a piece."""
    more = Mark(kind=MarkKind.HUNG, what="1b", hung=(hung(1, 0.5, "1a A", "1b B"),))
    (row,) = work(HUNG, more).standing.hung
    assert row.course.from_nm == nm(0.5)
    assert [piece.label for piece in row.course.pieces] == ["1a", "1b"]


def test_a_piece_taken_down_is_in_hand_again() -> None:
    """And leaves the others of its course hanging."""
    both = Mark(kind=MarkKind.HUNG, what="1", hung=(hung(1, 0, "1a A", "1b B"),))
    down = Mark(kind=MarkKind.DOWN, what="1a", cut=(cut("1a A"),), boards=(sawn(),))
    standing = work(both, down).standing
    assert standing.hung_labels("wall") == {"1b"}
    assert [one.piece.label for one in standing.cut] == ["1a"]


def test_what_broke_is_gone_wherever_it_was() -> None:
    """A course of which nothing hangs any more is gone with it."""
    gone = Mark(kind=MarkKind.BROKE, what="1a", gone=(("wall", "1a"),))
    assert work(CUT, gone).standing.cut == ()
    assert work(CUT, HUNG, gone).standing.hung == ()


def test_a_board_sawn_again_has_other_rests() -> None:
    """Those of other boards stay."""
    other = Mark(kind=MarkKind.CUT, what="2a", boards=(sawn(part((1, 2), board="B"), board="B"),))
    lost = Mark(kind=MarkKind.LOST, what="A", boards=(sawn(),), lost=("A",))
    standing = work(CUT, other, lost).standing
    assert standing.left == (part((1, 2), board="B"),)
    assert standing.sawn == ("A", "B")
    assert standing.lost == ("A",)


def test_the_last_mark_is_taken_back() -> None:
    """One by one, down to none and no further."""
    done = work(CUT).marked(HUNG)
    assert done.undone() == work(CUT)
    assert done.undone().undone().standing == Standing()
    assert work().undone() == work()
