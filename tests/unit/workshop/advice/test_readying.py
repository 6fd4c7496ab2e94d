"""What is done to each board, in the order of work; what must be bought; what the pile comes to."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builders import (
    board,
    flaw,
    job,
    layout,
    nm,
    wall,
    with_piece,
)
from plankwright.measure import FOOT, System, TapeStyle
from plankwright.model import (
    NOTHING_DONE,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Framing,
    HungCourse,
    Job,
    Layout,
    Lot,
    Paint,
    Per,
    Price,
    Standing,
    SurfaceKind,
    Task,
    Treatment,
)
from plankwright.paper.leaf import DONE
from plankwright.paper.stickers import board_stickers
from plankwright.workshop.advice.fill_pack import fill_pack
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.ready_boards import Station, ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out
from plankwright.workshop.ask_trade import ask_trade
from plankwright.workshop.check_layout import FaultyLayoutError, demand_right
from trade_jobs import tongued_job, tongued_layout, tongued_wall
from two_boards import of_two_boards

MADE = tongued_job()
LAID = tongued_layout(MADE)


def whats(board_id: str, station: Station) -> list[str]:
    """Give what is done to a board at a station."""
    (work,) = [one for one in ready_boards(MADE, LAID).boards if one.board_id == board_id]
    return [task.what + (DONE if task.done else "") for task in work.at(station)]


def test_nails_come_out_before_any_saw() -> None:
    """Stations are in the order of work, and what the tally says is done is ticked."""
    order = list(Station)
    assert order.index(Station.NAILS) < order.index(Station.METAL) < order.index(Station.CHALK)
    assert whats("T1", Station.NAILS) == [f"pull{DONE}"]
    assert whats("T1", Station.METAL) == [f"pass over{DONE}"]
    assert whats("T2", Station.NAILS) == ["pull"]


def test_insects_ask_for_heat_in_the_whole_lot() -> None:
    """Where one board has signs the others of its lot come along; wet ones are dried besides."""
    assert whats("T3", Station.HEAT) == ["heat: insects"]
    assert whats("T1", Station.HEAT) == ["heat with its lot"]
    assert whats("T2", Station.HEAT) == ["heat with its lot", "then dry from 13 %"]
    assert ready_boards(MADE, LAID).insects == ("T3",)
    text = " ".join(said.text for said in readying_leaf(MADE, ready_boards(MADE, LAID)).parts[0].said)
    assert "56 °C (133 °F) for 30 minutes" in text
    assert "2 to 10 times as long" in text
    assert "“heated” for them in the tally, and only then have them in the room to dry." in text


def test_only_what_waits_for_heat_is_dried_then() -> None:
    """Boards without insects in their lot, and those that were heated, dry at once."""
    boards = (
        board("A", 40, 6, moisture_pct=20.0),
        board("B", 40, 6, moisture_pct=20.0, note="worm holes"),
        board("C", 40, 6, moisture_pct=20.0, note="worm holes, heated"),
    )
    assert at_station(job(wall(64, 12), boards), Station.HEAT) == {
        "A": ["dry from 20 %"],
        "B": ["heat: insects", "then dry from 20 %"],
        "C": [f"heat: insects{DONE}", "dry from 20 %"],
    }


def at_station(made: Job, station: Station, laid: Layout | None = None) -> dict[str, list[str]]:
    """Give what is done to every board of a job at a station."""
    return {
        one.board_id: [task.what + (DONE if task.done else "") for task in one.at(station)]
        for one in ready_boards(made, laid).boards
    }


def test_a_wormy_board_without_a_lot_is_heated_alone() -> None:
    """Boards of no lot have nothing in common; a lot is the same however it is written."""
    boards = (
        board("A", 40, 6, note="worm holes"),
        board("B", 40, 6),
        board("C", 40, 6, lot="Hall", note="beetles"),
        board("D", 40, 6, lot="hall "),
        board("E", 40, 6, lot="hall", note="heated in spring"),
    )
    assert at_station(job(wall(64, 12), boards), Station.HEAT) == {
        "A": ["heat: insects"],
        "B": [],
        "C": ["heat: insects"],
        "D": ["heat with its lot"],
        "E": [f"heat with its lot{DONE}"],
    }


def test_insects_that_were_heated_infest_nothing() -> None:
    """It is ticked, and its lot stays where it is."""
    boards = (board("A", 40, 6, lot="hall", note="worm holes, heated"), board("B", 40, 6, lot="hall"))
    readying = ready_boards(job(wall(64, 12), boards))
    assert readying.insects == ()
    assert at_station(job(wall(64, 12), boards), Station.HEAT) == {"A": [f"heat: insects{DONE}"], "B": []}


def test_paint_that_the_lot_does_not_know_of_is_tested() -> None:
    """A board's own words come before its lot's; a lot that was tested is believed."""
    boards = (
        board("A", 40, 6, lot="hall", note="old paint on the back"),
        board("B", 40, 6, lot="hall"),
        board("C", 40, 6, lot="stage", note="old paint on the back"),
        board("D", 40, 6, lot="hall", note="soft brushed finish, no worm holes"),
    )
    lots = (Lot(name="hall", paint=Paint.NONE), Lot(name="stage", paint=Paint.NO_LEAD_FOUND))
    assert at_station(replace(job(wall(64, 12), boards), lots=lots), Station.LOOK) == {
        "A": ["test paint"],
        "B": ["splits, holes"],
        "C": ["splits, holes"],
        "D": ["splits, holes"],
    }


def test_lost_stretches_are_chalked_and_not_cut_out() -> None:
    """By where they lie from the marked end, which stays where it is."""
    boards = (board("A", 60, 6, flaws=(flaw(44, 50), flaw(55, 56.5))), board("B", 60, 6))
    told = at_station(job(wall(64, 12), boards), Station.CHALK)
    assert told == {"A": ['44"–50", 55"–56-1/2"'], "B": []}


@pytest.mark.parametrize(
    ("kind", "changes", "told"),
    [
        (EdgeKind.TONGUE_AND_GROOVE, {}, ["clean groove, tongue"]),
        (EdgeKind.SHIPLAP, {}, ["clean under-lap, upper lap"]),
        (EdgeKind.TONGUE_AND_GROOVE, {"far": EdgeTreatment.TONGUE_OFF}, ["clean groove"]),
        (EdgeKind.TONGUE_AND_GROOVE, {"far": EdgeTreatment.TONGUE_OFF, "turned": True}, ["clean tongue"]),
        (EdgeKind.TONGUE_AND_GROOVE, {"near": EdgeTreatment.RIPPED, "far": EdgeTreatment.RIPPED}, []),
    ],
)
def test_only_edges_that_stay_milled_are_cleaned(
    kind: EdgeKind, changes: dict[str, object], told: list[str]
) -> None:
    """The groove is at the reference edge, and a piece may be turned; a layout says what is ripped off."""
    profile = EdgeProfile(kind=kind, reach_nm=nm(0.25))
    made = replace(MADE, boards=tuple(replace(one, profile=profile) for one in MADE.boards))
    (surface,) = LAID.surfaces
    laid = layout(with_piece(surface, "2a", **changes))
    assert at_station(made, Station.EDGES, laid)["T2"] == told
    assert len(at_station(made, Station.EDGES)["T2"]) == 1


def test_square_edges_ask_for_nothing_before_the_saw() -> None:
    """With a layout or without one."""
    made, laid = of_two_boards(0.75)
    for readying in (ready_boards(made), ready_boards(made, laid)):
        assert not any(one.at(Station.EDGES) for one in readying.boards)


def test_what_the_saw_does_later_is_told_without_boxes() -> None:
    """Two crosscuts of each board and two rips; no box, for it is ticked on the cut list."""
    made, laid = of_two_boards(0.75)
    *_, part = readying_leaf(made, ready_boards(made, laid)).parts
    assert part.grid is not None
    assert part.grid.columns[-1] == "cut list"
    assert [row[-1] for row in part.grid.rows] == ["2 rips, 2 crosscuts"] * 2
    assert len(part.grid.columns) - 1 not in part.grid.ticks
    assert "Nothing is trimmed or ripped here: the cut list does that" in part.said[0].text


def test_without_a_layout_it_is_told_what_is_left_for_the_saw() -> None:
    """What the rules take off at ends and edges is reckoned with, and nothing is cut beforehand."""
    made, _ = of_two_boards(0.75)
    *_, part = readying_leaf(made, ready_boards(made)).parts
    (said,) = part.said
    assert said.text == (
        "Rip and trim nothing yet: a layout measures boards as they lie, and itself leaves "
        '1/2" at each end and 1/8" along each long edge of a square-edged board to be cut off.'
    )
    assert part.grid is not None
    assert "cut list" not in part.grid.columns
    *_, milled = readying_leaf(MADE, ready_boards(MADE)).parts
    assert milled.said[0].text.endswith('leaves 1/2" at each end to be cut off.')


def test_nothing_left_to_get_ready() -> None:
    """A sentence that says so, and nothing of boards that are not there."""
    sawn = Standing(sawn=("T1", "T2", "T3"))
    calm = replace(MADE, boards=tuple(replace(one, note="") for one in MADE.boards))
    leaf = readying_leaf(calm, ready_boards(calm, LAID, sawn))
    assert leaf.headline.text == "Nothing to get ready: no board of this layout is still to be sawn."
    assert leaf.told_parts == ()
    assert [part.title for part in readying_leaf(MADE, ready_boards(MADE, LAID, sawn)).told_parts] == [
        "Insects and mould"
    ]


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


def said_of_thickness(made: Job, laid: Layout, standing: Standing = NOTHING_DONE) -> str:
    """Give what is told of thickness."""
    (part,) = [
        part
        for part in readying_leaf(made, ready_boards(made, laid, standing)).parts
        if part.title == "Thickness"
    ]
    return " ".join(said.text for said in part.said)


@pytest.mark.parametrize(
    ("paint", "told"),
    [
        (Paint.NONE, 'To ease once both hang: 1/32" at 1a | 1b.'),
        (Paint.NO_LEAD_FOUND, 'To ease once both hang: 1/32" at 1a | 1b.'),
        (
            Paint.UNKNOWN,
            'To ease once both hang, not before the paint of the thicker one is tested: 1/32" at 1a | 1b.',
        ),
        (Paint.LEAD, 'To leave as they are, for the paint of the thicker one holds lead: 1/32" at 1a | 1b.'),
    ],
)
def test_small_steps_wait_for_the_wall(paint: Paint, told: str) -> None:
    """Written finer than the tape is read; nothing to tick before cutting; no dust of paint unknown."""
    made, laid = of_two_boards(0.78125)
    known = replace(made, lots=(Lot(name="hall", paint=paint),))
    assert told in said_of_thickness(known, laid)
    readying = ready_boards(known, laid)
    assert not any(one.at(Station.THICKNESS) for one in readying.boards)
    hung = Standing(hung=tuple(HungCourse(surface_id="wall", course=one) for one in laid.surfaces[0].courses))
    assert "1a | 1b" not in said_of_thickness(known, laid, hung)


def test_a_metric_tape_tells_steps_to_the_tenth() -> None:
    """A 32nd of an inch is 0.8 mm, and not a whole one."""
    made, laid = of_two_boards(0.78125)
    assert "0.8 mm at 1a | 1b" in said_of_thickness(replace(made, tape=TapeStyle(system=System.METRIC)), laid)


def test_lead_is_not_planed() -> None:
    """Such a board is swapped."""
    made, laid = of_two_boards(0.84375)
    known = replace(made, lots=(Lot(name="hall", paint=Paint.LEAD),))
    (work,) = [one for one in ready_boards(known, laid).boards if one.board_id == "B"]
    assert [task.what for task in work.at(Station.THICKNESS)] == ['3/32" thicker at 1a | 1b: swap']


@pytest.mark.parametrize(
    ("thick", "shim", "told"),
    [
        (0.8125, 0.0, ""),
        (0.84375, 0.0, 'plane 3/32" off the back of 1b, not before its paint is tested'),
        (1.0, 0.0, '1/4" thicker at 1a | 1b: swap'),
        (0.8125, 0.0625, ""),
    ],
)
def test_steps_at_a_joint_in_sight(thick: float, shim: float, told: str) -> None:
    """Planed or swapped by their size; small ones wait for the wall, and a shim levels what it can."""
    made, laid = of_two_boards(thick, shim)
    work = {one.board_id: one for one in ready_boards(made, laid).boards}
    assert [task.what for task in work["B"].at(Station.THICKNESS)] == ([told] if told else [])
    if shim:
        assert [task.what for task in work["A"].at(Station.THICKNESS)] == ['shim 1a by 1/16"']


@pytest.mark.parametrize(
    ("thick", "hung", "told"),
    [
        (
            0.84375,
            "",
            (
                "Of boards that are sawn already, before their pieces hang: "
                'plane 3/32" off the back of 1b, not before its paint is tested.'
            ),
        ),
        (
            1.0,
            "1a",
            'Of boards that are sawn already, before their pieces hang: 1/4" thicker at 1a | 1b: swap.',
        ),
        (
            0.84375,
            "1b",
            'Hanging already: 1b, 3/32" thicker at 1a | 1b. Shim the thinner one, or take it down.',
        ),
    ],
)
def test_a_step_is_told_after_its_thicker_board_was_sawn(thick: float, hung: str, told: str) -> None:
    """Its board has no row any more; while it has one, the task stands there and nowhere else."""
    made, laid = of_two_boards(thick)
    (row,) = laid.surfaces[0].courses
    pieces = tuple(piece for piece in row.pieces if piece.label == hung)
    standing = Standing(
        hung=(HungCourse(surface_id="wall", course=replace(row, pieces=pieces)),) if pieces else (),
        sawn=("A", "B"),
    )
    leaf = readying_leaf(made, ready_boards(made, laid, standing))
    assert said_of_thickness(made, laid, standing).endswith(told)
    assert leaf.headline.text == (
        "No board of this layout is still to be sawn, but a step is left where boards meet: see “Thickness”."
    )
    assert told not in said_of_thickness(made, laid)


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


def test_what_nobody_checked_overhead_stands_on_the_first_sheet() -> None:
    """On backing of unknown thickness; not on a wall, nor where its thickness is known."""
    unknown = Framing(solid=True)
    known = Framing(solid=True, thickness_nm=nm(0.75))
    for kind, framing, told in (
        (SurfaceKind.CEILING, unknown, True),
        (SurfaceKind.CEILING, known, False),
        (SurfaceKind.WALL, unknown, False),
    ):
        made = tongued_job(tongued_wall(kind=kind, framing=framing, cut_outs=(), between=(), keep_outs=()))
        dry, *mind = fill_pack(made, tongued_layout(made)).mind
        assert dry.startswith("Are the boards dry? ")
        assert bool(mind) is told
        assert all("What the nails hold overhead was not checked" in one and "wall" in one for one in mind)


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
