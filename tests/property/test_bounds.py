"""Properties of the bounds: no planted layout beats them, nor does trying everything."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, product
from random import Random

from hypothesis import assume, event, given, settings
from hypothesis import strategies as st

from builders import board, flaw, layout, nm, outline, rectangle, studs, wall
from plankwright.check import FindingCode, check_layout, recount
from plankwright.layout.bounds import bound, sharpened
from plankwright.layout.packing import LengthPrices
from plankwright.layout.strips import Strips
from plankwright.measure import INCH
from plankwright.model import Board, Bound, ConcealedZone, Framing, JointPolicy, Rules, Surface
from planted import plant

_NOT_LEANT_ON = {
    FindingCode.ADD_BLOCKING,
    FindingCode.BARE_AREA_WRONG,
    FindingCode.BLANK_TOO_LARGE,
    FindingCode.JOINED_BUT_NOT_HELD,
    FindingCode.JOINT_COUNT_WRONG,
    FindingCode.NAILS_TOO_FEW,
    FindingCode.SLIVER,
    FindingCode.WOOD_SPENT_WRONG,
}
"""What planted layouts may have wrong: they are neither nailed nor scored."""


@settings(max_examples=40)
@given(seed=st.integers(0, 2**32))
def test_no_planted_layout_beats_the_bound(seed: int) -> None:
    """Whatever wall is covered, of boards without a hair to spare, by a layout that the checker passes."""
    planted = plant(Random(seed))  # noqa: S311 - chance, not secrecy
    wrong = {finding.code for finding in check_layout(planted.job, layout(planted.layout))}
    assume(not wrong - _NOT_LEANT_ON)
    surface, job = planted.job.surfaces[0], planted.job
    score = recount(job, planted.layout)
    least = bound(Strips(surface, job.rules), job.boards, job.rules)
    plain = least.wood_spent_nm2
    least = sharpened(least, Strips(surface, job.rules), job.boards, job.rules, _prices(Random(seed)))  # noqa: S311
    event(f"sharpened: {least.wood_spent_nm2 > plain}")
    event(f"met: {least.joints_in_sight == score.joints_in_sight}")
    assert least.bare_nm2 == 0
    assert least.joints_in_sight <= score.joints_in_sight
    assert least.wood_spent_nm2 <= score.wood_spent_nm2


TINY = Rules(
    end_trim_nm=0,
    straight_edge_loss_nm=0,
    expansion_gap_nm=0,
    crosscut_kerf_nm=nm(1),
    bearing_nm=0,
    shortest_piece_nm=nm(10),
    joints=JointPolicy.COUNT,
)
"""Rules under which all is whole inches: a joint falls in the middle of a member 2 wide, or an inch off."""

_HEIGHT = 6
"""Of every board, and so of every course."""


def _prices(chance: Random) -> list[LengthPrices]:
    """Draw what lengths may be worth, from nothing to more than the dearest board."""
    return [
        tuple(
            (nm(length), Fraction(nm(length) * nm(chance.uniform(0, 12))))
            for length in sorted(chance.sample(range(1, 160), 6))
        )
        for _ in range(4)
    ]


@st.composite
def stairs(draw: st.DrawFn) -> tuple[Surface, Rules, list[Board]]:
    """Draw a wall whose courses end at different places and can have no joint, and the boards it was made of.

    Some boards lose an end, some are wide enough for two courses; pieces may lack what counts as no gap.
    """
    chance = draw(st.randoms(use_true_random=False))
    gap = nm(chance.choice((0, 1 / 16)))
    rules = replace(
        TINY,
        joints=JointPolicy.NEVER,
        gap_tolerance_nm=gap,
        width_tolerance_nm=0,
        crosscut_kerf_nm=nm(chance.choice((0, 1 / 8, 1))),
        rip_kerf_nm=nm(chance.choice((0, 1 / 8))),
        shortest_piece_nm=nm(chance.choice((10, 40))),
        narrowest_course_nm=nm(_HEIGHT),
    )
    lengths, boards = [], []
    for number in range(chance.randint(1, 4)):
        room, lanes = 0, chance.choice((1, 1, 2))
        for _ in range(lanes):
            cut = [chance.randint(10, 40) for _ in range(chance.randint(1, 3))]
            lengths += cut
            # A piece may lack a gap at either end of its run.
            room = max(room, sum(nm(each) - 2 * gap + rules.crosscut_kerf_nm for each in cut))
        length, lost = (room - rules.crosscut_kerf_nm) / INCH, chance.choice((0, 0, 7))
        width = _HEIGHT * lanes + (rules.rip_kerf_nm / INCH) * (lanes - 1)
        flaws = [flaw(length, length + lost)] if lost else []
        boards.append(board(f"B{number}", length + lost, width, flaws=flaws))
    steps = sorted(lengths, reverse=True)
    corners = [(0.0, 0.0), (float(steps[0]), 0.0)]
    for number, (step, after) in enumerate(zip(steps, [*steps[1:], 0], strict=True), start=1):
        if after != step:
            corners += [(step, number * _HEIGHT), (after, number * _HEIGHT)]
    solid = Framing(solid=True)
    return wall(steps[0], len(steps) * _HEIGHT, outline=outline(*corners), framing=solid), rules, boards


@settings(max_examples=100)
@given(made=stairs(), seed=st.integers(0, 2**32))
def test_boards_that_courses_were_cut_from_are_not_denied(
    made: tuple[Surface, Rules, list[Board]], seed: int
) -> None:
    """Nothing need stay bare, and no more is spent than all boards, whatever the prices."""
    surface, rules, boards = made
    strips = Strips(surface, rules)
    least = sharpened(Bound(), strips, boards, rules, _prices(Random(seed)))  # noqa: S311
    assert least.bare_nm2 == 0
    assert least.wood_spent_nm2 <= sum(each.face_area_nm2 for each in boards)
    fewer = sharpened(Bound(), strips, boards[1:], rules, _prices(Random(seed)))  # noqa: S311
    event(f"one board less is too little: {fewer.bare_nm2 > 0}")


@st.composite
def tiny_walls(draw: st.DrawFn) -> tuple[Surface, list[int]]:
    """Draw a wall of up to three courses, and the centres of its members."""
    length, courses = draw(st.integers(20, 60)), draw(st.integers(1, 3))
    centres = sorted(draw(st.sets(st.integers(2, length - 2), min_size=1, max_size=3)))
    left = draw(st.integers(0, length - 1))
    hidden = ConcealedZone(
        id="bench", place=rectangle(left, 0, left + draw(st.integers(1, length)), _HEIGHT * courses)
    )
    concealed = (hidden,) if draw(st.booleans()) else ()
    return wall(length, _HEIGHT * courses, framing=studs(*centres, width=2), concealed=concealed), centres


PILES = st.lists(st.integers(10, 70), min_size=1, max_size=4)
"""Lengths of boards as wide as a course. [in]"""


@settings(max_examples=200)
@given(drawn=tiny_walls(), lengths=PILES)
def test_trying_everything_does_not_beat_the_bound(
    drawn: tuple[Surface, list[int]], lengths: list[int]
) -> None:
    """Every way to part every course, with every way to cut the pieces out of the boards."""
    surface, centres = drawn
    fewest = _fewest_joints(surface, centres, lengths)
    least = bound(Strips(surface, TINY), _boards(lengths), TINY)
    event(f"covered: {fewest is not None}, bare: {least.bare_nm2 > 0}")
    if fewest is not None:
        assert least.bare_nm2 == 0
        event(f"met: {least.joints_in_sight == fewest}")
        assert least.joints_in_sight <= fewest


@settings(max_examples=100)
@given(
    drawn=tiny_walls(),
    lengths=PILES,
    more=st.tuples(st.integers(10, 70), st.integers(2, 12)),
)
def test_one_more_board_raises_no_bound(
    drawn: tuple[Surface, list[int]], lengths: list[int], more: tuple[int, int]
) -> None:
    """It leaves no more bare, and makes no more joints where it leaves as much bare."""
    surface, _ = drawn
    before = bound(Strips(surface, TINY), _boards(lengths), TINY)
    with_it = [*_boards(lengths), board("more", max(more), min(more))]
    after = bound(Strips(surface, TINY), with_it, TINY)
    assert (after.bare_nm2, after.joints_in_sight) <= (before.bare_nm2, before.joints_in_sight)


def _boards(lengths: list[int]) -> list[Board]:
    return [board(f"B{place}", length, _HEIGHT) for place, length in enumerate(lengths)]


def _fewest_joints(surface: Surface, centres: list[int], lengths: list[int]) -> int | None:
    """Give the fewest joints in sight of any cover in courses as high as a board, if there is one."""
    length, courses = surface.width_nm // nm(1), surface.height_nm // nm(_HEIGHT)
    zones = [(zone.place.left // nm(1), zone.place.right // nm(1)) for zone in surface.concealed]
    ways = sorted(
        (sum(not any(low <= at <= high for low, high in zones) for at in cuts), parts)
        for cuts in _cuts(centres)
        for parts in (tuple(b - a for a, b in zip((0, *cuts), (*cuts, length), strict=True)),)
        if len(parts) == 1 or min(parts) >= TINY.shortest_piece_nm // nm(1)
    )
    kerf = TINY.crosscut_kerf_nm // nm(1)
    best: int | None = None
    for chosen in product(ways, repeat=courses):
        joints = sum(seen for seen, _ in chosen)
        if (best is None or joints < best) and _packs(
            sorted((part + kerf for _, parts in chosen for part in parts), reverse=True),
            [each + kerf for each in lengths],
        ):
            best = joints
    return best


def _cuts(centres: list[int]) -> Iterator[tuple[int, ...]]:
    for count in range(len(centres) + 1):
        for members in combinations(centres, count):
            for places in product(*((centre - 1, centre, centre + 1) for centre in members)):
                if list(places) == sorted(set(places)):
                    yield places


def _packs(pieces: list[int], rooms: list[int]) -> bool:
    """Say whether pieces fit into rooms, by trying every room for each."""
    if not pieces:
        return True
    tried: set[int] = set()
    for place, room in enumerate(rooms):
        if room >= pieces[0] and room not in tried:
            tried.add(room)
            left = [*rooms[:place], room - pieces[0], *rooms[place + 1 :]]
            if _packs(pieces[1:], left):
                return True
    return False
