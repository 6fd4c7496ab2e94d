"""How far the courses of a layout move, which boards are judged with it, and what is said of that."""

from dataclasses import replace

import pytest

from builders import course, job, layout, nm, piece, surface_layout, wall
from moving import DAMP, DRY, LONGLEAF, MIDDLE, laid_up, moved, pine, told
from plankwright.model import Air, EdgeTreatment, Lot, Room
from plankwright.trade.moisture.movement import change_by_coefficient
from plankwright.workshop.advice.judge_moisture import Verdict, judge_moisture
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from trade_jobs import ROOM, TONGUED, tongued_job, tongued_layout


def test_the_course_that_opens_most_is_not_the_one_that_closes_most() -> None:
    """A dry course of 9 in swings far, but a wet one of 5 in opens by more: each has its own figures.

    By equation 13-2: 5 in from 13 % opens by 0.09 in, 9 in from 7 % by 0.02 in only, and closes by 0.09 in.
    """
    made, laid = laid_up(pine("wide", 9, 7.0), pine("wet", 5, 13.0))
    movement = moved(made, laid)
    assert (movement.opens.course, movement.opens.board_id, movement.opens.width_nm) == (2, "wet", nm(5))
    assert (movement.closes.course, movement.closes.board_id, movement.closes.width_nm) == (1, "wide", nm(9))
    assert movement.opens.most_nm == pytest.approx(-change_by_coefficient(nm(5), LONGLEAF, 13.0, DRY))
    assert movement.closes.most_nm == pytest.approx(change_by_coefficient(nm(9), LONGLEAF, 7.0, DAMP))
    text = told(made, laid)
    assert 'Course 2 (5", board wet) opens most: it gets 0.09 in narrower by the dry season.' in text
    assert 'Course 1 (9", board wide) closes most: it gets 0.09 in wider by the damp season.' in text


def test_without_a_layout_boards_are_told_of() -> None:
    """The same two, as they lie in the pile."""
    made, _ = laid_up(pine("wide", 9, 7.0), pine("wet", 5, 13.0))
    text = told(made)
    assert 'Board wet (5") opens most' in text
    assert 'Board wide (9") closes most' in text


def test_one_course_that_moves_most_either_way_is_told_once() -> None:
    """And boards that are as damp as the room will ever be get no wider, if they need not dry first."""
    made, laid = laid_up(pine("A", 6, 8.0), pine("B", 4, 8.0))
    assert 'Course 1 (6", board A) moves most: it gets' in told(made, laid)
    made, laid = laid_up(pine("A", 6, 9.5))
    made = replace(made, room=replace(ROOM, damp=Air(temperature_c=23.0, humidity_pct=50.0)))
    assert "No course gets wider by the damp season." in told(made, laid)


def test_air_that_never_changes_moves_nothing() -> None:
    """Boards that have come to it stay as they are, however they are sawn."""
    made, laid = laid_up(pine("A", 6))
    made = replace(made, room=Room(dry=ROOM.dry, damp=ROOM.dry))
    text = told(made, laid)
    assert "No course gets narrower by the dry season. No course gets wider by the damp season." in text
    assert "flat-sawn" not in text


def test_a_tongue_is_judged_by_the_seam_that_opens_most() -> None:
    """A wet course of 4 in draws a tongue of 1/8 in out by 0.07 in; a dry one of 9 in swings farther."""
    short = replace(TONGUED, reach_nm=nm(1 / 8))
    wide, wet = pine("wide", 9, 7.0, profile=short), pine("wet", 4, 13.0, profile=short)
    made, laid = laid_up(wide, wet)
    tongues = moved(made, laid).tongues
    assert tongues is not None
    assert tongues.opens_nm == pytest.approx(-change_by_coefficient(nm(4), LONGLEAF, 13.0, DRY))
    assert not tongues.covered
    assert 'A tongue or lap of 1/8" would stay covered by less than 50 % where seams open by 0.07 in' in told(
        made, laid
    )
    made, laid = laid_up(wide, replace(wet, moisture_pct=8.0))
    assert 'A tongue or lap of 1/8" stays covered by 50 % or more' in told(made, laid)


def test_long_tongues_stay_in_their_grooves() -> None:
    """A quarter inch at three courses of 6 in, the wettest at 13 %."""
    made = tongued_job()
    movement = moved(made, tongued_layout(made))
    assert (movement.opens.course, movement.opens.width_nm) == (2, nm(6))
    assert movement.tongues is not None
    assert movement.tongues.reach_nm == nm(0.25)
    assert movement.tongues.covered
    assert movement.square is None


def test_both_sorts_of_edges_of_a_mixed_pile_are_told_of() -> None:
    """Each with its own opening: the wet square board draws no tongue out."""
    tongued = [pine("T1", 6, 8.0, profile=TONGUED), pine("T2", 6, 8.0, profile=TONGUED)]
    made, laid = laid_up(*tongued, pine("S1", 6, 13.0))
    for which in (laid, None):
        movement = moved(made, which)
        assert movement.tongues is not None
        assert movement.square is not None
        assert movement.tongues.opens_nm == pytest.approx(-change_by_coefficient(nm(6), LONGLEAF, 8.0, DRY))
        assert movement.square.opens_nm == pytest.approx(-change_by_coefficient(nm(6), LONGLEAF, 13.0, DRY))
    assert "A tongue or lap of" in told(made, laid)
    assert "Seams that no tongue or lap covers open by 0.11 in at most." in told(made, laid)
    assert "A tongue or lap of" in told(made)
    assert "Seams of square edges open by 0.11 in at most" in told(made)


def test_square_edges_open_by_their_own_boards() -> None:
    """Tongued courses that are wetter do not count among them."""
    tongued = [pine(name, 6, 13.0, profile=TONGUED) for name in ("T1", "T2")]
    boards = (*tongued, pine("S1", 6, 8.0), pine("S2", 6, 8.0))
    made, laid = laid_up(*boards)
    for which in (laid, None):
        square = moved(made, which).square
        assert square is not None
        assert square.opens_nm == pytest.approx(-change_by_coefficient(nm(6), LONGLEAF, 8.0, DRY))


@pytest.mark.parametrize(
    ("done", "held"),
    [
        (EdgeTreatment.AS_FOUND, True),
        (EdgeTreatment.SPLINE, True),
        (EdgeTreatment.RIPPED, False),
        (EdgeTreatment.TONGUE_OFF, False),
        (EdgeTreatment.FACE_NAIL, False),
    ],
)
def test_tongues_count_as_they_hang(done: EdgeTreatment, held: bool) -> None:  # noqa: FBT001 - a row of the table
    """A tongued board that was ripped square has none left; what is nailed through the face meets none."""
    boards = [pine(name, 6, 8.0, profile=TONGUED) for name in ("T1", "T2")]
    made, laid = laid_up(*boards, edges=dict.fromkeys(("T1", "T2"), done))
    movement = moved(made, laid)
    assert (movement.tongues is not None) is held
    assert (movement.square is None) is held
    assert ("A tongue or lap of" in told(made, laid)) is held


def test_the_outer_edges_of_a_surface_are_no_seams() -> None:
    """A closing course that was ripped to its width along the ceiling leaves no square seam."""
    boards = [pine(name, 6, 8.0, profile=TONGUED) for name in ("T1", "T2")]
    made, laid = laid_up(*boards)
    (part,) = laid.surfaces
    first, last = part.courses
    closing = replace(last, pieces=(replace(last.pieces[0], far=EdgeTreatment.RIPPED),))
    starter = replace(first, pieces=(replace(first.pieces[0], near=EdgeTreatment.RIPPED),))
    movement = moved(made, replace(laid, surfaces=(replace(part, courses=(starter, closing)),)))
    assert movement.tongues is not None
    assert movement.square is None


def test_courses_swell_together_each_by_its_own() -> None:
    """A narrow dry board does not make the whole wall swell as it does: 3 in from 7 % and 9 in from 10 %."""
    made, laid = laid_up(pine("dry", 3, 7.0), pine("ready", 9, 10.0))
    expected = change_by_coefficient(nm(3), LONGLEAF, 7.0, DAMP) + change_by_coefficient(
        nm(9), LONGLEAF, 10.0, DAMP
    )
    assert moved(made, laid).all_swell_nm == pytest.approx(expected)
    share = change_by_coefficient(1.0, LONGLEAF, 7.0, DAMP)
    assert moved(made).all_swell_nm == pytest.approx(share * nm(12.5))


def test_a_course_swells_by_its_worst_piece() -> None:
    """Two boards end to end count once, by the drier one."""
    surface = wall(64, 6.5)
    made = replace(job(surface, [pine("A", 6, 7.0), pine("B", 6, 10.0)]), room=ROOM)
    pieces = (
        piece(surface, "1a A", (0.25, 32), (0.25, 6.25)),
        piece(surface, "1b B", (32, 63.75), (0.25, 6.25)),
    )
    laid = layout(surface_layout(surface, course(1, (0.25, 6.25), *pieces)))
    assert moved(made, laid).all_swell_nm == pytest.approx(change_by_coefficient(nm(6), LONGLEAF, 7.0, DAMP))


def test_tight_marks_leave_no_gaps_between_courses() -> None:
    """Boards at 6 % swell by more than two gaps of 1/8 in; at the middle of the seasons they would not."""
    made, laid = laid_up(*(pine(f"A{number}", 6, 6.0) for number in range(4)), gap=0.125)
    movement = moved(made, laid)
    ready = change_by_coefficient(nm(24), LONGLEAF, MIDDLE, DAMP)
    assert movement.ready_swell_nm == pytest.approx(ready)
    assert movement.room_once_ready
    text = told(made, laid)
    assert (
        "let the boards come nearer to midway first, from where they swell by 0.15 in, 0.07 in a side" in text
    )
    assert 'set expansion_gap in job.toml to 3/16" or more and lay out anew' in text
    assert "The marks of the layout are tight: leave no gaps between its courses." in text
    assert "hair" not in text
    assert "between courses if they are drier" not in text


def test_waiting_that_is_not_enough() -> None:
    """With next to no gap, boards at the middle press as well; those that are there already need not wait."""
    made, laid = laid_up(pine("A", 6, 6.0), pine("B", 6, 6.0), gap=1 / 64)
    assert (
        "Boards that have come to midway first swell by 0.07 in, 0.04 in a side, which is still more."
        in told(made, laid)
    )
    made, laid = laid_up(pine("A", 6, 9.0), pine("B", 6, 9.0), gap=1 / 64)
    assert "midway" not in told(made, laid).split("more than the gap")[1]


def test_without_a_layout_a_hair_may_be_left() -> None:
    """Nothing is marked on the wall yet."""
    made, _ = laid_up(*(pine(f"A{number}", 6, 6.0) for number in range(4)), gap=0.125)
    assert "leave a hair between courses" in told(made)
    assert "tight:" not in told(made)


def test_only_boards_that_hang_are_judged() -> None:
    """A wet spare, one that was not measured, and the spread of a lot of spares hold no work up."""
    made, laid = laid_up(pine("A", 6, 8.5), pine("B", 6, 8.5))
    spares = (pine("wet", 6, 20.0), pine("unread", 6), pine("other", 6, lot="shed"))
    lots = (Lot(name="shed", moisture_pct=(15.0, 25.0)),)
    more = replace(made, boards=(*made.boards, *spares), lots=lots)
    moisture = judge_moisture(more, laid)
    assert moisture.verdict is Verdict.GO
    assert [reading.of for reading in moisture.readings] == ["A", "B"]
    assert moisture.unmeasured == ()
    assert moisture.spares == ("wet", "unread", "other")
    assert moisture_leaf(more, moisture).headline.text.startswith("Go: every board that hangs is near enough")
    assert "Three boards that the layout does not use were not judged." in told(more, laid)

    everything = judge_moisture(more)
    assert everything.verdict is Verdict.WAIT
    assert len(everything.readings) == 5
    assert (everything.unmeasured, everything.spares) == (("unread",), ())
    assert "not judged" not in told(more)
    assert "not judged" not in told(made, laid)


def test_the_spread_of_a_lot_counts_if_a_board_of_it_hangs() -> None:
    """Whoever else is in the lot."""
    made, laid = laid_up(pine("A", 6, lot="shed"))
    made = replace(made, lots=(Lot(name="Shed", moisture_pct=(8.0, 15.0)),))
    assert judge_moisture(made, laid).verdict is Verdict.WAIT


def test_spares_that_were_read_are_no_readings_of_what_hangs() -> None:
    """Measure what hangs; that no board has a reading would not be true."""
    made, laid = laid_up(pine("A", 6))
    made = replace(made, boards=(*made.boards, pine("spare", 6, 8.5)))
    moisture = judge_moisture(made, laid)
    assert moisture.verdict is Verdict.MEASURE
    assert "no board that hangs has a reading" in moisture_leaf(made, moisture).headline.text
    assert "One board that the layout does not use was not judged." in told(made, laid)


def test_a_layout_that_hangs_nothing_judges_the_pile() -> None:
    """All of it may still be hung."""
    made, laid = laid_up(pine("A", 6, 8.5))
    (part,) = laid.surfaces
    bare = layout(replace(part, courses=()))
    assert judge_moisture(made, bare) == judge_moisture(made)


def test_a_surface_that_stays_bare_does_not_move() -> None:
    """Nothing is said of courses that it does not have."""
    made, laid = laid_up(pine("A", 6, 8.5))
    other = wall(64, 18, id="other")
    both = replace(made, surfaces=(*made.surfaces, other))
    whole = layout(*laid.surfaces, surface_layout(other))
    assert [movement.surface_id for movement in judge_moisture(both, whole).movements] == ["wall"]


def test_every_figure_of_movement_has_a_source() -> None:
    """Whatever the edges, and whether or not there is room."""
    made, laid = laid_up(pine("T", 6, 6.0, profile=TONGUED), pine("S", 6, 13.0), gap=1 / 64)
    air = Air(temperature_c=20.0, humidity_pct=30.0)
    for one in (made, replace(made, room=replace(ROOM, now=air))):
        for which in (laid, None):
            for part in moisture_leaf(one, judge_moisture(one, which)).parts[2:]:
                assert all(
                    said.sources for said in part.said if any(letter.isdigit() for letter in said.text)
                )


def test_wet_boards_are_judged_by_how_they_swell_once_they_are_ready() -> None:
    """At 13 % they only shrink; dried to the middle as they are told to be, 24 in swell by 0.15 in."""
    made, laid = laid_up(*(pine(f"A{number}", 6, 13.0) for number in range(4)), gap=1 / 16)
    movement = moved(made, laid)
    ready = change_by_coefficient(nm(24), LONGLEAF, MIDDLE, DAMP)
    assert movement.all_swell_nm == 0
    assert movement.most_swell_nm == pytest.approx(ready)
    assert not movement.room
    text = told(made, laid)
    assert (
        "Once the boards are ready, all courses together may swell by 0.15 in, 0.07 in a side, which is more "
        'than the gap of 1/16": set expansion_gap in job.toml to 1/8" or more and lay out anew.'
    ) in text
    assert "has room for it" not in text
    assert "No course gets wider" not in text
    assert (
        'Course 1 (6", board A0) closes most: once it has come to midway it gets 0.04 in wider by the damp'
        in text
    )

    made, laid = laid_up(*(pine(f"A{number}", 6, 13.0) for number in range(4)))
    assert "Once the boards are ready, all courses together may swell by 0.15 in at most" in told(made, laid)
    assert "Once the boards are ready, all courses together may swell by" in told(made)


def test_boards_that_need_not_wait_keep_what_they_have() -> None:
    """One at 7 % hangs as it is and one at 13 % dries first: both swell, each from where it hangs."""
    made, laid = laid_up(pine("near", 6, 7.0), pine("wet", 6, 13.0))
    movement = moved(made, laid)
    expected = change_by_coefficient(nm(6), LONGLEAF, 7.0, DAMP) + change_by_coefficient(
        nm(6), LONGLEAF, MIDDLE, DAMP
    )
    assert movement.most_swell_nm == pytest.approx(expected)
    assert movement.closes.board_id == "near"
    assert not movement.closes.once_ready


def test_boards_that_are_too_dry_open_once_they_are_ready() -> None:
    """At 5 % they only swell; dampened to the middle they shrink by the dry season."""
    made, laid = laid_up(pine("A", 6, 5.0))
    movement = moved(made, laid)
    assert movement.opens.once_ready
    assert movement.opens.most_nm == pytest.approx(-change_by_coefficient(nm(6), LONGLEAF, MIDDLE, DRY))
    assert "once it has come to midway it gets 0.04 in narrower by the dry season" in told(made, laid)


def test_boards_of_a_lot_that_spreads_too_far_wait_as_well() -> None:
    """The middle of the lot is where they should be, its damp end is not."""
    made, laid = laid_up(pine("A", 6, lot="shed"))
    wide = replace(made, lots=(Lot(name="shed", moisture_pct=(9.0, 13.0)),))
    assert moved(wide, laid).swells_more_once_ready
    even = replace(made, lots=(Lot(name="shed", moisture_pct=(9.0, 10.0)),))
    assert not moved(even, laid).swells_more_once_ready
