"""What was marked, and how far a job has come, in plain words."""

from builders import TAPE, nm
from in_progress import Measured, begun_job, begun_layout, happened, marked
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.tell_work import found_since, tell_mark, tell_work


def test_nothing_marked_is_said() -> None:
    """Before work begins."""
    assert tell_work(begun_job(), begun_layout(), begin_work(begun_job())) == (
        "Nothing is marked yet: nothing is cut and nothing hangs.",
    )


def test_how_far_it_has_come_is_said_surface_by_surface() -> None:
    """Courses in a row are told as from-to."""
    work = marked(happened("hung", "1", "2", "4"), happened("cut", "3"), happened("lost", "wide"))
    assert tell_work(begun_job("X"), begun_layout(), work) == (
        "wall: five of six pieces hang, in courses 1, 2 and 4.",
        "One piece is cut and does not hang: 3a.",
        "Lost: board wide.",
        "Found since work began: board X.",
    )


def test_one_piece_hangs_and_several_are_in_hand() -> None:
    """Singular and plural."""
    work = marked(happened("hung", "2a"), happened("cut", "1", "3"))
    assert tell_work(begun_job(), begun_layout(), work) == (
        "wall: one of six pieces hangs, in course 2.",
        "Two pieces are cut and do not hang: 1a and 3a.",
    )
    assert tell_work(begun_job(), begun_layout(), marked(happened("cut", "1")))[0] == (
        "wall: none of six pieces hangs."
    )


def test_a_mark_says_what_is_left_of_the_boards() -> None:
    """By length and width, or that nothing of use is."""
    work = marked(happened("cut", "1a", "2b"))
    assert tell_mark(work.marks[-1], TAPE) == (
        "Cut: 1a, 2b.",
        "Left of board A: nothing of use.",
        'Left of board long: 4\' 8" by 6" and 4\' 5-1/4" by 6-1/4".',
    )


def test_a_mark_says_where_a_course_ends_and_what_is_left_of_a_piece() -> None:
    """As read off the tape."""
    work = marked(happened("hung", "1", measured=Measured(edge_nm=nm(6.125))))
    assert 'wall: course 1 ends 6-1/8" from the start side.' in tell_mark(work.marks[-1], TAPE)
    work = marked(happened("miscut", "2b", length_nm=nm(36)))
    assert 'Left of piece 2b: 3\' 0" by 6".' in tell_mark(work.marks[-1], TAPE)


def test_boards_are_found_only_since_work_began() -> None:
    """Those of the tally at that time are not."""
    work = marked(happened("cut", "1"))
    assert found_since(begun_job(), work) == ()
    assert found_since(begun_job("X", "Y"), work) == ("X", "Y")
