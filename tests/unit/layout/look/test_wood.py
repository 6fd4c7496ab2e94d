"""What boards give and what that spends."""

from dataclasses import replace

from builders import board, job, nm, studs, wall
from choosing import plain
from looking import Dresser, pieced
from plankwright.layout.look.wood import Wood
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from

WALL = wall(96, 12, framing=studs(*range(0, 97, 8)))
RULES = plain(
    crosscut_kerf_nm=nm(0.125), rip_kerf_nm=nm(0.125), shortest_piece_nm=nm(16), narrowest_course_nm=nm(2)
)


def _wood(*sizes: tuple[float, float]) -> tuple[Dresser, Wood]:
    """Give boards that nothing is cut from."""
    dresser = Dresser(job(WALL, [board(f"B{n}", *size) for n, size in enumerate(sizes)], RULES))
    return dresser, Wood(dresser.work, dresser.stock, dresser.faces, ())


def _part(dresser: Dresser, number: int, length: float, width: float, *, at: float = 0) -> Stick:
    stick = dresser.stock[number]
    return cut_from(stick, stick.along_from + nm(at), nm(length), stick.across_from, nm(width))


def _square_inches(spent: tuple[int, int, int]) -> tuple[float, float]:
    return spent[0] / nm(1) ** 2, spent[1] / nm(1) ** 2


def test_what_is_left_and_worth_keeping_is_not_spent() -> None:
    """Of 60 by 6 inches 40 are cut, and the 20 beyond lose the kerf; beside 4 inches too little is left."""
    dresser, wood = _wood((60, 6))
    assert _square_inches(wood.more_spent({0: (_part(dresser, 0, 40, 6),)})) == (40.125 * 6,) * 2
    assert _square_inches(wood.more_spent({0: (_part(dresser, 0, 40, 4.5),)})) == (40.125 * 6,) * 2
    assert _square_inches(wood.more_spent({0: (_part(dresser, 0, 50, 6),)})) == (360, 360)


def test_what_is_cut_otherwise_is_counted_from_what_is_cut_now() -> None:
    """Taking a change makes it what is cut now; changing back gives it all back."""
    dresser, wood = _wood((60, 6))
    wood.take({0: (_part(dresser, 0, 50, 6),)})
    assert wood.more_spent({0: (_part(dresser, 0, 60, 6),)})[:2] == (0, 0)
    assert _square_inches(wood.more_spent({0: ()})) == (-360, -360)


def test_to_begin_a_long_board_leaves_less_even_where_nothing_is_lost() -> None:
    """As much is spent, but what is left is shorter."""
    dresser, wood = _wood((32, 6), (96, 6))
    wood.take({0: (_part(dresser, 0, 32, 6),)})
    search, score, left = wood.more_spent({0: (), 1: (_part(dresser, 1, 31.875, 6),)})
    assert (search, score) == (0, 0)
    assert left > 0


def test_only_boards_whose_pieces_change_are_counted_anew() -> None:
    """Two pieces change places, and a third is cut longer."""
    boards = [board(f"B{n}", 96, 6) for n in range(3)]
    dresser, plan = pieced(WALL, [[(boards[0], 48), (boards[1], 48)], [(boards[2], 90)]], rules=RULES)
    wood = Wood(dresser.work, dresser.stock, dresser.faces, plan)
    first, second = plan[0].pieces
    exchanged = replace(
        plan[0], pieces=(replace(first, stick=second.stick), replace(second, stick=first.stick))
    )
    assert wood.changed([plan[0]], [exchanged]) == {}
    longer = _part(dresser, 2, 96, 6)
    grown = replace(plan[1], pieces=(PlannedPiece(longer, 0, nm(96)),))
    assert wood.changed(plan, [exchanged, grown]) == {2: (longer,)}


def test_another_part_is_cut_where_it_spends_least() -> None:
    """Beyond what is cut already, rather than from a piece that could still be longer."""
    dresser, wood = _wood((96, 6))
    assert wood.boards == (0,)
    taken = _part(dresser, 0, 48, 6)
    wood.take({0: (taken,)})
    assert wood.another(0, nm(40), nm(6)) == _part(dresser, 0, 40, 6, at=48.125)
    assert wood.another(0, nm(50), nm(6)) is None
    assert wood.another(0, nm(50), nm(6), without=[taken]) == _part(dresser, 0, 50, 6)
    beside = _part(dresser, 0, 40, 6)
    assert wood.another(0, nm(50), nm(6), without=[taken], beside=[beside]) == _part(
        dresser, 0, 50, 6, at=40.125
    )
    assert wood.another(0, nm(40), nm(7)) is None


def test_a_plan_is_read_with_all_its_courses() -> None:
    """Pieces of one board in several of them count together."""
    dresser, _ = _wood((96, 6))
    plan = tuple(
        PlannedCourse(nm(6 * n), nm(6 * n + 6), (PlannedPiece(_part(dresser, 0, 40, 6, at=at), 0, nm(40)),))
        for n, at in enumerate((0, 48))
    )
    wood = Wood(dresser.work, dresser.stock, dresser.faces, plan)
    assert wood.another(0, nm(16), nm(6)) is None
