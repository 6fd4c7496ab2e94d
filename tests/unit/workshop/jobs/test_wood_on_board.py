"""A piece is cut where it takes the fewest others their wood, wastes least, and shows no blemish."""

from dataclasses import replace
from typing import Any

import pytest

from builders import board, flaw, nm
from in_progress import RULES, WALL, begun_job, begun_layout, happened, marked
from plankwright.layout.parting import PieceKey
from plankwright.model import (
    NOTHING_DONE,
    Board,
    EdgeKind,
    EdgeProfile,
    Face,
    Job,
    Part,
    Severity,
    Standing,
)
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import laid_piece
from plankwright.workshop.jobs.wood_on_board import Asked, Wood, wood_on


def part(along: tuple[float, float], across: tuple[float, float] = (0.125, 6.125)) -> Part:
    """Give a part of board X."""
    return Part(
        board_id="X",
        along_from_nm=nm(along[0]),
        along_to_nm=nm(along[1]),
        across_from_nm=nm(across[0]),
        across_to_nm=nm(across[1]),
    )


def wood(
    spare: Board,
    label: str = "2b",
    *,
    staying: tuple[Part, ...] = (),
    others: dict[PieceKey, Part] | None = None,
    standing: Standing = NOTHING_DONE,
    concealed: tuple[tuple[int, int], ...] = (),
    **more: Any,  # noqa: ANN401 - any further field of the job
) -> Wood:
    """Give the wood for a piece of the job in progress: 2b is 40 inches, 2a 56, 3a 96."""
    boards = [each for each in begun_job().boards if each.id != spare.id]
    work_on: Job = replace(begun_job(), boards=(*boards, spare), **more)
    place = laid_piece(work_on, begun_layout(), standing, ("wall", label))
    asked = Asked(place=place, concealed=concealed, staying=staying, others=others or {})
    return wood_on(work_on, standing, spare, asked)


def starts(found: Wood) -> float:
    """Give where along its board a piece begins. [in]"""
    return found.part.along_from_nm / nm(1)


def test_it_is_cut_from_the_end_that_leaves_the_most_of_use() -> None:
    """Behind the end trim and the straightened edge."""
    found = wood(board("X", 97, 6.25))
    assert found.part == part((0.5, 40.5))
    assert (found.face, found.turned, found.loses) == (Face.FRONT, False, ())
    # 55-7/8 inches are left beyond it, all of use: what is wasted is the saw's eighth.
    assert found.waste_nm2 == nm(0.125) * nm(6)


def test_it_is_cut_beside_what_is_cut_from_the_board_already() -> None:
    """With room for the saw: beyond it along the board, or else beside it."""
    others = {("wall", "5a"): part((0.5, 50.5))}
    assert starts(wood(board("X", 97, 6.25), others=others)) == 50.625
    beside = wood(board("X", 60, 12.5), others=others)
    assert (beside.part, beside.loses) == (part((0.5, 40.5), (6.25, 12.25)), ())


def test_it_takes_the_wood_of_as_few_as_can_be() -> None:
    """And never that of what stays."""
    first, second, third = part((0.5, 20.5)), part((20.625, 40.625)), part((40.75, 96))
    spare = board("X", 97, 6.25)
    found = wood(spare, others={("wall", "5a"): first, ("wall", "5b"): second, ("wall", "5c"): third})
    assert found.loses == (("wall", "5c"),)
    assert wood(spare, others={("wall", "5a"): first, ("wall", "5b"): second}, staying=(third,)).loses == (
        ("wall", "5a"),
        ("wall", "5b"),
    )
    with pytest.raises(RefusedError, match="leave too little of board X for 2b"):
        wood(spare, others={("wall", "5a"): first}, staying=(part((40, 60)),))


def test_lost_wood_is_gone_round() -> None:
    """Whatever side of it is long enough."""
    assert starts(wood(board("X", 97, 6.25, flaws=(flaw(30, 32),)))) in {32.0, 56.5}
    assert starts(wood(board("X", 97, 6.25, flaws=(flaw(0, 5), flaw(50, 52))))) in {52.0, 56.5}


def test_a_blemish_is_gone_round_or_turned_away() -> None:
    """Beside it, or with the other face in sight; anything goes where the rules say so."""
    stain = flaw(20, 22, Severity.BLEMISH)
    assert starts(wood(board("X", 97, 6.25, flaws=(stain,)))) in {22.0, 56.5}
    front = replace(stain, face=Face.FRONT)
    assert wood(board("X", 41.5, 6.25, flaws=(front,))).face is Face.BACK
    milled = board(
        "X",
        41.5,
        6.25,
        flaws=(front,),
        profile=EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25)),
    )
    with pytest.raises(RefusedError, match="a blemish would show"):
        wood(milled)


def test_a_blemish_may_hang_behind_a_fixture() -> None:
    """2b hangs from 56 to 96 inches; the stain lies at the far end of its board, or is turned there."""
    near, far = (flaw(at, at + 2, Severity.BLEMISH) for at in (4, 35))
    hides = ((nm(56), nm(64)),)
    for stain in (near, far):
        found = wood(board("X", 41, 6.25, flaws=(stain,)), concealed=hides)
        place = replace(
            laid_piece(begun_job(), begun_layout(), NOTHING_DONE, ("wall", "2b")).piece,
            face=found.face,
            turned=found.turned,
        )
        from_end = stain.start_nm - found.part.along_from_nm
        left = 40 * nm(1) - from_end - nm(2) if place.marked_end_last(WALL.start) else from_end
        assert nm(56) + left + nm(2) <= nm(64)
    with pytest.raises(RefusedError, match="a blemish would show"):
        wood(board("X", 41, 6.25, flaws=(flaw(20, 22, Severity.BLEMISH),)), concealed=hides)


def test_the_wide_end_of_a_tapered_board_will_do() -> None:
    """Where the narrow one would not."""
    found = wood(board("X", 97, 5, width_end_nm=nm(8)))
    assert starts(found) == 56.5


def test_of_a_board_that_was_sawn_only_what_is_left_can_be_had() -> None:
    """The rest of the long one beyond 2b, which is cut."""
    standing = marked(happened("cut", "2b")).standing
    found = wood(begun_job().board("long"), "4a", standing=standing)
    assert any(rest.holds(found.part) for rest in standing.left)


def test_a_piece_may_be_a_little_narrower_than_its_course() -> None:
    """As much as the rules allow."""
    thirtysecond = replace(RULES, width_tolerance_nm=nm(1 / 32))
    found = wood(board("X", 97, 6.25 - 1 / 32), rules=thirtysecond)
    assert found.part.width_nm == nm(6) - nm(1 / 32)
    with pytest.raises(RefusedError, match="of width for 2b; course 2 takes 6"):
        wood(board("X", 97, 6.25 - 1 / 16), rules=thirtysecond)
