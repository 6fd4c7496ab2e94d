"""Fixed pieces are cut from sticks: what fits, what is best, and bounds that hold."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plankwright.layout.packing import Need, Packing, lost_besides, pack
from plankwright.layout.plan import Stick
from plankwright.measure import MILLIMETRE, Nm
from plankwright.model import EdgeProfile, Face, Rules

WORK = 2.0
KERF = 3
RULES = Rules(
    crosscut_kerf_nm=KERF * MILLIMETRE,
    width_tolerance_nm=MILLIMETRE,
    shortest_piece_nm=10_000 * MILLIMETRE,
    narrowest_course_nm=50 * MILLIMETRE,
)


def stick(board: int, length: int, width: int = 100, *, hidden_only: bool = False) -> Stick:
    """Make a stick that begins 20 mm along its board and 10 mm across it. [mm]"""
    along, across = 20 * MILLIMETRE, 10 * MILLIMETRE
    end, side = along + length * MILLIMETRE, across + width * MILLIMETRE
    return Stick(board, along, end, across, side, Face.FRONT, hidden_only, 20 * MILLIMETRE, EdgeProfile())


def need(length: int, height: int = 100, *, hidden: bool = False) -> Need:
    """Make a need. [mm]"""
    return Need(length * MILLIMETRE, height * MILLIMETRE, hidden)


def kept(wood: Stick, parts: Sequence[Stick]) -> int:
    """Give what of a stick is worth keeping past the pieces that begin at its start. [nm²]"""
    left = wood.along_to - max(part.along_to for part in parts) - RULES.crosscut_kerf_nm
    worth_it = left >= RULES.shortest_piece_nm and wood.width >= RULES.narrowest_course_nm
    return left * wood.width if worth_it else 0


def packed(needs: Sequence[Need], sticks: Sequence[Stick], *, work: float = WORK) -> Packing:
    """Pack, and check what holds for every packing."""
    packing = pack(needs, sticks, RULES, work=work, seed=1)
    check(packing, needs, sticks)
    return packing


def check(packing: Packing, needs: Sequence[Need], sticks: Sequence[Stick]) -> None:
    """Each piece is whole, lies in one stick that suits it, and is a kerf from the next."""
    places = sorted([place for place, _ in packing.chosen] + list(packing.unplaced))
    assert places == list(range(len(needs)))
    cut: dict[Stick, list[Stick]] = defaultdict(list)
    for place, part in packing.chosen:
        wanted = needs[place]
        (whole,) = (
            wood
            for wood in sticks
            if (wood.board, wood.face) == (part.board, part.face)
            and wood.along_from <= part.along_from < part.along_to <= wood.along_to
            and wood.across_from == part.across_from < part.across_to <= wood.across_to
        )
        assert part.length == wanted.length
        assert part.width == min(wanted.height, whole.width)
        assert part.width + RULES.width_tolerance_nm >= wanted.height
        assert wanted.hidden or not whole.hidden_only
        cut[whole].append(part)
    for parts in cut.values():
        parts.sort(key=lambda part: part.along_from)
        for first, second in pairwise(parts):
            assert second.along_from - first.along_to >= RULES.crosscut_kerf_nm
    placed = sum(needs[place].length * needs[place].height for place, _ in packing.chosen)
    assert packing.placed_nm2 == placed <= packing.most_area_nm2
    assert packing.wood_nm2 == sum(
        wood.length * wood.width - kept(wood, parts) for wood, parts in cut.items()
    )
    assert (packing.least_wood_nm2 is None) == bool(packing.unplaced)


def test_kerf_lies_between_two_pieces_and_none_after_the_last() -> None:
    """Two pieces and one kerf fill a stick to the end; a millimetre less is too short for both."""
    needs = [need(500), need(300)]
    assert packed(needs, [stick(0, 500 + KERF + 300)]).unplaced == ()
    assert packed(needs, [stick(0, 500 + KERF + 299)]).unplaced == (1,)


def test_stick_narrower_by_the_tolerance_serves_over_its_whole_width() -> None:
    """A board a little narrower than its course is used as wide as it is; a narrower one is not."""
    ((_, part),) = packed([need(500, 101)], [stick(0, 500, 100)]).chosen
    assert part.width == 100 * MILLIMETRE
    assert packed([need(500, 102)], [stick(0, 500, 100)]).unplaced == (0,)


def test_blemished_stick_serves_hidden_pieces_only() -> None:
    """The hidden piece makes way: it takes the blemished stick and leaves the clean one."""
    sticks = [stick(0, 500), stick(1, 500, hidden_only=True)]
    chosen = dict(packed([need(500, hidden=True), need(500)], sticks).chosen)
    assert [chosen[place].board for place in (0, 1)] == [1, 0]
    assert packed([need(500), need(500)], sticks).unplaced == (1,)


def test_larger_area_goes_before_more_pieces() -> None:
    """One wide piece covers more than two narrow ones of the same length."""
    packing = packed([need(200, 40), need(200, 40), need(403, 100)], [stick(0, 403)])
    assert packing.unplaced == (0, 1)
    assert packing.proven
    assert packing.most_area_nm2 == 403 * 100 * MILLIMETRE**2


def test_everything_placed_goes_before_wood_saved() -> None:
    """Both pieces are cut although the second needs a whole long stick of its own."""
    packing = packed([need(300), need(400, 120)], [stick(0, 400), stick(1, 4000, 120)])
    assert packing.unplaced == ()


def test_smallest_stick_that_does_is_cut() -> None:
    """Nothing is cut from a long or a wide stick that a smaller one can give."""
    sticks = [stick(0, 900), stick(1, 700), stick(2, 700, 150), stick(3, 690)]
    packing = packed([need(400), need(297)], sticks)
    assert {part.board for _, part in packing.chosen} == {1}
    assert packing.wood_nm2 == packing.least_wood_nm2
    assert packing.proven


def test_best_fit_is_improved_on() -> None:
    """Longest first joins the two longest and leaves a piece over; one of them on each stick leaves none."""
    needs = [need(100 * length - KERF) for length in (4, 4, 3, 3, 3, 3)]
    sticks = [stick(board, 100 * 10 - KERF) for board in range(2)]
    assert len(packed(needs, sticks, work=0.0).unplaced) == 1
    packing = packed(needs, sticks)
    assert packing.unplaced == ()
    assert packing.proven


def test_shortage_is_certified() -> None:
    """Three pieces of more than half a stick need three sticks; with two, the bound says so."""
    packing = packed([need(501)] * 3, [stick(board, 1000) for board in range(2)])
    assert packing.most_area_nm2 == packing.placed_nm2 == 2 * 501 * 100 * MILLIMETRE**2


def test_piece_too_long_for_every_stick_is_certified_at_once() -> None:
    """It needs no search to say that such a piece cannot be had."""
    packing = packed([need(1001), need(400)], [stick(0, 1000)], work=0.0)
    assert packing.unplaced == (0,)
    assert packing.proven


def test_lengths_without_a_common_step_pack_to_the_last_nanometre() -> None:
    """Sizes that share no step are priced on a grid, yet cut and bounded exactly."""
    kerf = RULES.crosscut_kerf_nm
    parts = [[1_234_567_891, 765_432_107, 99_999_989], [1_111_111_111, 543_210_987, 445_678_901]]
    whole = [sum(lengths) + 2 * kerf for lengths in parts]
    needs = [Need(length, 100 * MILLIMETRE) for lengths in parts for length in lengths]
    sticks = [long_stick(board, length) for board, length in enumerate(whole)]
    packing = packed(needs, sticks)
    assert packing.unplaced == ()
    short = [long_stick(0, whole[0]), long_stick(1, whole[1] - 1)]
    least = min(need.length for need in needs)
    assert packed(needs, short).placed_nm2 <= (sum(sum(lengths) for lengths in parts) - least) * 10**8


def long_stick(board: int, length: Nm) -> Stick:
    """Make a stick of any length. [nm]"""
    face, width = Face.FRONT, 100 * MILLIMETRE
    return Stick(board, 0, length, 0, width, face, hidden_only=False, thickness=1, profile=EdgeProfile())


@pytest.mark.parametrize("work", [0, 1, 3, 10, 100])
def test_any_work_gives_a_valid_packing_with_valid_bounds(work: int) -> None:
    """Little work gives a poorer packing and looser bounds, never wrong ones."""
    needs = [need(length) for length in (440, 240, 240, 220, 210, 170, 80, 80, 60, 60)]
    sticks = [stick(board, 960 - board) for board in range(2)]
    packing = packed(needs, sticks, work=work)
    assert packing.most_area_nm2 >= packed(needs, sticks).placed_nm2


def test_stop_is_heeded_and_the_best_so_far_kept() -> None:
    """Whoever stops at once still gets what best fit found."""
    needs, sticks = [need(400), need(500)], [stick(0, 1000)]
    packing = pack(needs, sticks, RULES, work=WORK, seed=1, stopped=lambda: True)
    check(packing, needs, sticks)
    assert packing.unplaced == ()


def test_same_work_and_seed_give_the_same_packing() -> None:
    """Nothing hangs on a clock or on the order in which alike sticks come."""
    needs = [need(97 + 53 * place % 401, 60 + 20 * (place % 3)) for place in range(30)]
    sticks = [stick(board, 700 + 37 * board, 70 + 10 * (board % 5)) for board in range(12)]
    first, second = (pack(needs, sticks, RULES, work=0.5, seed=4) for _ in range(2))
    assert first == second


@pytest.mark.parametrize(("needs", "sticks"), [([], []), ([], [stick(0, 9)]), ([need(5)], [])])
def test_nothing_to_cut_or_to_cut_from(needs: list[Need], sticks: list[Stick]) -> None:
    """No needs are all placed; without sticks nothing is."""
    packing = packed(needs, sticks)
    assert packing.unplaced == tuple(range(len(needs)))
    assert packing.proven


needs_strategy = st.lists(
    st.builds(need, st.integers(1, 12), st.integers(1, 4), hidden=st.booleans()), min_size=1, max_size=5
)
sticks_strategy: st.SearchStrategy[list[Stick]] = st.lists(
    st.tuples(st.integers(1, 30), st.integers(1, 4), st.booleans()), min_size=1, max_size=3
).map(
    lambda drawn: [
        stick(board, length, width, hidden_only=hidden) for board, (length, width, hidden) in enumerate(drawn)
    ]
)


@given(needs_strategy, sticks_strategy)
@settings(max_examples=100)
def test_bounds_hold_where_what_is_left_is_kept(needs: list[Need], sticks: list[Stick]) -> None:
    """No way spends less than the bound when offcuts of 5 mm and more, 2 mm wide and more, are kept."""
    rules = replace(RULES, shortest_piece_nm=5 * MILLIMETRE, narrowest_course_nm=2 * MILLIMETRE)
    packing = pack(needs, sticks, rules, work=WORK, seed=1)
    best = max(_all_ways(needs, sticks, rules), key=lambda way: (way[0], -way[1]))
    assert packing.most_area_nm2 >= best[0] >= packing.placed_nm2
    if packing.least_wood_nm2 is not None:
        assert packing.least_wood_nm2 <= best[1] <= packing.wood_nm2


@given(needs_strategy, sticks_strategy)
@settings(max_examples=300)
def test_small_packings_agree_with_trying_everything(needs: list[Need], sticks: list[Stick]) -> None:
    """The best of all ways to deal needs out to sticks is found, and no bound denies it."""
    best = max(_all_ways(needs, sticks), key=lambda way: (way[0], -way[1]))
    packing = packed(needs, sticks)
    assert packing.most_area_nm2 >= best[0]
    assert packing.placed_nm2 == best[0]
    if packing.least_wood_nm2 is not None:
        assert packing.least_wood_nm2 <= best[1] <= packing.wood_nm2
    if packing.proven and not packing.unplaced:
        assert packing.wood_nm2 == best[1]


def _all_ways(
    needs: Sequence[Need], sticks: Sequence[Stick], rules: Rules = RULES
) -> Iterator[tuple[int, int]]:
    """Give the area placed and the wood spent by each way that the rules allow."""
    fits: Callable[[Need, Stick], bool] = lambda wanted, wood: (  # noqa: E731 - said once, used once
        wood.width + RULES.width_tolerance_nm >= wanted.height and (wanted.hidden or not wood.hidden_only)
    )
    for homes in product(range(-1, len(sticks)), repeat=len(needs)):
        by_stick: dict[int, list[Need]] = defaultdict(list)
        for wanted, home in zip(needs, homes, strict=True):
            if home >= 0:
                by_stick[home].append(wanted)
        if all(
            all(fits(wanted, sticks[home]) for wanted in some)
            and sum(wanted.length for wanted in some) + RULES.crosscut_kerf_nm * (len(some) - 1)
            <= sticks[home].length
            for home, some in by_stick.items()
        ):
            yield (
                sum(wanted.length * wanted.height for some in by_stick.values() for wanted in some),
                sum(_spent(sticks[home], some, rules) for home, some in by_stick.items()),
            )


def _spent(wood: Stick, some: Sequence[Need], rules: Rules) -> int:
    left = wood.length - sum(wanted.length + rules.crosscut_kerf_nm for wanted in some)
    worth_it = left >= rules.shortest_piece_nm and wood.width >= rules.narrowest_course_nm
    return wood.length * wood.width - (left * wood.width if worth_it else 0)


def test_what_is_lost_of_a_board_is_shared_by_its_sticks() -> None:
    """By their areas, and a whole board alone bears all of it."""
    sticks = [stick(0, 300), stick(0, 100), stick(1, 500)]
    faces = [400 * 100 * MILLIMETRE**2 + 80, 500 * 100 * MILLIMETRE**2 + 7]
    assert lost_besides(sticks, faces) == [60, 20, 7]


def test_board_that_loses_less_is_cut_first() -> None:
    """Of two sticks that are alike, one comes of a board of which much is lost."""
    lost = [300 * 100 * MILLIMETRE**2, 0]
    packing = pack([need(400)], [stick(0, 500), stick(1, 500)], RULES, work=WORK, seed=1, lost=lost)
    assert [part.board for _, part in packing.chosen] == [1]
    assert packing.wood_nm2 == packing.least_wood_nm2 == 500 * 100 * MILLIMETRE**2
