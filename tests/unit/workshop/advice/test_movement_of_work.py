"""How far courses move of which some hang already, and which boards are still waited for."""

from dataclasses import replace

import pytest

from builders import course, job, layout, nm, piece, surface_layout, wall
from moving import DAMP, LONGLEAF, hung, laid_up, moved, pine, told
from plankwright.model import Job, Layout, Part
from plankwright.trade.moisture.movement import change_by_coefficient
from plankwright.workshop.advice.judge_moisture import Verdict, judge_moisture
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from trade_jobs import ROOM, TONGUED


def opened_up(reach: float = 0.25) -> tuple[Job, Layout]:
    """Give three tongued courses of which the second hangs a tenth of an inch above the first."""
    short = replace(TONGUED, reach_nm=nm(reach))
    made, laid = laid_up(*(pine(f"T{number}", 6, 8.5, profile=short) for number in (1, 2, 3)))
    (part,) = laid.surfaces
    first, second, third = part.courses
    place = second.pieces[0].place
    raised = replace(place, bottom=place.bottom + nm(0.1), top=place.top + nm(0.1))
    second = replace(second, to_nm=second.to_nm + nm(0.1), pieces=(replace(second.pieces[0], place=raised),))
    third = replace(third, from_nm=second.to_nm)
    place = third.pieces[0].place
    pressed = replace(place, bottom=raised.top, top=raised.top + nm(6))
    third = replace(third, to_nm=third.from_nm + nm(6), pieces=(replace(third.pieces[0], place=pressed),))
    return made, layout(replace(part, courses=(first, second, third)))


def test_a_course_that_hangs_open_moves_by_its_wood() -> None:
    """It takes up 6.1 in of the wall, and six of them are wood."""
    made, laid = opened_up()
    movement = moved(made, laid, hung(laid, 1, 2))
    assert laid.surfaces[0].courses[1].height_nm == nm(6.1)
    assert movement.opens.width_nm == nm(6)
    assert movement.all_swell_nm == pytest.approx(change_by_coefficient(nm(18), LONGLEAF, 8.5, DAMP))


def test_a_seam_that_hangs_open_is_taken_off_the_reach_of_its_tongue() -> None:
    """A quarter inch less a tenth less 0.04 in is less than half of it; hung tight it is more."""
    made, laid = opened_up()
    tongues = moved(made, laid, hung(laid, 1, 2)).tongues
    assert tongues is not None
    assert (tongues.open_nm, tongues.hangs) == (nm(0.1), True)
    assert not tongues.covered
    text = told(made, laid, hung(laid, 1, 2))
    assert 'A tongue or lap of 1/4" would stay covered by less than 50 % where seams open by 0.04 in.' in text
    assert "That is a seam that is open by 0.10 in as it hangs, which is counted in." in text
    assert "narrower ones" not in text
    tight = moved(*laid_up(*made.boards)).tongues
    assert tight is not None
    assert (tight.open_nm, tight.covered) == (0, True)
    longer = moved(*opened_up(reach=0.5)).tongues
    assert longer is not None
    assert longer.covered


def test_a_course_left_bare_is_no_open_seam() -> None:
    """Nothing hangs between the first and the third."""
    made, laid = laid_up(*(pine(f"T{number}", 6, 8.5, profile=TONGUED) for number in (1, 2, 3)))
    (part,) = laid.surfaces
    laid = layout(replace(part, courses=(part.courses[0], part.courses[2])))
    tongues = moved(made, laid).tongues
    assert tongues is not None
    assert tongues.open_nm == 0


def test_what_hangs_is_not_laid_out_anew() -> None:
    """A wider gap helps where nothing hangs yet, and nowhere once everything does."""
    made, laid = laid_up(*(pine(f"A{number}", 6, 7.0) for number in range(4)), gap=1 / 64)
    assert ': set expansion_gap in job.toml to 1/8" or more and lay out anew' in told(made, laid).replace(
        "; or ", ": "
    )
    some = told(made, laid, hung(laid, 1, 2))
    assert 'where nothing hangs yet, set expansion_gap in job.toml to 1/8" or more and lay out anew' in some
    assert "leave no gaps" in some
    everything = told(made, laid, hung(laid, 1, 2, 3, 4))
    assert "All of it hangs: look after its edges in the damp season." in everything
    assert "lay out anew" not in everything
    assert "leave no gaps" not in everything


def test_boards_that_hang_are_not_waited_for() -> None:
    """They were wet, or nobody measured them: it is past. They move with the others all the same."""
    made, laid = laid_up(pine("wet", 6, 20.0), pine("unread", 6), pine("C", 6, 8.5))
    assert judge_moisture(made, laid).verdict is Verdict.WAIT
    standing = hung(laid, 1, 2)
    moisture = judge_moisture(made, laid, standing)
    assert moisture.verdict is Verdict.GO
    assert [reading.of for reading in moisture.readings] == ["C"]
    assert (moisture.unmeasured, moisture.spares, moisture.hung) == ((), (), ("wet", "unread"))
    (movement,) = moisture.movements
    assert (movement.pieces, movement.hanging, movement.opens.board_id) == (3, 2, "wet")
    assert not movement.swells_more_once_ready
    leaf = moisture_leaf(made, moisture)
    assert leaf.headline.text.startswith("Go: every board that is still to hang is near enough")
    assert "change-beyond" in {source.key for source in leaf.sources}
    assert "Two boards of which all hang already were not judged." in told(made, laid, standing)


def test_a_board_of_which_a_piece_is_still_to_hang_is_judged() -> None:
    """One end of it hangs, the other one is in hand."""
    surface = wall(64, 12.5)
    made = replace(job(surface, [pine("A", 6, 13.0)]), room=ROOM)
    rows = (
        course(1, (0.25, 6.25), piece(surface, "1a A", (0.25, 30), (0.25, 6.25))),
        course(2, (6.25, 12.25), piece(surface, "2a A", (0.25, 30), (6.25, 12.25), at=(35, 0))),
    )
    laid = layout(surface_layout(surface, *rows))
    moisture = judge_moisture(made, laid, hung(laid, 1))
    assert (moisture.verdict, moisture.hung) == (Verdict.WAIT, ())
    (movement,) = moisture.movements
    assert movement.closes.course == 2


def test_once_everything_hangs_nothing_is_left_to_hang() -> None:
    """With a layout and without one; a board of which something is left may still be hung."""
    made, laid = laid_up(pine("A", 6, 20.0), pine("B", 6))
    done = hung(laid, 1, 2)
    for which in (laid, None):
        moisture = judge_moisture(made, which, done)
        assert moisture.verdict is Verdict.DONE
        assert moisture_leaf(made, moisture).headline.text == "Nothing is left to hang."
    assert judge_moisture(made, laid, done).movements
    left = Part(board_id="B", along_from_nm=0, along_to_nm=nm(20), across_from_nm=0, across_to_nm=nm(6))
    assert judge_moisture(made, None, replace(done, left=(left,))).unmeasured == ("B",)
