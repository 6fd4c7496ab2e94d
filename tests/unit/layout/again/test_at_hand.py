"""The wood of a job in progress: whole boards, what is left of others, and pieces cut already."""

from dataclasses import replace

import pytest

from builders import board, job, nm, outline, piece, socket, wall
from plankwright.layout.again.at_hand import wood_at_hand
from plankwright.layout.capacity import UNLIMITED
from plankwright.layout.plan import Stick
from plankwright.model import CutPiece, Part, Piece, Rules, Standing, Surface

RULES = Rules(expansion_gap_nm=0)
WALL = wall(96, 24)
GABLE = wall(96, 24, outline=outline((0, 0), (96, 0), (72, 24), (24, 24)))
BOARDS = [board(name, 97, 6.25) for name in ("A", "B", "C")]


def part(along: tuple[float, float], across: tuple[float, float] = (0, 6.25)) -> Part:
    """Give a part of board A."""
    return Part(
        board_id="A",
        along_from_nm=nm(along[0]),
        along_to_nm=nm(along[1]),
        across_from_nm=nm(across[0]),
        across_to_nm=nm(across[1]),
    )


def told(*sticks: Stick) -> list[tuple[int, float, float]]:
    """Give for each stick its board, and from where to where it lies along it."""
    return [(stick.board, stick.along_from / nm(1), stick.along_to / nm(1)) for stick in sticks]


def in_hand(
    surface: Surface, one: Piece, *, plain: bool = False, on: bool = False
) -> list[tuple[int, float, float]]:
    """Give what can be made of one piece in hand; with its own place still there or not."""
    work = job(surface, BOARDS, RULES)
    cut = CutPiece(surface_id="wall", piece=one, plain=plain)
    left, low = one.place.left, one.place.bottom
    places = {("wall", left, one.place.right, low)} if on else set()
    found = wood_at_hand(work, Standing(cut=(cut,), sawn=("A",)), UNLIMITED, ("B", "C"), places)
    assert set(found.pieces) == set(found.stock)
    assert bool(found.only_at) == (on and told(*found.stock) != [] and found.only_at != {})
    return told(*found.stock)


def test_boards_that_nobody_has_touched_are_whole() -> None:
    """Those that are held back are not to be used."""
    found = wood_at_hand(job(WALL, BOARDS, RULES), Standing(), UNLIMITED, ("B",), ())
    assert told(*found.stock) == [(0, 0.5, 96.5), (2, 0.5, 96.5)]
    assert found.pieces == {}


def test_boards_too_short_to_butt_are_there_for_runs_that_are_as_short() -> None:
    """Eleven inches clear: of no use beside another piece, but for a run of ten."""
    stub = board("C", 12, 6.25)
    work = job(WALL, [*BOARDS[:2], stub], RULES)
    assert told(*wood_at_hand(work, Standing(), UNLIMITED, ("A", "B"), ()).stock) == []
    found = wood_at_hand(work, Standing(), UNLIMITED, ("A", "B"), (), shortest=nm(10))
    assert told(*found.stock) == [(2, 0.5, 11.5)]


def test_of_a_board_that_was_sawn_only_its_rests_are_there() -> None:
    """A sawn end needs no trim, and a ripped edge is straight."""
    standing = Standing(left=(part((40, 97), (2, 6.25)),), sawn=("A", "B"), lost=("B",))
    found = wood_at_hand(job(WALL, BOARDS, RULES), standing, UNLIMITED, (), ())
    assert told(*found.stock) == [(0, 40, 96.5), (2, 0.5, 96.5)]
    assert (found.stock[0].across_from, found.stock[0].across_to) == (nm(2), nm(6.125))


def test_a_plain_piece_in_hand_is_a_stick() -> None:
    """As long as it was cut, also when it is short."""
    one = piece(WALL, "1a A", (0, 12), (0, 6))
    assert in_hand(WALL, one) == [(0, 0.5, 12.5)]


def test_a_piece_cut_wrong_is_what_is_sound_of_it() -> None:
    """Cut too long, it reaches into what would have been trimmed off."""
    one = replace(piece(WALL, "1a A", (0, 96), (0, 6)), along_to_nm=nm(97))
    assert in_hand(WALL, one, plain=True) == [(0, 0.5, 96.5)]


def test_a_notched_piece_fits_its_own_place_or_gives_what_lies_beside_the_notch() -> None:
    """The longer side of the socket."""
    surface = wall(96, 24, cut_outs=(socket(30, 2, 32, 4),))
    one = piece(surface, "1a A", (0, 96), (0, 6))
    assert in_hand(surface, one, on=True) == [(0, 0.5, 96.5)]
    assert in_hand(surface, one) == [(0, 32.5, 96.5)]


def test_a_sloped_piece_gives_what_lies_between_its_slopes() -> None:
    """Under a gable that rises one in one."""
    one = piece(GABLE, "2a A", (6, 90), (6, 12))
    assert in_hand(GABLE, one, on=True) == [(0, 0.5, 84.5)]
    assert in_hand(GABLE, one) == [(0, 6.5, 78.5)]


def test_a_point_gives_nothing() -> None:
    """Nowhere is it as wide as its board."""
    peak = wall(96, 24, outline=outline((0, 0), (96, 0), (48, 24)))
    assert in_hand(peak, piece(peak, "4a A", (36, 60), (18, 24))) == []


@pytest.mark.parametrize("name", ["A", "gone"])
def test_a_piece_of_a_board_that_is_not_in_the_tally_is_left_out(name: str) -> None:
    """Somebody took the row out."""
    one = replace(piece(WALL, "1a A", (0, 40), (0, 6)), board_id=name)
    cut = CutPiece(surface_id="wall", piece=one)
    found = wood_at_hand(job(WALL, BOARDS[:1], RULES), Standing(cut=(cut,), sawn=(name,)), UNLIMITED, (), ())
    assert len(found.pieces) == (name == "A")
