"""Filling by eye keeps the rules, takes what wastes least, and uses what it cut off."""

from dataclasses import replace
from pathlib import Path

import pytest

from benchmarks.by_eye import lay_by_eye
from benchmarks.fitting import Eye
from benchmarks.registry import FAMILIES
from builders import board, box_outline, job, nm, studs, wall
from plankwright.check import check_layout, faults
from plankwright.files import read_job
from plankwright.layout.runs import Run
from plankwright.layout.sticks import whole_sticks
from plankwright.model import Board, ConcealedZone, Job, JointPolicy, Layout, Rectangle, Rules

EXAMPLES = Path(__file__).parents[3] / "examples"
PLAIN = Rules(expansion_gap_nm=0)


def boards_of(layout: Layout) -> list[list[str]]:
    """Give the boards of each course."""
    return [[piece.board_id for piece in course.pieces] for course in layout.surfaces[0].courses]


@pytest.mark.parametrize("seed", [0, 1, 2, 1000])
@pytest.mark.parametrize("family", ["exact", "real"])
def test_its_layouts_break_no_rule(family: str, seed: int) -> None:
    """By the checker, score included, and what it leaves bare is little."""
    instance = FAMILIES[family].instance(seed)
    layout = lay_by_eye(instance.job)
    assert faults(check_layout(instance.job, layout)) == ()
    assert layout.surfaces[0].score.bare_nm2 < 0.3 * instance.known[0].wood_spent_nm2


@pytest.mark.parametrize("example", ["village-hall", "small-ceiling"])
@pytest.mark.parametrize("joints", list(JointPolicy))
def test_its_layouts_of_the_examples_break_no_rule(example: str, joints: JointPolicy) -> None:
    """With gable, cut-outs, keep-outs, tapered and milled boards."""
    given = read_job(EXAMPLES / example).job
    asked = replace(given, rules=replace(given.rules, joints=joints))
    assert faults(check_layout(asked, lay_by_eye(asked))) == ()


def test_the_board_that_wastes_least_is_taken() -> None:
    """Of three that reach, the one that leaves least."""
    given = job(wall(96, 5), [board("A", 106, 5.25), board("B", 98, 5.25), board("C", 110, 5.25)], PLAIN)
    assert boards_of(lay_by_eye(given)) == [["B"]]


def _jointed(boards: list[Board], rules: Rules = PLAIN) -> Job:
    return job(wall(96, 5, framing=studs(0.75, 24, 48, 72, 95.25)), boards, rules)


def test_a_pair_meets_on_framing() -> None:
    """Where no board reaches, two that meet on a stud."""
    layout = lay_by_eye(_jointed([board("A", 74, 5.25), board("B", 26, 5.25), board("C", 44, 5.25)]))
    assert boards_of(layout) in ([["B", "A"]], [["A", "B"]])
    assert layout.covers_everything
    assert layout.surfaces[0].score.joints_in_sight == 1


def test_a_pair_in_sight_matches_in_thickness() -> None:
    """Rather three that match than two that do not."""
    boards = [board("A", 60, 5.25), board("B", 50, 5.25, thickness_nm=nm(1)), board("C", 50, 5.25)]
    assert sorted(boards_of(lay_by_eye(_jointed(boards)))[0]) == ["A", "C"]


def test_four_boards_where_three_do_not_reach() -> None:
    """Ever one more, from the start of the run."""
    boards = [board(name, 26, 5.25) for name in "ABCD"]
    layout = lay_by_eye(_jointed(boards))
    assert layout.covers_everything
    assert len(layout.pieces) == 4


def test_joints_go_behind_a_fixture_only_where_none_may_show() -> None:
    """And what cannot be joined there stays bare."""
    rules = replace(PLAIN, joints=JointPolicy.NEVER)
    boards = [board(name, 50, 5.25) for name in "ABCD"]
    bench = ConcealedZone(id="bench", place=Rectangle(left=nm(40), bottom=0, right=nm(60), top=nm(5)))
    surface = replace(_jointed(boards).surfaces[0], outline=box_outline(96, 10), concealed=(bench,))
    layout = lay_by_eye(job(surface, boards, rules))
    assert len(layout.surfaces[0].courses[0].pieces) == 2
    assert layout.surfaces[0].bare != ()
    assert layout.surfaces[0].score.joints_in_sight == 0


def test_what_is_cut_off_is_used_again() -> None:
    """One board for two courses."""
    given = job(wall(48, 10), [board("A", 98, 5.25)], PLAIN)
    assert boards_of(lay_by_eye(given)) == [["A"], ["A"]]
    assert faults(check_layout(given, lay_by_eye(given))) == ()


def test_a_wide_board_leaves_a_strip() -> None:
    """What is ripped off is there for another course."""
    sticks = whole_sticks(board("A", 97, 10.25), 0, PLAIN)
    fitted = Eye(Run(0, nm(96), (), ()), nm(5), (), PLAIN).fit(sticks)
    assert [(stick.length, stick.width) for stick in fitted.left] == [(nm(96), nm(4.875))]


def test_it_looks_ahead_to_the_closing_course_only() -> None:
    """Nothing narrower than a course is left at the end."""
    given = job(wall(96, 11), [board(name, 98, 5.5) for name in "ABCD"], PLAIN)
    layout = lay_by_eye(given)
    assert layout.covers_everything
    assert all(course.height_nm >= PLAIN.narrowest_course_nm for course in layout.surfaces[0].courses)
