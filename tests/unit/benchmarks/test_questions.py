"""What is made of measurements: counts, shares, and whether a figure is met."""

from collections.abc import Callable

import pytest

from benchmarks.family import Figure, Row
from benchmarks.questions import pile, planted_walls, short, yard
from builders import nm
from plankwright.layout.result import Wanted
from village import small_job

FAR = 100


@pytest.mark.parametrize("enough_from", [5, 6, 7, 12, 40, FAR])
def test_halving_finds_the_first_count_that_is_enough(enough_from: int) -> None:
    """In far fewer questions than counts."""
    asked: list[int] = []

    def enough(count: int) -> bool:
        asked.append(count)
        return count >= enough_from

    assert pile._halving(enough, 5, FAR) == enough_from
    assert len(asked) <= 14


def test_halving_gives_up_where_all_is_not_enough() -> None:
    """The last question is about all there is."""
    assert pile._halving(lambda _: False, 5, FAR) is None


def _found(*, covers: bool, joints: int = 0, wood: int = 100, time_s: float = 10.0, faults: int = 0) -> Row:
    return {
        "covers": covers,
        "joints": joints,
        "wood_nm2": wood,
        "bare_nm2": 0 if covers else 10,
        "time_s": time_s,
        "best_s": time_s / 2,
        "faults": ["a fault"] * faults,
        "bound_wood_nm2": 100,
        "stages": {"first layout": 1.0, "stretch by stretch": time_s - 1},
    }


def _wall_row(seed: int, ours: Row) -> Row:
    return {
        "seed": seed,
        "must_nm2": 1000,
        "known_joints": 2,
        "known_wood_nm2": 104,
        "first_s": 0.5,
        "ours": ours,
        "eye": _found(covers=False, time_s=1.0),
        "plain": _found(covers=False, time_s=20.0),
        "area_sum_says_enough": True,
    }


Figures = Callable[..., object]


def _named(figures: object, beginning: str) -> Figure:
    assert isinstance(figures, tuple)
    (figure,) = (each for each in figures if each.name.startswith(beginning))
    assert isinstance(figure, Figure)
    return figure


@pytest.mark.parametrize(
    "fault",
    [
        _found(covers=False),
        _found(covers=True, joints=3),
        _found(covers=True, time_s=21.0),
        _found(covers=True, faults=1),
    ],
    ids=["bare", "joints", "late", "faulty"],
)
def test_exact_counts_what_is_reached(fault: Row) -> None:
    """Bare wall, a joint too many, a second too late or a fault: none of it counts."""
    good = [_wall_row(seed, _found(covers=True, joints=2)) for seed in range(49)]
    met = _named(planted_walls.exact_figures(good, {}), "full cover, no more")
    assert (met.value, met.met) == ("49 of 49 (100 %)", True)
    assert met.baselines["by eye"] == "0 of 49 (0 %)"
    rows = [*good, _wall_row(49, fault)]
    assert _named(planted_walls.exact_figures(rows, {}), "full cover, no more").met
    rows = [*rows, _wall_row(50, fault)]
    missed = _named(planted_walls.exact_figures(rows, {}), "full cover, no more")
    assert (missed.value, missed.met) == ("49 of 51 (96 %)", False)


def test_real_compares_wood_with_the_bound_where_all_is_covered() -> None:
    """One that leaves bare does not count, and none that covers is not met."""
    rows = [_wall_row(0, _found(covers=True, wood=101)), _wall_row(1, _found(covers=False, wood=50))]
    wood = _named(planted_walls.real_figures(rows, {}), "wood spent")
    assert (wood.value, wood.met) == ("1.010 (worst 1.010)", True)
    assert wood.baselines["known"] == "1.040 (worst 1.040)"
    assert _named(planted_walls.real_figures(rows[1:], {}), "wood spent").met is False


def test_stages_are_averaged() -> None:
    """Over the instances, those that a stage is missing in as well."""
    rows = [_wall_row(0, _found(covers=True)), _wall_row(1, _found(covers=True) | {"stages": {"other": 4.0}})]
    means = planted_walls.stage_means(rows)
    assert means == {"first layout": 0.5, "stretch by stretch": 4.5, "other": 2.0}


def test_boards_bought_are_as_asked_for() -> None:
    """So many of each line, and alike to the pile where nothing is said."""
    asked = (
        Wanted(count=2, length_nm=nm(90), width_nm=nm(5)),
        Wanted(count=1, length_nm=nm(40), width_nm=nm(6)),
    )
    boards = short.bought(small_job(), asked)
    assert [(each.length_nm, each.width_start_nm) for each in boards] == [
        (nm(90), nm(5)),
        (nm(90), nm(5)),
        (nm(40), nm(6)),
    ]
    assert {each.thickness_nm for each in boards} == {nm(0.75)}
    assert len({each.id for each in boards}) == 3


def _yard_row(walls: int, time_s: float) -> Row:
    return {
        "walls": walls,
        "boards": 100 * walls,
        "must_nm2": 100,
        "ours": {"time_s": time_s, "peak_mib": 300.0, "bare_nm2": 0},
    }


@pytest.mark.parametrize(("slow", "exponent", "met"), [(1000.0, "1.00", True), (3000.0, "1.52", False)])
def test_growth_is_an_exponent(slow: float, exponent: str, *, met: bool) -> None:
    """Of ten times the boards: ten times the time is 1, and thirty times is log 30 / log 10 = 1.48 or so."""
    rows = [_yard_row(50, slow)]
    others = {"yard-6": [_yard_row(6, 1000.0 * 6 / 50)], "yard-50": rows}
    figure = _named(yard._figures(50)(rows, others), "time grows")
    assert (figure.value, figure.met) == (exponent, met)


def test_growth_is_left_out_where_one_size_was_not_measured() -> None:
    """Nothing is made up."""
    figures = yard._figures(50)([_yard_row(50, 10.0)], {})
    assert not any(figure.name.startswith("time grows") for figure in figures)
