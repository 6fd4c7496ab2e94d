"""What is done to each board, in the order of work; what must be bought; what the pile comes to."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builders import board, course, flaw, job, layout, nm, piece, surface_layout, wall
from plankwright.measure import FOOT, System, TapeStyle
from plankwright.model import Per, Price, Standing, Task, Treatment
from plankwright.paper.leaf import DONE
from plankwright.paper.stickers import board_stickers
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.ready_boards import Station, ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out
from plankwright.workshop.ask_trade import ask_trade
from plankwright.workshop.check_layout import FaultyLayoutError, demand_right
from trade_jobs import tongued_job, tongued_layout, tongued_wall

MADE = tongued_job()
LAID = tongued_layout(MADE)


def whats(board_id: str, station: Station) -> list[str]:
    """Give what is done to a board at a station."""
    (work,) = [one for one in ready_boards(MADE, LAID).boards if one.board_id == board_id]
    return [task.what + (DONE if task.done else "") for task in work.at(station)]


def test_nails_come_out_before_any_saw() -> None:
    """Stations are in the order of work, and what the tally says is done is ticked."""
    order = list(Station)
    assert order.index(Station.NAILS) < order.index(Station.METAL) < order.index(Station.ENDS)
    assert whats("T1", Station.NAILS) == [f"pull{DONE}"]
    assert whats("T1", Station.METAL) == [f"pass over{DONE}"]
    assert whats("T2", Station.NAILS) == ["pull"]


def test_insects_ask_for_heat_in_the_whole_lot() -> None:
    """Where one board has signs the others of its lot come along; wet ones are dried besides."""
    assert whats("T3", Station.HEAT) == ["heat: insects"]
    assert whats("T1", Station.HEAT) == ["heat with its lot"]
    assert whats("T2", Station.HEAT) == ["heat with its lot", "dry from 13 %"]
    assert ready_boards(MADE, LAID).insects == ("T3",)
    text = " ".join(said.text for said in readying_leaf(MADE, ready_boards(MADE, LAID)).parts[0].said)
    assert "56 °C (133 °F) for 30 minutes" in text
    assert "2 to 10 times as long" in text


def test_powderpost_beetles_in_large_pored_wood() -> None:
    """Oak is named, pine is not."""
    oak = replace(MADE, boards=tuple(replace(one, species="red oak") for one in MADE.boards))
    for made, named in ((oak, True), (MADE, False)):
        leaf = readying_leaf(made, ready_boards(made))
        assert any("powderpost" in said.text for part in leaf.parts for said in part.said) is named


def test_without_a_layout_every_board_is_readied() -> None:
    """In the order of the tally, with nothing that only a layout tells."""
    readying = ready_boards(MADE)
    assert [one.board_id for one in readying.boards] == ["T1", "T2", "T3"]
    assert not any(one.at(Station.THICKNESS) for one in readying.boards)


@pytest.mark.parametrize(
    ("thick", "shim", "told"),
    [
        (0.8125, 0.0, 'ease 1/16" at 1a | 1b'),
        (0.84375, 0.0, 'plane 3/32" off the back of 1b'),
        (1.0, 0.0, '1/4" thicker at 1a | 1b: swap'),
        (0.8125, 0.0625, ""),
    ],
)
def test_steps_at_a_joint_in_sight(thick: float, shim: float, told: str) -> None:
    """Eased, planed or swapped by their size; nothing to do where a shim levels it."""
    surface = wall(64, 6.5)
    made = job(surface, [board("A", 40, 6), board("B", 40, 6, thickness_nm=nm(thick))])
    made = replace(made, tape=TapeStyle(system=System.IMPERIAL, denominator=32))
    first = piece(surface, "1a A", (0.25, 24), (0.25, 6.25), nailed_at=(8, 23), shim_nm=nm(shim))
    second = piece(surface, "1b B", (24, 63.75), (0.25, 6.25), nailed_at=(25, 40))
    laid = layout(surface_layout(surface, course(1, (0.25, 6.25), first, second)))
    work = {one.board_id: one for one in ready_boards(made, laid).boards}
    assert [task.what for task in work["B"].at(Station.THICKNESS)] == ([told] if told else [])
    if shim:
        assert [task.what for task in work["A"].at(Station.THICKNESS)] == ['shim 1a by 1/16"']


def test_boxes_come_forward_by_the_boards() -> None:
    """Flush with the wallboard before, they need three quarters more; both pieces are notched."""
    (box,) = fit_edges(MADE, LAID).boxes
    assert box.extension_nm == nm(0.75)
    assert [(notch.label, notch.width_nm, notch.height_nm) for notch in box.notches] == [
        ("1a", nm(2.25), nm(2.25)),
        ("2a", nm(2.25), nm(1.5)),
    ]
    assert (box.notches[0].left_nm, box.notches[0].bottom_nm) == (nm(11.75), nm(3.75))


def test_a_box_that_stands_out_already() -> None:
    """An inch and a quarter before the framing is flush with 3/4 in boards over 1/2 in wallboard."""
    (cut_out,) = tongued_wall().cut_outs
    made = tongued_job(tongued_wall(cut_outs=(replace(cut_out, front_nm=nm(1.25)),)))
    edges = fit_edges(made, tongued_layout(made))
    assert edges.boxes[0].extension_nm == 0
    assert edges_leaf(made, edges).headline.text.startswith("No box extenders")


def test_trim_that_is_too_narrow_is_told() -> None:
    """A quarter inch over a gap of a quarter shows it as soon as boards shrink."""
    surface = tongued_wall(trim=replace(tongued_wall().trim, bottom=nm(0.25), top=nm(1)))
    made = tongued_job(surface)
    edges = fit_edges(made, tongued_layout(made))
    assert len(edges.uncovered) == 1
    leaf = edges_leaf(made, edges)
    assert "too narrow at one place" in leaf.headline.text
    assert any("bottom of wall" in said.text for part in leaf.parts for said in part.said)


def test_measure_of_the_pile() -> None:
    """Three boards of 6 in by 6 ft, under an inch thick: 3 board feet each, by either rule."""
    lumber = measure_lumber(MADE, LAID)
    assert lumber.boards == 3
    assert lumber.board_feet == 9
    assert lumber.surface_measure == 9
    assert lumber.recovery < 1
    assert lumber.lineal_nm == 18 * FOOT


def test_weight_by_the_wood() -> None:
    """Longleaf pine, 0.59: what hangs weighs less than the pile, and both ends of the range agree."""
    lumber = measure_lumber(MADE, LAID)
    assert lumber.wall is not None
    assert lumber.pile.least_kg == lumber.pile.most_kg
    volume_m3 = 3 * nm(6) * nm(72) * nm(0.75) / 1e27
    assert lumber.pile.most_kg == pytest.approx(volume_m3 * 590 * 1.10, rel=0.03)
    assert 0 < lumber.wall.most_kg < lumber.pile.most_kg
    assert lumber.heaviest is not None


def test_bought_instead() -> None:
    """A fifth of waste means a quarter more, and the money goes with it."""
    (instead,) = measure_lumber(MADE, LAID).instead
    area = Fraction(measure_lumber(MADE, LAID).to_cover_nm2, FOOT**2)
    assert instead.amount == area / Fraction(4, 5)
    assert instead.cost == 5 * instead.amount
    plain = replace(MADE, prices=(Price(name="x", cost=Fraction(1), per=Per.SQUARE_FOOT),))
    assert measure_lumber(plain).instead[0].amount == area * Fraction(11, 10)


@pytest.mark.parametrize("per", list(Per))
def test_hours_by_everything_that_is_counted(per: Per) -> None:
    """With a layout all can be reckoned; without one only what needs none."""
    made = replace(MADE, tasks=(Task(name="do", minutes=Fraction(60), per=per),))
    (with_layout,) = measure_lumber(made, LAID).tasks
    assert with_layout.hours is not None
    assert with_layout.hours > 0
    (without,) = measure_lumber(made).tasks
    needs = {Per.PIECE, Per.CUT, Per.COURSE, Per.NAIL}
    assert (without.hours is None) == (per in needs)


def test_counts_of_tasks() -> None:
    """Three boards; and every nail that is driven."""
    boards, nails = measure_lumber(MADE, LAID).tasks
    assert boards.hours == Fraction(18, 60)
    assert nails.count == 15


def test_carbon_is_stored_and_not_avoided() -> None:
    """Half of the dry mass, and never as a saving."""
    lumber = measure_lumber(MADE, LAID)
    low, high = lumber.carbon_dioxide_kg
    assert low == high > 0
    text = " ".join(said.text for part in lumber_leaf(MADE, lumber).parts for said in part.said)
    assert "That is stored, not avoided." in text


def test_what_has_to_be_bought() -> None:
    """Nails, a bit, an extender, blades, tests; missing boards first."""
    items = go_shopping(MADE, LAID, ("1 board of at least 6 ft by 6 in",))
    names = [item.what for item in items]
    assert names[0] == "1 board of at least 6 ft by 6 in"
    assert 'box extender, 3/4" deep' in names
    assert "lead test of the paint" in names
    assert any("finish nail" in name for name in names)
    assert not any(name.startswith("drill bit") for name in names)  # No nail stands near an end here.
    assert shopping_leaf(items).sources


def test_hazards_of_a_job() -> None:
    """By its lots, layers and boards."""
    leaf = hazards_leaf(watch_out(MADE))
    text = " ".join(said.text for part in leaf.parts for said in part.said)
    assert "stage: paint on 9.0 sq ft a face was not tested" in text
    assert "Wallboard may hold asbestos" in text
    assert "2 boards may still hold nails" in text
    assert "Overhead" not in [part.title for part in leaf.parts]


def test_leaves_in_metric_have_no_inch() -> None:
    """Of every answer that prints lengths by the tape."""
    metric = replace(MADE, tape=TapeStyle(system=System.METRIC))
    leaves = (
        edges_leaf(metric, fit_edges(metric, LAID)),
        lumber_leaf(metric, measure_lumber(metric, LAID)),
        readying_leaf(metric, ready_boards(metric, LAID)),
        shopping_leaf(go_shopping(metric, LAID)),
    )
    for leaf in leaves:
        cells = [cell for part in leaf.parts if part.grid for row in part.grid.rows for cell in row]
        said = [one.text for part in leaf.parts for one in part.said]
        assert not any('"' in text for text in (*cells, *said))


def test_everything_at_one_go() -> None:
    """With a layout all seven answers, without one those that need none; each has sources."""
    assert set(ask_trade(MADE, LAID)) == {"hazards", "moisture", "prepare", "lumber", "nails", "edges", "buy"}
    assert set(ask_trade(MADE)) == {"hazards", "moisture", "prepare", "lumber"}
    assert all(leaf.sources for leaf in ask_trade(MADE, LAID).values())


def test_a_job_in_progress_is_readied_and_labelled_for_what_is_left() -> None:
    """Boards that were sawn are ready."""
    standing = Standing(sawn=("T1",))
    assert [one.board_id for one in ready_boards(MADE, LAID, standing).boards] == ["T2", "T3"]
    assert [one.id for one in board_stickers(MADE, LAID, standing)] == ["T2", "T3"]


def test_a_layout_that_uses_a_treated_board_is_refused() -> None:
    """Whoever made it: the checker finds a piece in lost wood."""
    first = MADE.boards[0]
    lost = flaw(0, 72)
    barred = replace(first, treatment=Treatment.CREOSOTE, flaws=(lost,))
    with pytest.raises(FaultyLayoutError):
        demand_right(replace(MADE, boards=(barred, *MADE.boards[1:])), LAID)
    demand_right(MADE, LAID)


def test_what_stays_bare_asks_for_boards() -> None:
    """Without knowing which: another command says."""
    (part,) = LAID.surfaces
    bare = replace(LAID, surfaces=(replace(part, bare=(part.courses[0].pieces[0].place,)),))
    assert go_shopping(MADE, bare)[0].what == "boards"
