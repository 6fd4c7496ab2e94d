"""Stretches of boards that are short but fill a run by themselves."""

from builders import board, job, nm, opening, wall
from plankwright.check import check_layout, faults
from plankwright.layout import Effort, lay_out
from plankwright.layout.short_runs import shortest_of_use
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.model import Framing, Rules, Surface

RULES = Rules(
    expansion_gap_nm=0, end_trim_nm=0, straight_edge_loss_nm=0, gap_tolerance_nm=0, width_tolerance_nm=0
)
SOLID = Framing(solid=True)


def beside_a_door() -> Surface:
    """Make a wall with ten inches to the right of a door."""
    return wall(60, 12, framing=SOLID, openings=[opening("door", 20, 0, 50, 12)])


def test_a_run_beside_an_opening_may_be_shorter_than_the_shortest_piece() -> None:
    """Ten inches, where pieces that butt are sixteen long at the least."""
    assert shortest_of_use([Strips(beside_a_door(), RULES)], RULES) == nm(10)


def test_no_longer_stretch_than_the_shortest_piece_is_asked_for() -> None:
    """A plain wall of sixty inches can be made of pieces of sixteen."""
    assert shortest_of_use([Strips(wall(60, 12, framing=SOLID), RULES)], RULES) == nm(16)
    assert shortest_of_use([], RULES) == nm(16)


def test_the_shortest_run_of_all_surfaces_counts() -> None:
    """One door in one of two walls is enough."""
    walls = [Strips(each, RULES) for each in (wall(60, 12, framing=SOLID), beside_a_door())]
    assert shortest_of_use(walls, RULES) == nm(10)


def test_stretches_down_to_that_length_are_sticks() -> None:
    """A board of twelve inches is one; one of nine is not."""
    assert whole_sticks(board("twelve", 12, 6), 0, RULES) == ()
    assert len(whole_sticks(board("twelve", 12, 6), 0, RULES, shortest=nm(10))) == 1
    assert whole_sticks(board("nine", 9, 6), 0, RULES, shortest=nm(10)) == ()


def test_short_boards_cover_short_runs() -> None:
    """Two boards of eleven inches hang beside the door, where the long ones would be too few."""
    pile = [board(f"long{place}", 20, 6) for place in range(2)] + [
        board(f"short{place}", 11, 6) for place in range(2)
    ]
    asked = job(beside_a_door(), pile, RULES)
    layout = lay_out(asked, effort=Effort(name="a moment", seconds=1)).layout
    assert layout.covers_everything
    assert not faults(check_layout(asked, layout))
