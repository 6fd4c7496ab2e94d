"""Fixed pieces against published instances: the optimum is reached, and certified as one."""

from collections.abc import Iterable

import pytest

from plankwright.layout.packing import Need, Packing, pack
from plankwright.layout.plan import Stick
from plankwright.measure import MILLIMETRE
from plankwright.model import EdgeProfile, Face, Rules
from published.instances import ROLL, numbers_of, rolls, triplets

_WORK = 20.0
_HEIGHT = 100 * MILLIMETRE
_UNIT = MILLIMETRE * _HEIGHT
"""Area of a millimetre of length. [nm²]"""


def packed(items: Iterable[int], sticks: Iterable[int]) -> Packing:
    """Cut items from sticks of one width without a kerf, and keep nothing of a stick that is cut. [mm]"""
    sticks = list(sticks)
    return pack(
        [Need(length * MILLIMETRE, _HEIGHT) for length in items],
        [
            Stick(
                board,
                along_from=0,
                along_to=length * MILLIMETRE,
                across_from=0,
                across_to=_HEIGHT,
                face=Face.FRONT,
                hidden_only=False,
                thickness=20 * MILLIMETRE,
                profile=EdgeProfile(),
            )
            for board, length in enumerate(sticks)
        ],
        Rules(crosscut_kerf_nm=0, width_tolerance_nm=0, shortest_piece_nm=max(sticks) * MILLIMETRE),
        work=_WORK,
        seed=1,
    )


@pytest.mark.parametrize("at_hand", [73, 80, 219])
def test_73_rolls_are_enough_and_certified_to_be_the_fewest(at_hand: int) -> None:
    """The published optimum is cut, however many more rolls there are, and no fewer would do."""
    packing = packed(rolls(), [ROLL] * at_hand)
    assert packing.unplaced == ()
    assert packing.wood_nm2 == packing.least_wood_nm2 == 73 * ROLL * _UNIT


def test_72_rolls_are_certified_too_few() -> None:
    """No way to cut 72 rolls gives everything, and nothing is left of what they do give."""
    packing = packed(rolls(), [ROLL] * 72)
    assert packing.placed_nm2 <= packing.most_area_nm2 <= 72 * ROLL * _UNIT < sum(rolls()) * _UNIT


@pytest.mark.parametrize("seed", range(1, 6))
def test_triplets_fill_every_bin(seed: int) -> None:
    """Sixty items fill twenty bins to the last; nineteen cannot hold them."""
    items = triplets(seed)
    packing = packed(items, [1000] * 20)
    assert packing.unplaced == ()
    assert packing.proven
    assert packed(items, [1000] * 19).most_area_nm2 <= 19_000 * _UNIT


@pytest.mark.parametrize(
    ("name", "optimum"),
    [
        # Optima as published with BPPLIB (Delorme, Iori, Martello 2018) for the instances of Falkenauer
        # (1996), Scholl, Klein and Jürgens (1997), Schoenfield (2002) and Wäscher and Gau (1996).
        ("falkenauer/Falkenauer_t60_06", 20),
        ("falkenauer/Falkenauer_t120_00", 40),
        ("falkenauer/Falkenauer_u120_02", 46),
        ("falkenauer/Falkenauer_u250_00", 99),
        ("scholl/N2C2W1_A", 42),
        ("scholl/N3C1W2_E", 132),
        ("hard28/Hard28_BPP645", 58),
        ("waescher/Waescher_TEST0075", 13),
    ],
)
def test_published_bin_packing_is_solved_and_certified(name: str, optimum: int) -> None:
    """As many bins as the published optimum hold everything; one fewer is certified not to."""
    _, capacity, *items = numbers_of(name)
    packing = packed(items, [capacity] * optimum)
    assert packing.unplaced == ()
    assert packing.wood_nm2 == packing.least_wood_nm2 == optimum * capacity * _UNIT


@pytest.mark.parametrize(
    ("name", "optimum"),
    [
        # Instances of Crainic et al. (2011) and Hemmelmayr et al. (2012), stock priced by its length. These
        # optima are not published but were computed for this project beforehand, bound and cost being equal.
        ("vscsp/Crainic1_1_A_3_6", 10_470),
        ("vscsp/Crainic1_3_B_0_0", 1_870),
        ("vscsp/Hemmelmayr2_50_3_1_5", 2_590),
    ],
)
def test_stock_of_several_lengths_is_used_as_sparingly_as_can_be(name: str, optimum: int) -> None:
    """Sticks of several lengths in limited number: the least that they add up to is found and certified."""
    kinds, *numbers = numbers_of(name)
    stock, (_, *needs) = numbers[: 3 * kinds], numbers[3 * kinds :]
    sticks = [length for length, count in zip(stock[::3], stock[1::3], strict=True) for _ in range(count)]
    items = [length for length, count in zip(needs[::2], needs[1::2], strict=True) for _ in range(count)]
    packing = packed(items, sticks)
    assert packing.unplaced == ()
    assert packing.wood_nm2 == packing.least_wood_nm2 == optimum * _UNIT
