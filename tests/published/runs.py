"""One-dimensional cutting stock as a wall: each item a course of its own length, every board alike."""

from collections.abc import Iterable

from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import Board, Framing, Job, JointPolicy, Point, Rules, Surface

_HEIGHT = 100 * MILLIMETRE


def stairs(items: Iterable[int], stock: int, boards: int) -> Job:
    """Make a wall whose courses are just as long as the items.

    Its outline is a stair with one item a step. Boards are as wide as a step is high, there is no kerf, gap
    or trim, and no joint is allowed: the wall can be covered just when the items can be cut from the boards.

    Parameters
    ----------
    items
        Lengths to cut. [mm]
    stock
        Length of a board. [mm]
    boards
        How many boards there are.
    """
    steps = [length * MILLIMETRE for length in sorted(items, reverse=True)]
    corners: list[Point] = [(0, 0), (steps[0], 0)]
    for index, length in enumerate(steps):
        if corners[-1][0] != length:
            corners.append((length, index * _HEIGHT))
        if index + 1 == len(steps) or steps[index + 1] != length:
            corners.append((length, (index + 1) * _HEIGHT))
    corners.append((0, len(steps) * _HEIGHT))
    return Job(
        name="cutting stock",
        tape=TapeStyle(system=System.METRIC),
        surfaces=(Surface(id="stairs", outline=tuple(corners), framing=Framing(solid=True)),),
        boards=tuple(
            Board(
                id=f"B{number}",
                length_nm=stock * MILLIMETRE,
                width_start_nm=_HEIGHT,
                width_end_nm=_HEIGHT,
                thickness_nm=20 * MILLIMETRE,
            )
            for number in range(1, boards + 1)
        ),
        rules=Rules(
            crosscut_kerf_nm=0,
            rip_kerf_nm=0,
            straight_edge_loss_nm=0,
            end_trim_nm=0,
            expansion_gap_nm=0,
            width_tolerance_nm=0,
            gap_tolerance_nm=0,
            joints=JointPolicy.NEVER,
            shortest_piece_nm=10 * MILLIMETRE,
            narrowest_course_nm=_HEIGHT,
        ),
    )
