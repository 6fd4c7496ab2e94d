"""Which nails, how many and where: never too deep, never in a keep-out, and what they hold."""

from dataclasses import replace

import pytest

from builders import nm, rectangle, wall
from plankwright.layout.hanging import grown
from plankwright.model import (
    Course,
    EdgeTreatment,
    Fastening,
    Framing,
    HungCourse,
    KeepOut,
    Rectangle,
    Standing,
    SurfaceKind,
)
from plankwright.trade.fasteners.facts import PROTECTED_DEPTH_NM
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.tell_nails import nails_leaf
from trade_jobs import STUDS, ceiling_job, tongued_job, tongued_layout, tongued_wall


def test_tongues_are_nailed_blind_and_ends_of_the_wall_through_the_face() -> None:
    """The starter both ways, the middle course at its tongue, the closing course through its face."""
    made = tongued_job()
    ways = {
        piece.label: [(one.blind, one.count) for one in piece.driven]
        for piece in plan_nails(made, tongued_layout(made)).pieces
    }
    assert ways == {"1a": [(True, 3), (False, 3)], "2a": [(True, 3)], "3a": [(False, 6)]}


def test_wide_tongued_boards_take_a_face_nail_as_well() -> None:
    """Over six inches; here by a course as wide as eight."""
    made = tongued_job()
    boards = tuple(replace(each, width_start_nm=nm(8), width_end_nm=nm(8)) for each in made.boards)
    laid = tongued_layout(made)
    (part,) = laid.surfaces
    first, second, third = part.courses
    courses = (first, _wider(second), _raised(third))
    laid = replace(laid, surfaces=(replace(part, courses=courses),))
    plan = plan_nails(replace(made, boards=boards), laid)
    assert [one.blind for one in plan.pieces[1].driven] == [True, False]


def test_a_board_whose_other_edge_nothing_holds_is_nailed_there_too() -> None:
    """On a board without a tongue: by a face nail near its groove at each member."""
    made = tongued_job()
    laid = tongued_layout(made)
    (part,) = laid.surfaces
    courses = tuple(
        replace(row, pieces=tuple(replace(one, near=EdgeTreatment.FACE_NAIL) for one in row.pieces))
        for row in part.courses
    )
    plan = plan_nails(made, replace(laid, surfaces=(replace(part, courses=courses),)))
    through = next(one for one in plan.pieces[1].driven if not one.blind)
    assert len(through.spots) == 3
    assert all(y < nm(0.25 + 6 + 3) for _, y in through.spots)


def test_over_an_opening_a_board_is_nailed_at_its_lower_edge_too() -> None:
    """Where the course between ends at 30 in: no tongue below the last stud, and none covered there."""
    made = tongued_job(wall(64, 24.5, framing=STUDS))
    laid = tongued_layout(made)
    (part,) = laid.surfaces
    first, second, third = part.courses
    short = tuple(
        replace(one, place=replace(one.place, right=nm(30)), nails=one.nails[:4]) for one in second.pieces
    )
    fourth = replace(
        third,
        number=4,
        from_nm=third.to_nm,
        to_nm=third.to_nm + nm(6),
        pieces=tuple(
            replace(
                one,
                label="4a",
                place=replace(one.place, bottom=one.place.top, top=one.place.top + nm(6)),
            )
            for one in third.pieces
        ),
    )
    courses = (first, replace(second, pieces=short), third, fourth)
    plan = plan_nails(made, replace(laid, surfaces=(replace(part, courses=courses),)))
    starter, _, over, _ = plan.pieces
    at = {
        piece.label: {one.blind: [x for x, _ in one.spots] for one in piece.driven}
        for piece in (starter, over)
    }
    assert at["1a"][True] == [nm(8), nm(24)]
    assert at["3a"][True] == [nm(8), nm(24), nm(56)]
    assert at["3a"][False] == [nm(56)]
    assert starter.members == over.members == 3


def test_blind_nails_keep_clear_of_what_runs_behind() -> None:
    """No spot lies in a keep-out grown by the clearance, and none where the board is cut away."""
    made = tongued_job()
    (surface,) = made.surfaces
    for piece in plan_nails(made, tongued_layout(made)).pieces:
        for one in piece.driven:
            for x, y in one.spots:
                for keep_out in surface.keep_outs:
                    place = grown(keep_out.place, made.rules.nail_clearance_nm)
                    assert not (place.left < x < place.right and place.bottom < y < place.top)


def test_the_tip_of_a_blind_nail_keeps_clear_as_well() -> None:
    """It leans back under its board by about an inch: a pipe that only its tip would hit bars it."""
    low = 0.25 + 6
    pipe = KeepOut(id="low", what="pipe", place=rectangle(0, low - 2.05, 64, low - 1.01))
    made = tongued_job(tongued_wall(keep_outs=(pipe,)))
    first, *_ = plan_nails(made, tongued_layout(made)).pieces
    assert [one.blind for one in first.driven] == [False]
    far = KeepOut(id="low", what="pipe", place=rectangle(0, 0.3, 64, 1))
    made = tongued_job(tongued_wall(keep_outs=(far,)))
    first, *_ = plan_nails(made, tongued_layout(made)).pieces
    assert [one.blind for one in first.driven] == [True, False]


def test_nothing_left_to_nail() -> None:
    """Where all of it hangs the answer says so, and nothing is wrong with the nails."""
    made = tongued_job()
    laid = tongued_layout(made)
    (part,) = laid.surfaces
    hung = tuple(HungCourse(surface_id=part.surface_id, course=row) for row in part.courses)
    plan = plan_nails(made, laid, Standing(hung=hung))
    assert plan.pieces == ()
    assert nails_leaf(made, plan).headline.text == "Nothing is left to nail."


def test_no_nail_is_short_enough() -> None:
    """Then it is held nowhere, and nobody is told how many times its weight no nails hold."""
    made = tongued_job()
    made = replace(made, fastening=Fastening(kind="common nail", depth_unknown_nm=nm(0.01)))
    plan = plan_nails(made, tongued_layout(made))
    assert all(piece.members == 0 and piece.holds_n is None for piece in plan.pieces)
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "no nail of this kind reaches the framing within the depth allowed" in text
    assert "too few places" not in text
    assert "Weakest" not in text


@pytest.mark.parametrize("kind", [None, "common nail", "finishing nail", "18 gauge brad"])
@pytest.mark.parametrize("opened", [False, True])
def test_no_nail_passes_the_protected_depth(kind: str | None, opened: bool) -> None:  # noqa: FBT001 - a parameter of the test
    """Of any kind, at the tongue or through the face, whoever looked inside."""
    made = tongued_job(tongued_wall(framing=replace(STUDS, opened=opened)))
    made = replace(made, fastening=Fastening(kind=kind))
    plan = plan_nails(made, tongued_layout(made))
    allowed = plan.rule.allowed_nm(opened=opened)
    assert allowed <= PROTECTED_DEPTH_NM.value
    depths = [one.chosen.deepest_nm for piece in plan.pieces for one in piece.driven]
    assert depths
    assert max(depths) <= allowed


def test_what_the_user_asks_for_is_heeded_and_its_danger_told() -> None:
    """Deeper than the protected depth only on the user's word, and then it is said."""
    made = replace(
        tongued_job(tongued_wall(framing=replace(STUDS, opened=True))),
        fastening=Fastening(kind="common nail", bite_nm=nm(1.5), depth_opened_nm=nm(2)),
    )
    plan = plan_nails(made, tongued_layout(made))
    assert max(one.chosen.bite_nm for piece in plan.pieces for one in piece.driven) > nm(1.25)
    text = " ".join(said.text for said in nails_leaf(made, plan).parts[0].said)
    assert "takes somebody who knows what runs there" in text


def test_both_numbers_are_shown() -> None:
    """What other rules ask for stands beside what is allowed."""
    made = tongued_job(tongued_wall(between=()))
    leaf = nails_leaf(made, plan_nails(made, tongued_layout(made)))
    text = " ".join(said.text for part in leaf.parts for said in part.said)
    assert (
        'stays within 1-1/8" of the framing\'s face where nobody looked inside, 1-1/4" where it was' in text
    )
    assert 'three times the board, 2-1/4", whose tip is 1-1/2" into the framing, 3/8" too deep' in text
    assert '1-1/2" of bite, 2-1/4", 1-1/2" into the framing, 3/8" too deep' in text


def test_a_piece_cut_off_from_its_framing() -> None:
    """Pipes behind three of four studs: blocking or adhesive is offered, and both pipes are named."""
    pipes = (
        KeepOut(id="pipe", what="water pipe", place=_strip(8)),
        KeepOut(id="duct", what="duct", place=_strip(24)),
        KeepOut(id="cable", what="cable", place=_strip(40)),
    )
    made = tongued_job(tongued_wall(keep_outs=pipes))
    laid = tongued_layout(made)
    (part,) = laid.surfaces
    courses = tuple(
        replace(row, pieces=tuple(replace(one, nails=_only(one.nails)) for one in row.pieces))
        for row in part.courses
    )
    plan = plan_nails(made, replace(laid, surfaces=(replace(part, courses=courses),)))
    assert all(not piece.held for piece in plan.pieces)
    assert plan.pieces[0].cut_off_by == ("water pipe", "duct", "cable")
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "cut off from framing by water pipe, duct, cable" in text
    assert "blocking" in text
    assert "adhesive" in text


def _wider(row: Course) -> Course:
    """Give a course as wide as eight inches."""
    pieces = tuple(
        replace(one, place=replace(one.place, top=one.place.top + nm(2)), across_to_nm=nm(8))
        for one in row.pieces
    )
    return replace(row, to_nm=row.to_nm + nm(2), pieces=pieces)


def _raised(row: Course) -> Course:
    """Give a course that starts two inches higher."""
    pieces = tuple(
        replace(one, place=replace(one.place, bottom=one.place.bottom + nm(2))) for one in row.pieces
    )
    return replace(row, from_nm=row.from_nm + nm(2), pieces=pieces)


def _strip(at: float) -> Rectangle:
    return Rectangle(left=nm(at - 0.5), bottom=0, right=nm(at + 0.5), top=nm(18.5))


def _only(nails: tuple[tuple[int, int], ...]) -> tuple[tuple[int, int], ...]:
    return tuple(nail for nail in nails if nail[0] == nm(56))


def test_overhead_the_weight_hangs_on_the_nails() -> None:
    """A fifth of what draws them is trusted; short brads in light wood are not enough, and that is said."""
    made = ceiling_job()
    plan = plan_nails(made, tongued_layout(made))
    (surface,) = plan.surfaces
    assert surface.overhead
    assert not surface.too_heavy
    short = Fastening(kind="18 gauge brad", bite_nm=nm(0.1), depth_unknown_nm=nm(0.1))
    plan = plan_nails(replace(made, fastening=short), tongued_layout(made))
    (surface,) = plan.surfaces
    assert not surface.too_heavy
    assert surface.not_held
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "no nail of this kind" in text


def test_too_heavy_for_their_nails_overhead() -> None:
    """Heavy boards on brads that hardly bite; and brads alone are never enough."""
    made = ceiling_job()
    heavy = tuple(replace(each, thickness_nm=nm(1.875), species="hickory") for each in made.boards)
    made = replace(made, boards=heavy, fastening=Fastening(kind="18 gauge brad", bite_nm=nm(0.1)))
    plan = plan_nails(made, tongued_layout(made))
    (surface,) = plan.surfaces
    assert surface.too_heavy
    assert surface.brads_alone
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "all of it hangs on the nails" in text
    assert "Too heavy for their nails" in text
    assert "Brads alone hold no board overhead" in text


def test_known_framing_holds_what_its_wood_holds() -> None:
    """Douglas-fir more than framing of which nothing is known."""
    light = tongued_job()
    fir = tongued_job(tongued_wall(framing=replace(STUDS, wood="Douglas-fir, coast")))
    weak, strong = (plan_nails(one, tongued_layout(one)).pieces[2].holds_n for one in (light, fir))
    assert weak is not None
    assert strong is not None
    assert strong / weak == pytest.approx((0.48 / 0.35) ** 2.5)


def test_what_is_bought_is_a_tenth_more() -> None:
    """Counted by length, rounded up."""
    made = tongued_job()
    plan = plan_nails(made, tongued_layout(made))
    assert sum(one.driven for one in plan.to_buy) == sum(
        one.count for piece in plan.pieces for one in piece.driven
    )
    assert all(one.driven * 1.1 <= one.bought < one.driven * 1.1 + 1 for one in plan.to_buy)


def test_nails_by_the_pound() -> None:
    """Where a count by the pound is known: 5d finishing nails, 500 to the pound."""
    made = replace(tongued_job(tongued_wall(between=())), fastening=Fastening(kind="finishing nail"))
    plan = plan_nails(made, tongued_layout(made))
    assert any(one.pounds == pytest.approx(one.bought / 500) for one in plan.to_buy)


def test_solid_backing_takes_nails_anywhere() -> None:
    """A nail every 16 in, two abreast on boards of 4 in and more; none deeper than is allowed."""
    made = tongued_job(tongued_wall(framing=Framing(solid=True)))
    plan = plan_nails(made, tongued_layout(made))
    assert [[one.count for one in piece.driven] for piece in plan.pieces] == [[10], [10], [10]]
    assert all(one.chosen.deepest_nm <= nm(1.125) for piece in plan.pieces for one in piece.driven)
    assert not plan.surfaces[0].unchecked
    assert all(piece.holds_n is None for piece in plan.pieces)
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "Solid backing takes nails anywhere" in text
    assert "depends on how thick it is" in text


def test_no_tip_comes_out_behind_a_sheet_that_nobody_looked_behind() -> None:
    """Half an inch of backing: the nail ends in it, and its short bite is told."""
    made = tongued_job(tongued_wall(framing=Framing(solid=True, thickness_nm=nm(0.5))))
    plan = plan_nails(made, tongued_layout(made))
    (surface,) = plan.surfaces
    assert surface.behind_nm == 0
    assert len(surface.short_bite) == 3
    assert all(0 < one.chosen.deepest_nm <= nm(0.5) for piece in plan.pieces for one in piece.driven)
    text = " ".join(said.text for part in nails_leaf(made, plan).parts for said in part.said)
    assert "No tip comes out behind the backing" in text


def test_overhead_on_backing_of_unknown_thickness_nothing_was_checked() -> None:
    """And the headline says so."""
    made = tongued_job(tongued_wall(kind=SurfaceKind.CEILING, framing=Framing(solid=True), cut_outs=()))
    plan = plan_nails(made, tongued_layout(made))
    assert plan.surfaces[0].unchecked
    assert "Whether they hold it up was not checked: wall" in nails_leaf(made, plan).headline.text


def test_what_sticks_out_behind_the_backing_holds_nothing() -> None:
    """Half an inch of backing holds half an inch of nail, whatever the bite; that it comes out is told."""
    thin, thick = (
        tongued_job(tongued_wall(framing=Framing(solid=True, opened=True, thickness_nm=nm(inches))))
        for inches in (0.5, 4)
    )
    told = plan_nails(thin, tongued_layout(thin))
    assert told.surfaces[0].behind_nm > 0
    assert not all(one.chosen.enough for piece in told.pieces for one in piece.driven)
    text = " ".join(said.text for part in nails_leaf(thin, told).parts for said in part.said)
    assert "Nails come out behind the backing by up to" in text
    weak, strong = (plan_nails(one, tongued_layout(one)).pieces[0] for one in (thin, thick))
    assert weak.holds_n is not None
    assert strong.holds_n is not None
    bite = strong.driven[0].chosen.bite_nm
    assert strong.holds_n / weak.holds_n == pytest.approx(bite / nm(0.5))
