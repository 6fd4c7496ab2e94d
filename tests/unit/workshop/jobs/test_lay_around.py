"""A job is laid out around what is wished: that holds, and the rest changes as little as can be."""

from dataclasses import replace
from typing import Any

import pytest

from builders import board, course, flaw, job, layout, nm, piece, rectangle, surface_layout, wall
from corner import corner_job, corner_layout
from in_progress import Measured, begun_job, begun_layout, happened, marked
from plankwright.check import check_layout, faults, recount
from plankwright.errors import LayoutRefusedError
from plankwright.layout import Effort, Result, Watch
from plankwright.layout.again import ChangeKind, lay_again
from plankwright.model import (
    Course,
    Direction,
    Edge,
    EdgeTreatment,
    Framing,
    Job,
    Layout,
    Rules,
    Standing,
    Surface,
    Work,
    part_of,
)
from plankwright.workshop.go_together import BoardsMissingError, OtherLayoutError
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.lay_around import LaidAround, lay_around
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from plankwright.workshop.mark_work import begin_work
from porch import porch_job, porch_layout
from village import small_job, small_layout, spoilt_layout
from wishing import broken, piece_at

MOMENT = Effort(name="moment", seconds=2)
PLAIN = Rules(expansion_gap_nm=0)


def wish(label: str, board_id: str, surface_id: str = "wall") -> PieceWish:
    """Name a piece and a board."""
    return PieceWish(surface_id=surface_id, label=label, board_id=board_id)


def around(
    work_on: Job,
    before: Layout,
    wishes: Wishes,
    work: Work | None = None,
    again: Any = lay_again,  # noqa: ANN401 - the real one, or what stands in for it
) -> LaidAround:
    """Lay out around wishes."""
    done = work or begin_work(work_on)
    return lay_around(work_on, before, done, wishes, again=again, effort=MOMENT)


def demand_right(laid: LaidAround, work_on: Job, before: Layout, work: Work | None = None) -> None:
    """Have every rule hold, and all that was granted."""
    standing = (work or begin_work(work_on)).standing
    assert not faults(check_layout(work_on, laid.result.layout, standing))
    assert list(broken(laid.wishes, before, laid.result.layout, standing)) == []


def boards_of(laid: Layout) -> dict[str, str]:
    """Give the board of each piece by its label."""
    return {each.label: each.board_id for each in laid.pieces}


def test_what_stays_stays_while_a_board_is_left_out() -> None:
    """Though nothing hangs below it; only what came from that board is laid out anew."""
    wishes = Wishes(kept=(wish("3a", "C"), wish("4b", "long")), without=("B",))
    laid = around(begun_job("X"), begun_layout(), wishes)
    demand_right(laid, begun_job("X"), begun_layout())
    assert laid.wishes == wishes
    assert laid.result.layout.covers_everything
    kinds = {change.after.label: change.kind for change in laid.changes if change.after is not None}
    assert [label for label, kind in kinds.items() if kind is not ChangeKind.SAME] == ["2a"]
    assert laid.told == ("As wished: 3a stays where it is; 4b stays where it is; without board B.",)


def test_a_board_comes_where_it_is_wished() -> None:
    """Nothing else is otherwise, and it is not marked as hung or cut."""
    laid = around(small_job(), small_layout(), Wishes(put=(wish("1a", "C"),)))
    demand_right(laid, small_job(), small_layout())
    assert boards_of(laid.result.layout) == {"1a": "C", "2a": "B"}
    assert [change.kind for change in laid.changes] == [ChangeKind.OTHER_BOARD, ChangeKind.SAME]
    again = around(small_job(), laid.result.layout, Wishes(put=(wish("1a", "C"),), without=("B",)))
    assert boards_of(again.result.layout) == {"1a": "C", "2a": "A"}


def test_pieces_that_lose_their_wood_are_laid_out_anew() -> None:
    """The long board is wished for 1a: 2b and 4b were cut from it."""
    laid = around(begun_job("X", "Y", "Z"), begun_layout(), Wishes(put=(wish("1a", "long"),)))
    demand_right(laid, begun_job("X", "Y", "Z"), begun_layout())
    assert laid.result.layout.covers_everything
    assert boards_of(laid.result.layout)["1a"] == "long"


def test_two_wishes_can_share_a_board() -> None:
    """The wide one is ripped for both."""
    wishes = Wishes(put=(wish("1a", "wide"), wish("3a", "wide")))
    laid = around(begun_job(), begun_layout(), wishes)
    demand_right(laid, begun_job(), begun_layout())
    assert laid.wishes == wishes
    assert [boards_of(laid.result.layout)[label] for label in ("1a", "3a")] == ["wide", "wide"]


def test_courses_take_other_heights_where_the_boards_ask_for_it() -> None:
    """Twelve inches in two courses become three; what stays keeps its place, and that is told."""
    surface = wall(96, 18, framing=Framing(solid=True))
    work_on = job(
        surface,
        [*(board(name, 97, 6.25) for name in "ABC"), *(board(name, 97, 4.25) for name in "xyz")],
        PLAIN,
    )
    rows = [
        course(at, (6 * at - 6, 6 * at), piece(surface, f"{at}a {name}", (0, 96), (6 * at - 6, 6 * at)))
        for at, name in enumerate("ABC", start=1)
    ]
    before = scored(work_on, surface, *rows)
    laid = around(work_on, before, Wishes(kept=(wish("1a", "A"),), without=("B", "C")))
    demand_right(laid, work_on, before)
    assert laid.result.layout.covers_everything
    (upper,) = laid.result.layout.surfaces
    assert [row.height_nm for row in upper.courses] == [nm(6), nm(4), nm(4), nm(4)]
    assert any(change.kind is ChangeKind.NEW for change in laid.changes)


def test_what_stays_bare_is_told() -> None:
    """Whoever wished so has the layout from before still."""
    laid = around(small_job(), small_layout(), Wishes(kept=(wish("1a", "A"),), without=("B", "C")))
    demand_right(laid, small_job(), small_layout())
    assert boards_of(laid.result.layout) == {"1a": "A"}
    assert laid.told == (
        "As wished: 1a stays where it is; without board B; without board C.",
        "So 3.3 sq ft stays bare that was covered before; the layout from before is kept as well.",
    )
    assert laid.result.wanted
    more = around(small_job(), laid.result.layout, Wishes(without=("A", "B", "C")))
    assert "So 6.7 sq ft stays bare instead of 3.3 sq ft" in more.told[-1]


def test_a_strip_that_was_bare_beside_what_stays_is_still_told() -> None:
    """Nobody could help it if that hung; but it does not."""
    surface = wall(96, 6, framing=Framing(solid=True))
    work_on = job(surface, [board("A", 95.5, 6.25)], PLAIN)
    laid = surface_layout(
        surface,
        course(1, (0, 6), piece(surface, "1a A", (0, 94.5), (0, 6))),
        bare=[rectangle(94.5, 0, 96, 6)],
    )
    before = layout(replace(laid, score=recount(work_on, laid)))
    around_it = around(work_on, before, Wishes(kept=(wish("1a", "A"),)))
    demand_right(around_it, work_on, before)
    assert not around_it.result.layout.covers_everything


def test_a_board_that_was_measured_anew_is_heeded_first() -> None:
    """What cannot come from it any more is laid out anew, and the rest around the wishes as ever."""
    rotten = replace(begun_job().board("C"), flaws=(flaw(50, 52),))
    boards = tuple(rotten if each.id == "C" else each for each in begun_job("X").boards)
    work_on = replace(begun_job("X"), boards=boards)
    wishes = Wishes(kept=(wish("3a", "C"), wish("4b", "long")))
    laid = around(work_on, begun_layout(), wishes)
    demand_right(laid, work_on, begun_layout())
    assert laid.wishes == Wishes(kept=(wish("4b", "long"),))
    assert laid.result.layout.covers_everything


def test_what_cannot_be_granted_is_dropped_and_told() -> None:
    """It is no error, and the rest is granted."""
    wishes = Wishes(kept=(wish("9z", "A"),), put=(wish("2a", "gone"),), without=("C",))
    laid = around(small_job(), small_layout(), wishes)
    demand_right(laid, small_job(), small_layout())
    assert laid.wishes == Wishes(without=("C",))
    assert laid.told[0] == "As wished: without board C."
    assert len(laid.told) == 3


def test_nothing_wished_changes_nothing() -> None:
    """Nor is anything told."""
    laid = around(porch_job(), porch_layout(), NO_WISHES)
    assert laid.told == ()
    assert boards_of(laid.result.layout) == boards_of(porch_layout())


@pytest.mark.parametrize("label", [each.label for each in porch_layout().pieces])
def test_any_piece_of_the_porch_can_stay(label: str) -> None:
    """Under a slope, around a box, behind a bench, with milled edges; while the spare board is left out."""
    now = piece_at(porch_layout(), ("porch", label))
    wishes = Wishes(kept=(wish(label, now.board_id, "porch"),), without=("H08",))
    laid = around(porch_job(), porch_layout(), wishes)
    demand_right(laid, porch_job(), porch_layout())
    assert laid.result.layout.covers_everything
    assert laid.wishes == wishes


def test_a_milled_board_gets_the_edges_that_its_new_place_asks_for() -> None:
    """Its tongue meets a square edge there, and what it was next to before is as found again."""
    boards = {each.id: each for each in porch_job().boards}
    milled = replace(boards["H05"], id="H09")
    work_on = replace(porch_job(), boards=(*porch_job().boards, milled))
    laid = around(work_on, porch_layout(), Wishes(put=(wish("2a", "H09", "porch"),)))
    demand_right(laid, work_on, porch_layout())
    put = piece_at(laid.result.layout, ("porch", "2a"))
    assert (put.board_id, put.far) == ("H09", EdgeTreatment.TONGUE_OFF)


def test_a_thinner_board_is_shimmed_beside_one_that_stays() -> None:
    """As far as the rules let it be."""
    thin = board("thin", 97, 6.25, thickness_nm=nm(0.625))
    work_on = replace(
        begun_job(),
        boards=(*begun_job().boards, thin),
        rules=replace(begun_job().rules, shim_up_to_nm=nm(0.125)),
    )
    laid = around(work_on, begun_layout(), Wishes(kept=(wish("2b", "long"),), put=(wish("2a", "thin"),)))
    demand_right(laid, work_on, begun_layout())
    assert laid.result.layout.covers_everything
    assert piece_at(laid.result.layout, ("wall", "2a")).shim_nm == nm(0.0625)
    alone = around(work_on, begun_layout(), Wishes(put=(wish("2a", "thin"),)))
    demand_right(alone, work_on, begun_layout())
    assert boards_of(alone.result.layout)["2b"] == "long"


def test_what_stays_goes_along_with_a_course_that_came_out_high() -> None:
    """It stays where it is along its course, on what hangs below."""
    work = marked(happened("hung", "1"), happened("hung", "2", measured=Measured(off_nm=nm(0.25))))
    before = begun_layout()
    wishes = Wishes(kept=(wish("3a", "C"), wish("4b", "long")), without=("D",))
    laid = around(begun_job("X"), before, wishes, work)
    demand_right(laid, begun_job("X"), before, work)
    assert laid.wishes == wishes
    assert laid.result.layout.covers_everything
    above = piece_at(laid.result.layout, ("wall", "3a")).place
    assert (above.left, above.bottom) == (0, nm(12.25))


def test_a_piece_in_hand_can_stay() -> None:
    """It is laid out as it was cut."""
    work = marked(happened("cut", "3a"))
    laid = around(begun_job("X"), begun_layout(), Wishes(kept=(wish("3a", "C"),), without=("X",)), work)
    demand_right(laid, begun_job("X"), begun_layout(), work)
    assert part_of(piece_at(laid.result.layout, ("wall", "3a"))) == work.standing.cut[0].part


def test_of_a_board_left_out_what_is_cut_already_is_hung_all_the_same() -> None:
    """Only nothing more is cut from it."""
    work = marked(happened("cut", "2b"))
    laid = around(begun_job("X"), begun_layout(), Wishes(without=("long",)), work)
    demand_right(laid, begun_job("X"), begun_layout(), work)
    assert laid.wishes == Wishes(without=("long",))
    assert laid.result.layout.covers_everything
    now = boards_of(laid.result.layout)
    assert [label for label, board_id in now.items() if board_id == "long"] == ["2b"]


def test_courses_that_run_round_a_corner_still_meet() -> None:
    """A piece of either wall stays, and what ran round from it still does."""
    wishes = Wishes(kept=(wish("2a", "north2", "north"),), without=("east2", "north3"))
    laid = around(corner_job(), corner_layout(), wishes)
    demand_right(laid, corner_job(), corner_layout())
    assert laid.wishes == wishes
    assert laid.result.layout.covers_everything


@pytest.mark.parametrize("start", [Edge.LEFT, Edge.RIGHT])
def test_upright_courses_are_laid_out_around_wishes_too(start: Edge) -> None:
    """From whichever side they start."""
    surface = wall(18, 96, courses_run=Direction.VERTICAL, start=start, framing=Framing(solid=True))
    boards = [board(name, 97, 6.25) for name in "ABCDE"]
    rows = [
        course(at, (6 * at - 6, 6 * at), piece(surface, f"{at}a {name}", (0, 96), (6 * at - 6, 6 * at)))
        for at, name in enumerate("ABC", start=1)
    ]
    work_on = job(surface, boards, PLAIN)
    before = scored(work_on, surface, *rows)
    wishes = Wishes(kept=(wish("2a", "B"),), put=(wish("3a", "D"),), without=("A",))
    laid = around(work_on, before, wishes)
    demand_right(laid, work_on, before)
    assert boards_of(laid.result.layout) == {"1a": "E", "2a": "B", "3a": "D"} or boards_of(
        laid.result.layout
    ) == {"1a": "C", "2a": "B", "3a": "D"}


def test_a_layout_that_does_not_heed_a_wish_is_refused() -> None:
    """Whoever made it; and so is one that breaks a rule."""
    wishes = Wishes(put=(wish("1a", "C"),))
    for made in (small_layout(), spoilt_layout()):
        with pytest.raises(LayoutRefusedError):
            around(small_job(), small_layout(), wishes, again=lambda *_, made=made, **__: Result(layout=made))
    with pytest.raises(LayoutRefusedError):
        around(
            small_job(),
            small_layout(),
            Wishes(without=("A",)),
            again=lambda *_, **__: Result(layout=small_layout()),
        )


def test_a_layout_that_no_longer_goes_with_the_job_is_not_laid_out_around() -> None:
    """It is said what to do first."""
    wider = replace(small_job(), rules=replace(PLAIN, narrowest_course_nm=nm(5.5)))
    with pytest.raises(RefusedError, match="no longer goes with the surfaces and rules as they are now"):
        around(wider, small_layout(), NO_WISHES)


def test_boards_and_surfaces_must_be_those_of_the_work() -> None:
    """As for whatever is laid out anew."""
    with pytest.raises(OtherLayoutError):
        around(small_job(), replace(small_layout(), surfaces=()), NO_WISHES)
    work = marked(happened("hung", "1"))
    poor = replace(begun_job(), boards=begun_job().boards[1:])
    with pytest.raises(BoardsMissingError):
        around(poor, begun_layout(), NO_WISHES, work)


def test_a_piece_of_a_board_that_is_gone_from_the_tally_is_laid_out_anew() -> None:
    """Around what is wished."""
    fewer = replace(begun_job("X"), boards=tuple(each for each in begun_job("X").boards if each.id != "C"))
    laid = around(fewer, begun_layout(), Wishes(kept=(wish("1a", "A"), wish("3a", "C"))))
    demand_right(laid, fewer, begun_layout())
    assert laid.wishes == Wishes(kept=(wish("1a", "A"),))
    assert laid.result.layout.covers_everything


def test_what_is_asked_of_the_search_reaches_it() -> None:
    """Effort, seed and whoever watches."""
    called: dict[str, Any] = {}

    def again(job: Job, layout: Layout, standing: Standing, **more: Any) -> Result:  # noqa: ANN401, ARG001 - as called
        called.update(more)
        return Result(layout=layout)

    watch = Watch(stopped=lambda: True)
    work = begin_work(small_job())
    lay_around(small_job(), small_layout(), work, NO_WISHES, again=again, effort=MOMENT, seed=5, watch=watch)
    assert called == {"effort": MOMENT, "seed": 5, "watch": watch}


def scored(work_on: Job, surface: Surface, *courses: Course) -> Layout:
    """Give a layout with its score."""
    laid = surface_layout(surface, *courses)
    return layout(replace(laid, score=recount(work_on, laid)))
