"""What is written on pieces: course and letter, and never the same on two of them."""

from dataclasses import replace

from builders import course, piece, wall
from plankwright.layout.labels import Naming, letters, name_pieces
from plankwright.model import Course, Piece, part_of

WALL = wall(96, 24)


def one(
    name: str, along: tuple[float, float], low: float = 0, at: tuple[float, float] = (0.5, 0.125)
) -> Piece:
    """Give a piece; a label of - stands for none yet."""
    made = piece(WALL, name, along, (low, low + 6), at=at)
    return replace(made, label="") if made.label == "-" else made


def labels(*courses: Course, naming: Naming = Naming()) -> list[str]:  # noqa: B008 - frozen
    """Give the labels that courses get."""
    return [each.label for row in name_pieces(courses, naming) for each in row.pieces]


def test_letters_go_on_after_z() -> None:
    """As columns of a spreadsheet do."""
    assert [letters(index) for index in (0, 1, 25, 26, 27, 51, 52, 701, 702)] == [
        *("a", "b", "z", "aa", "ab", "az", "ba", "zz", "aaa")
    ]


def test_a_course_is_lettered_from_its_start() -> None:
    """With its number before each letter."""
    rows = (
        course(1, (0, 6), one("- A", (0, 40)), one("- B", (40, 96))),
        course(2, (6, 12), one("- C", (0, 96), 6)),
    )
    assert labels(*rows) == ["1a", "1b", "2a"]


def test_what_hangs_keeps_its_label_and_nothing_else_gets_it() -> None:
    """Whatever the number of its course is by now."""
    row = course(2, (0, 6), one("- A", (0, 40)), one("2a B", (40, 96)))
    assert labels(row) == ["2b", "2a"]


def test_what_is_in_hand_keeps_what_is_written_on_it() -> None:
    """Also in another course; cut shorter, it is another piece."""
    whole, shorter = one("- A", (0, 40)), one("- A", (0, 30))
    naming = Naming(in_hand={part_of(whole): "7c"})
    assert labels(course(1, (0, 6), whole), naming=naming) == ["7c"]
    assert labels(course(1, (0, 6), shorter), naming=naming) == ["1a"]


def test_a_piece_in_the_place_of_another_takes_its_label() -> None:
    """So that the sheets differ by the board alone; unless the other is still about."""
    before = (course(1, (0, 6), one("1a A", (0, 40)), one("1b B", (40, 96))),)
    row = course(1, (0, 6), one("- A", (0, 40)), one("- C", (40, 96)))
    assert labels(row, naming=Naming(before=before)) == ["1a", "1b"]
    in_hand = {part_of(before[0].pieces[1]): "1b"}
    assert labels(row, naming=Naming(before=before, in_hand=in_hand)) == ["1a", "1c"]


def test_the_same_wood_in_another_place_of_its_course_keeps_its_label() -> None:
    """And what is new gets letters that no piece of the course had."""
    before = (course(1, (0, 6), one("1a A", (0, 40)), one("1b B", (40, 96))),)
    row = course(1, (0, 6), one("- C", (0, 24)), one("- D", (24, 56)), one("- A", (56, 96)))
    assert labels(row, naming=Naming(before=before)) == ["1c", "1d", "1a"]
