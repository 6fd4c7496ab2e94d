"""Nails against tables and worked examples of others, and the published rules against the protected depth."""

from fractions import Fraction

import pytest

from plankwright.measure import INCH, MILLIMETRE
from plankwright.trade.fasteners.facts import PROTECTED_DEPTH_NM, TRUSTED_SHARE
from plankwright.trade.fasteners.nails import nails_of
from plankwright.trade.fasteners.predrilling import widest_hole_nm
from plankwright.trade.fasteners.reach import (
    DepthRule,
    choose_nail,
    face_passage,
    published_lengths,
)
from plankwright.trade.fasteners.withdrawal import withdrawal_n

COMMON = {  # Table citing NDS and ASTM F1667, read on a page that repeats it. [in]
    "2d": (1, ".072"), "3d": (1.25, ".080"), "4d": (1.5, ".099"), "5d": (1.75, ".099"), "6d": (2, ".113"),
    "8d": (2.5, ".131"), "10d": (3, ".148"), "12d": (3.25, ".148"), "16d": (3.5, ".162"), "20d": (4, ".192"),
    "30d": (4.5, ".207"), "40d": (5, ".225"), "60d": (6, ".263"),
}  # fmt: skip


NEWTONS_PER_LBF = 4.4482216
"""By the definition of the pound-force."""


def penny_length_nm(penny: int) -> int:
    """Give (d + 2) / 4 in, which holds from 2d to 10d (read on a page that repeats it)."""
    return round(Fraction(penny + 2, 4) * INCH)


def inches(text: str) -> int:
    """Give a number of inches in nanometres."""
    return round(Fraction(text) * INCH)


def test_common_nails() -> None:
    """Every size of the table, and no other."""
    found = {nail.size: nail for nail in nails_of("common nail")}
    assert list(found) == list(COMMON)
    for size, (length, diameter) in COMMON.items():
        assert found[size].length_nm == length * INCH
        assert found[size].diameter_nm == inches(diameter)


@pytest.mark.parametrize("penny", [2, 3, 4, 5, 6, 8, 10])
def test_penny_sizes(penny: int) -> None:
    """The rule and the table agree."""
    found = {nail.size: nail.length_nm for nail in nails_of("common nail")}
    assert found[f"{penny}d"] == penny_length_nm(penny)


@pytest.mark.parametrize(
    ("gravity", "diameter", "bite", "lbf", "newtons"),
    [(0.48, 0.131, 1.75, 287.3, 1278), (0.48, 0.0475, 1.25, 74.4, 331), (0.35, 0.0475, 1.25, 33.8, 150)],
)
def test_withdrawal(gravity: float, diameter: float, bite: float, lbf: float, newtons: float) -> None:
    """Wood Handbook equation (read on a page that repeats it), in inches and pounds as it is stated apart."""
    assert 7850 * gravity**2.5 * diameter * bite == pytest.approx(lbf, abs=0.1)
    found = withdrawal_n(gravity, diameter * 25.4, bite * 25.4)
    assert found == pytest.approx(newtons, abs=1)
    assert found == pytest.approx(lbf * NEWTONS_PER_LBF, rel=1e-3)


def test_a_fifth_is_what_nails_are_designed_for() -> None:
    """engineeringtoolbox.com (read): G 0.45, D 0.203 in is good for 38 lbf an inch, by 1380 G^(5/2) D.

    FPL-093 (read) has 6900 for the load that draws it, on the same basis: five times as much.
    """
    assert pytest.approx(38, abs=0.5) == 1380 * 0.45**2.5 * 0.203
    assert TRUSTED_SHARE.value == 6900 / 1380


@pytest.mark.parametrize(
    ("between", "length", "bite"),
    [("0", "2", "5/4"), ("0", "9/4", "3/2"), ("1/2", "2", "3/4"), ("1/2", "9/4", "1"), ("1/2", "5/2", "5/4")],
)
def test_bites_of_a_three_quarter_board(between: str, length: str, bite: str) -> None:
    """What is left for the stud behind a 3/4 in board, bare and over 1/2 in wallboard (computed)."""
    nail = next(one for one in nails_of("15 gauge finish nail") if one.length_nm == inches(length))
    passage = face_passage(inches("3/4"), inches(between))
    assert passage.bite_nm(nail) == passage.deepest_nm(nail) == inches(bite)


def test_published_rules_pull_against_the_protected_depth() -> None:
    """Three times the board, and 1-1/2 in of bite, pass the 1-1/4 in where a cable may lie (all read)."""
    told = published_lengths(inches("3/4"), 0)
    assert told.three_times_nm == inches("9/4")
    assert told.three_times_depth_nm > PROTECTED_DEPTH_NM.value
    assert told.siding_nm == inches("9/4")
    assert told.siding_depth_nm > PROTECTED_DEPTH_NM.value


@pytest.mark.parametrize(
    "kind", ["common nail", "box nail", "finishing nail", "16 gauge finish nail", "18 gauge brad"]
)
@pytest.mark.parametrize("opened", [False, True])
@pytest.mark.parametrize("board", ["3/8", "1/2", "3/4", "13/16", "1", "5/4", "2"])
def test_no_default_passes_the_protected_depth(kind: str, opened: bool, board: str) -> None:  # noqa: FBT001 - a parameter of the test
    """Whatever the board and the kind of nail, and whether or not the wall was opened."""
    chosen = choose_nail(nails_of(kind), face_passage(inches(board), 0), DepthRule(), opened=opened)
    assert chosen.deepest_nm <= PROTECTED_DEPTH_NM.value
    assert opened or chosen.deepest_nm < PROTECTED_DEPTH_NM.value


def test_prebored_holes() -> None:
    """civilengineeringx.com on the NDS (read): 75 % of the diameter, 90 % where the gravity is over 0.6."""
    nail = next(one for one in nails_of("common nail") if one.size == "8d")
    assert widest_hole_nm(nail, 0.6) == pytest.approx(inches(".131") * 0.75, abs=1)
    assert widest_hole_nm(nail, 0.61) == pytest.approx(inches(".131") * 0.9, abs=1)
    assert widest_hole_nm(nail, None) == widest_hole_nm(nail, 0.4)


def test_finishing_nails() -> None:
    """sizes.com (read): lengths by the penny, gauges; wovenwire.com (read): gauges in inches."""
    found = {
        nail.size: (nail.length_nm, nail.diameter_nm, nail.per_pound) for nail in nails_of("finishing nail")
    }
    assert found["4d"] == (inches("3/2"), inches(".072"), 584)
    assert found["6d"] == (2 * INCH, inches(".0915"), 309)
    # 12-1/2 and 11-1/2 lie midway: 12 is .1055, 13 .0915, 11 .1205.
    assert found["8d"][1] == (inches(".1055") + inches(".0915")) // 2
    assert found["10d"][1] == (inches(".1205") + inches(".1055")) // 2
    assert all(length == penny_length_nm(int(size[:-1])) for size, (length, *_) in found.items())


def test_gun_nails_by_their_gauge() -> None:
    """18 gauge 1.2 to 1.25 mm, 16 gauge 0.0625 in, 15 gauge 0.072 in (all read)."""
    assert 1.2 * MILLIMETRE <= nails_of("18 gauge brad")[0].diameter_nm <= 1.25 * MILLIMETRE
    assert {nail.diameter_nm for nail in nails_of("16 gauge finish nail")} == {inches("1/16")}
    assert {nail.diameter_nm for nail in nails_of("15 gauge finish nail")} == {inches(".072")}
