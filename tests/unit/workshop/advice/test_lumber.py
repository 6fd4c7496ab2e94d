"""What the pile and the wall come to, and how it is told."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builders import board, course, flaw, job, layout, piece, rectangle, surface_layout, wall
from corner import corner_job, corner_layout
from plankwright.check import recount
from plankwright.measure import System, TapeStyle
from plankwright.model import Board, Job, NailsLeft, Per, Price, Rules, Task, Treatment
from plankwright.trade.lumber.facts import UNKNOWN_GRAVITY
from plankwright.trade.source import Source
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.woods import every_gravity, gravity_of, gravity_sources_of
from trade_jobs import tongued_job, tongued_layout

CREOSOTED = board("T", 96, 6, treatment=Treatment.CREOSOTE, flaws=(flaw(0, 96),))
PINE = board("P", 96, 6, species="longleaf pine")


def pile(*boards: Board) -> Job:
    """Make a job of some boards."""
    return job(wall(96, 16), boards, Rules(expansion_gap_nm=0))


def told(made: Job, part: str) -> str:
    """Give what is said of a part without a layout."""
    leaf = lumber_leaf(made, measure_lumber(made))
    return " ".join(said.text for one in leaf.parts if one.title == part for said in one.said)


def test_treated_boards_count_nowhere() -> None:
    """One beside a sound one changes no sum and halves no share."""
    assert measure_lumber(pile(PINE, CREOSOTED)) == measure_lumber(pile(PINE))
    assert told(pile(PINE, CREOSOTED), "Weight") == told(pile(PINE), "Weight")


def test_nothing_but_treated_boards() -> None:
    """Nothing, and no division by it."""
    lumber = measure_lumber(pile(CREOSOTED))
    assert lumber.boards == 0
    assert lumber.recovery == 0
    assert lumber.pile.most_kg == 0


def test_a_layout_without_pieces_hangs_nothing() -> None:
    """It weighs nothing and stores nothing, unlike a job that was not laid out yet."""
    made = replace(pile(PINE), tasks=(Task(name="pull", minutes=Fraction(6), per=Per.BOARD),))
    bare = measure_lumber(made, layout(surface_layout(made.surfaces[0])))
    assert bare.wall is not None
    assert bare.wall.most_kg == 0
    assert bare.heaviest is None
    assert (*bare.carbon_dioxide_kg, float(bare.hours)) == (0.0, 0.0, 0.0)
    assert measure_lumber(made).wall is None
    assert measure_lumber(made).carbon_dioxide_kg[0] > 0


def test_what_hangs_stores_what_its_wood_holds() -> None:
    """With a layout the pieces count, not the share of the pile."""
    made = tongued_job()
    lumber = measure_lumber(made, tongued_layout(made))
    assert lumber.wall is not None
    dry_kg = lumber.carbon_dioxide_kg[1] / (0.5 * 44 / 12)
    assert dry_kg < lumber.wall.most_kg < dry_kg * 1.2


@pytest.mark.parametrize(
    ("waste", "square_feet", "written"),
    [
        (None, Fraction(32, 3) * Fraction(11, 10), "10 % more"),
        (Fraction(0), Fraction(32, 3), "0%"),
        (Fraction(1, 5), Fraction(40, 3), "20%"),
    ],
)
def test_waste_as_it_was_given(waste: Fraction | None, square_feet: Fraction, written: str) -> None:
    """None that was given is none; left out, a tenth more is bought than the 10-2/3 ft²."""
    price = Price(name="new pine", cost=Fraction(3), per=Per.SQUARE_FOOT, waste=waste)
    made = replace(pile(PINE), prices=(price,))
    lumber = measure_lumber(made)
    assert lumber.instead[0].amount == square_feet
    (grid,) = [part.grid for part in lumber_leaf(made, lumber).parts if part.title == "Against bought wood"]
    assert grid is not None
    assert grid.rows[0][2] == written
    left_out = "10 % more than the area is bought" in told(made, "Against bought wood")
    assert left_out is (waste is None)


def test_hours_own_up_to_what_is_done_already() -> None:
    """Nails that are pulled are reckoned again, and it is said."""
    made = replace(
        pile(replace(PINE, nails=NailsLeft.CHECKED)),
        tasks=(Task(name="pull nails", minutes=Fraction(60), per=Per.BOARD),),
    )
    assert "1.0 hours for the whole job: what is done already" in told(made, "Hours")
    assert "is not taken off" in told(made, "Hours")


def test_hours_of_a_layout_that_leaves_something_bare() -> None:
    """They are those for what hangs, areas as well: one course of 16 inches of two, half of 10-2/3 ft²."""
    times = (
        Task(name="pull", minutes=Fraction(60), per=Per.BOARD),
        Task(name="oil", minutes=Fraction(60), per=Per.SQUARE_FOOT),
    )
    made = replace(pile(board("A", 96, 8), board("B", 96, 8)), tasks=times)
    (surface,) = made.surfaces
    lower = course(1, (0, 8), piece(surface, "1a A", (0, 96), (0, 8)))
    laid = surface_layout(surface, lower, bare=[rectangle(0, 8, 96, 16)])
    scored = layout(replace(laid, score=recount(made, laid)))
    lumber = measure_lumber(made, scored)
    assert [time.count for time in lumber.tasks] == [1, Fraction(16, 3)]
    (part,) = [part for part in lumber_leaf(made, lumber).parts if part.title == "Hours"]
    assert part.said[0].text.startswith("By your own times 6.3 hours for what hangs by this layout: ")


def test_wood_in_the_units_of_the_tape() -> None:
    """A board of 8 ft by 6 in by 3/4 in is a quarter of a cubic foot: 0.007 m³."""
    made = pile(PINE)
    assert "truly 0.25 cu ft of wood." in told(made, "Measure")
    assert "m³" not in told(made, "Measure")
    metric = replace(made, tape=TapeStyle(system=System.METRIC))
    assert "truly 0.007 m³ of wood." in told(metric, "Measure")


def test_a_species_without_figures_is_named() -> None:
    """Once, with its count; treated boards are out of it."""
    strange = [board(name, 96, 6, species="unobtainium") for name in "AB"]
    said = told(pile(*strange, PINE, replace(CREOSOTED, species="kryptonite")), "Weight")
    assert "No figures are known of “unobtainium” (2 boards)" in said
    assert "kryptonite" not in said
    assert "No figures" not in told(pile(PINE), "Weight")


def weight_sources(*boards: Board) -> tuple[Source, ...]:
    """Give the sources of the weight of a pile."""
    made = pile(*boards)
    (part,) = [one for one in lumber_leaf(made, measure_lumber(made)).parts if one.title == "Weight"]
    return part.said[0].sources


@pytest.mark.parametrize("species", ["", "unobtainium", "heart pine", "willow"])
def test_where_every_species_may_be_it_is_cited(species: str) -> None:
    """With the sources of both ends; for a name without a figure as well."""
    one = board("A", 96, 6, species=species)
    assert gravity_of(one) == every_gravity() == (0.31, 0.88)
    assert UNKNOWN_GRAVITY in weight_sources(one)
    assert {source.key for source in gravity_sources_of(one)} == {"unknown-gravity", "table-5-3-copy"}


@pytest.mark.parametrize("species", ["longleaf pine", "pine", "cedar"])
def test_where_the_figures_are_known_they_alone_are(species: str) -> None:
    """Of one species or of all of a family."""
    assert UNKNOWN_GRAVITY not in weight_sources(board("A", 96, 6, species=species))


def test_the_heaviest_piece_is_named_with_its_surface() -> None:
    """Where there are several, a label alone would not say which; where there is one, nobody needs it."""
    heaviest = measure_lumber(corner_job(), corner_layout()).heaviest
    assert heaviest is not None
    assert heaviest[0] in {"north 1a", "north 2a", "north 3a"}
    made = tongued_job()
    alone = measure_lumber(made, tongued_layout(made)).heaviest
    assert alone is not None
    assert alone[0] in {"1a", "2a", "3a"}
