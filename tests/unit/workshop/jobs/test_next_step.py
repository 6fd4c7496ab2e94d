"""Boards and courses come one at a time, in the order of hanging, with what is done in its place."""

from plankwright.model import NOTHING_DONE, Standing
from plankwright.workshop.jobs.mark_kept import mark_kept
from plankwright.workshop.jobs.next_step import (
    BoardStep,
    SurfaceStep,
    board_after,
    board_before,
    board_named,
    boards_to_cut,
    course_after,
    course_numbered,
    surfaces_to_hang,
)
from plankwright.workshop.mark_work import Happened
from two_walls import events, walls_by, walls_job, walls_layout, walls_worked


def standing_after(*steps: tuple[Happened, ...]) -> Standing:
    """Give how far the job is after some steps."""
    kept = walls_worked()
    for step in steps:
        kept = mark_kept(kept, walls_job(), walls_by(), step)
    return NOTHING_DONE if kept.work is None else kept.work.standing


def boards(*steps: tuple[Happened, ...]) -> tuple[BoardStep, ...]:
    """Give the boards after some steps."""
    return boards_to_cut(walls_job(), walls_layout(), standing_after(*steps))


def surfaces(*steps: tuple[Happened, ...]) -> tuple[SurfaceStep, ...]:
    """Give the surfaces after some steps."""
    return surfaces_to_hang(walls_job(), walls_layout(), standing_after(*steps))


def test_boards_come_as_their_pieces_are_hung() -> None:
    """Each with all that comes out of it, whatever surface it is for."""
    assert [(board.id, board.names) for board in boards()] == [
        ("A", ("north 1a",)),
        ("B", ("north 2a",)),
        ("L", ("north 2b", "south 1a")),
        ("D", ("south 2a",)),
    ]
    assert boards()[2].pieces == (("north", "2b"), ("south", "1a"))


def test_what_is_cut_stays_in_its_place_as_done() -> None:
    """Whether it hangs already or not."""
    after = boards(events("cut", "1a", on="north"), events("hung", "2a", on="north"))
    assert [(board.id, board.done) for board in after] == [
        ("A", True),
        ("B", True),
        ("L", False),
        ("D", False),
    ]


def test_a_board_that_is_cut_in_part_stands_there_twice() -> None:
    """As what was cut of it, and as what is left to be cut."""
    after = boards(events("cut", "2b", on="north"))
    assert [(board.id, board.names, board.done) for board in after if board.id.startswith("L")] == [
        ("L", ("north 2b",), True),
        ("L rest", ("south 1a",), False),
    ]


def test_the_board_that_is_asked_for_is_given_while_it_is_to_be_cut() -> None:
    """Otherwise the first that is; nothing once all are cut."""
    after = boards(events("cut", "1a", on="north"))
    assert [getattr(board_named(after, name), "id", None) for name in ("D", "A", "", "no such board")] == [
        "D",
        "B",
        "B",
        "B",
    ]
    done = boards(events("hung", "1", "2", on="north"), events("hung", "1", "2", on="south"))
    assert board_named(done, "A") is None


def test_one_steps_from_board_to_board() -> None:
    """Past those that are done, from the last to the first again, and no farther back than the first."""
    after = boards(events("cut", "2a", on="north"))
    assert [getattr(board_after(after, name), "id", None) for name in ("A", "L", "D")] == ["L", "D", "A"]
    assert [getattr(board_before(after, name), "id", None) for name in ("A", "L", "D")] == [None, "A", "L"]


def test_no_board_follows_the_only_one() -> None:
    """It is the last to be cut."""
    left = boards(
        events("cut", "1", "2", on="north"),
        events("cut", "1a", on="south"),
    )
    assert board_after(left, "D") is None


def test_courses_tell_what_hangs_and_what_is_cut() -> None:
    """Piece by piece; how a piece is hung is told until it hangs."""
    north, south = surfaces(events("hung", "2b", on="north"), events("cut", "1a", on="north"))
    assert [
        (course.number, [(step.label, step.hangs, step.cut, step.row is not None) for step in course.pieces])
        for course in north.courses
    ] == [
        (1, [("1a", False, True, True)]),
        (2, [("2a", False, False, True), ("2b", True, False, False)]),
    ]
    assert (north.hung, north.pieces, north.done) == (1, 3, False)
    assert [step.label for step in north.courses[1].to_hang] == ["2a"]
    assert (south.hung, south.pieces) == (0, 2)


def test_a_course_that_hangs_is_done() -> None:
    """The next one is the first that is left."""
    north, _ = surfaces(events("hung", "1", on="north"))
    assert north.courses[0].done
    assert north.courses[0].block is None
    assert course_numbered(north, None) == north.courses[1]
    assert course_numbered(north, 1) == north.courses[0]
    assert course_after(north, 2) is None


def test_a_surface_is_done_when_all_of_it_hangs() -> None:
    """Then no course is the next."""
    north, _ = surfaces(events("hung", "1", "2", on="north"))
    assert north.done
    assert course_numbered(north, None) is None


def test_the_course_after_the_last_is_the_first_that_is_left() -> None:
    """Somebody may have skipped it."""
    north, _ = surfaces()
    assert course_after(north, 1) == north.courses[1]
    assert course_after(north, 2) == north.courses[0]
