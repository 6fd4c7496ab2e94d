"""How far a job has come can only be what makes sense."""

import pytest

from builders import course, nm, piece, wall
from plankwright.model import (
    NOTHING_DONE,
    CutPiece,
    HungCourse,
    InvalidValueError,
    Part,
    Standing,
    part_of,
)

WALL = wall(96, 24)


def part(along: tuple[float, float], across: tuple[float, float] = (0, 6), board: str = "A") -> Part:
    """Give a part of a board, in inches."""
    return Part(
        board_id=board,
        along_from_nm=nm(along[0]),
        along_to_nm=nm(along[1]),
        across_from_nm=nm(across[0]),
        across_to_nm=nm(across[1]),
    )


def cut(name: str, along: tuple[float, float] = (0, 40), at: tuple[float, float] = (0.5, 0.125)) -> CutPiece:
    """Give a piece in hand."""
    return CutPiece(surface_id="wall", piece=piece(WALL, name, along, (0, 6), at=at))


def hung(number: int, low: float, *names: str) -> HungCourse:
    """Give a course that hangs, of pieces of forty inches."""
    pieces = (
        piece(WALL, name, (40 * place, 40 * place + 40), (low, low + 6)) for place, name in enumerate(names)
    )
    return HungCourse(surface_id="wall", course=course(number, (low, low + 6), *pieces))


def test_nothing_done_is_not_begun() -> None:
    """A board that broke, or a piece that hangs, is a beginning."""
    assert not NOTHING_DONE.begun
    assert Standing(sawn=("A",)).begun
    assert Standing(hung=(hung(1, 0, "1a A"),)).begun


def test_what_hangs_is_given_by_surface_from_the_start_side() -> None:
    """Whatever the order in which it was hung."""
    standing = Standing(hung=(hung(2, 6, "2a A", "2b B"), hung(1, 0, "1a C")))
    assert [row.number for row in standing.hung_on("wall")] == [1, 2]
    assert standing.hung_labels("wall") == {"1a", "2a", "2b"}
    assert standing.hung_on("other") == ()


def test_pieces_in_hand_are_among_what_is_left_of_their_board() -> None:
    """So that they can be cut again."""
    rest = part((60, 90))
    standing = Standing(cut=(cut("1a A"),), left=(rest, part((1, 2), board="B")), sawn=("A", "B"))
    assert standing.parts_of("A") == (rest, part((0.5, 40.5), (0.125, 6.125)))


def test_a_part_holds_what_lies_inside_it_and_meets_what_shares_wood_with_it() -> None:
    """Parts that only touch share none."""
    whole = part((0, 40))
    assert whole.holds(part((0, 40)))
    assert whole.holds(part((10, 20), (1, 2)))
    assert not whole.holds(part((10, 41)))
    assert not whole.holds(part((10, 20), board="B"))
    assert whole.meets(part((39, 60)))
    assert not whole.meets(part((40, 60)))
    assert not whole.meets(part((0, 40), (6, 7)))
    assert (whole.length_nm, whole.width_nm) == (nm(40), nm(6))


def test_a_piece_is_a_part_of_its_board() -> None:
    """Where it is cut."""
    assert part_of(cut("1a A").piece) == part((0.5, 40.5), (0.125, 6.125))


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda: part((4, 4)), "has no length"),
        (lambda: part((4, 5), (2, 2)), "has no width"),
        (lambda: Standing(cut=(cut("1a A"), cut("1a B")), sawn=("A", "B")), "bear one label"),
        (lambda: Standing(hung=(hung(1, 0, "1a A"), hung(2, 6, "1a B"))), "bear one label"),
        (lambda: Standing(cut=(cut("1a A"),)), "never sawn"),
        (lambda: Standing(lost=("A",)), "never sawn"),
        (lambda: Standing(cut=(cut("1a A"),), left=(part((30, 60)),), sawn=("A",)), "wood in common"),
        (lambda: HungCourse(surface_id="wall", course=course(1, (0, 6))), "nothing of the course hangs"),
    ],
)
def test_what_makes_no_sense_does_not_come_into_being(make: type, sentence: str) -> None:
    """With one sentence that says why."""
    with pytest.raises(InvalidValueError, match=sentence):
        make()
