"""Which pieces straight cuts can free, against every order of cuts tried out."""

from collections.abc import Sequence
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from builders import (
    board,
    course,
    crosscut_saw,
    job,
    layout,
    nm,
    outline,
    piece,
    rip_saw,
    surface_layout,
    wall,
)
from plankwright.check import FindingCode
from plankwright.check.case import Case, open_surface
from plankwright.check.saws import check_angled_cuts, check_cuts
from plankwright.model import Framing, Rules, Saw
from spoil.walls import gable, pinwheel

Box = tuple[int, int, int, int]
"""Along from, along to, across from, across to, in inches."""

LENGTH, WIDTH = 6, 5
"""A little board that every cut can be tried out on."""

BIG = (crosscut_saw(100), rip_saw(100))


def codes(
    boxes: Sequence[tuple[float, float, float, float]],
    saws: Sequence[Saw],
    *,
    kerf: float = 0,
    size: tuple[float, float] = (LENGTH, WIDTH),
    taper: float = 0,
) -> set[FindingCode]:
    """Give what is found about cutting boxes out of one board."""
    surface = wall(600, 600, framing=Framing(solid=True))
    row = (0.25, 300)
    pieces = [
        piece(surface, f"1{index} W", (0, end - start), (0, high - low), at=(start, low))
        for index, (start, end, low, high) in enumerate(boxes)
    ]
    length, width = size
    wood = board("W", length, width, width_end_nm=nm(width + taper))
    rules = Rules(crosscut_kerf_nm=nm(kerf), rip_kerf_nm=nm(kerf))
    work = job(surface, [wood], rules, saws)
    laid = surface_layout(surface, course(1, row, *pieces))
    return {
        finding.code
        for finding in check_cuts(Case(job=work, layout=layout(laid), surfaces=(open_surface(work, laid),)))
    }


def can_be_freed(boxes: frozenset[Box], part: Box, crosscut: int, rip: int) -> bool:
    """Try every cut at every inch in every order: the plain definition, on a board without kerfs."""
    if boxes in (frozenset(), frozenset({part})):
        return True
    along_from, along_to, across_from, across_to = part
    if across_to - across_from <= crosscut:
        for at in range(along_from + 1, along_to):
            before = frozenset(each for each in boxes if each[1] <= at)
            beyond = frozenset(each for each in boxes if each[0] >= at)
            if (
                len(before) + len(beyond) == len(boxes)
                and can_be_freed(before, (along_from, at, across_from, across_to), crosscut, rip)
                and can_be_freed(beyond, (at, along_to, across_from, across_to), crosscut, rip)
            ):
                return True
    for at in range(across_from + 1, across_to):
        before = frozenset(each for each in boxes if each[3] <= at)
        beyond = frozenset(each for each in boxes if each[2] >= at)
        if (
            min(at - across_from, across_to - at) <= rip
            and len(before) + len(beyond) == len(boxes)
            and can_be_freed(before, (along_from, along_to, across_from, at), crosscut, rip)
            and can_be_freed(beyond, (along_from, along_to, at, across_to), crosscut, rip)
        ):
            return True
    return False


def apart(one: Box, other: Box) -> bool:
    """Whether two boxes do not overlap."""
    return one[1] <= other[0] or other[1] <= one[0] or one[3] <= other[2] or other[3] <= one[2]


@st.composite
def boxes_apart(draw: st.DrawFn) -> frozenset[Box]:
    """Draw up to five boxes of whole inches that do not overlap."""
    spans = [
        st.tuples(st.integers(0, size - 1), st.integers(1, size)).filter(lambda span: span[0] < span[1])
        for size in (LENGTH, WIDTH)
    ]
    box = st.tuples(*spans).map(lambda both: (*both[0], *both[1]))
    drawn: list[Box] = []
    for each in draw(st.lists(box, min_size=1, max_size=8)):
        if len(drawn) < 5 and all(apart(each, other) for other in drawn):
            drawn.append(each)
    return frozenset(drawn)


@settings(max_examples=150, deadline=None)
@given(boxes=boxes_apart(), crosscut=st.integers(1, 6), rip=st.integers(1, 6))
def test_taking_cuts_as_they_come_finds_what_trying_every_order_finds(
    boxes: frozenset[Box], crosscut: int, rip: int
) -> None:
    """On small boards the checker agrees with the plain definition, capacities counted in."""
    possible = can_be_freed(boxes, (0, LENGTH, 0, WIDTH), crosscut, rip)
    assert (codes(sorted(boxes), (crosscut_saw(crosscut), rip_saw(rip))) == set()) is possible


@st.composite
def sawn_up(draw: st.DrawFn) -> list[tuple[float, float, float, float]]:
    """Saw a board of 96 by 12 up by random cuts with a kerf of 1/8 inch, and give the parts."""
    parts = [(0.0, 96.0, 0.0, 12.0)]
    done: list[tuple[float, float, float, float]] = []
    while parts:
        start, end, low, high = parts.pop()
        way = draw(st.sampled_from(["across", "along", "none"])) if len(done) + len(parts) < 12 else "none"
        share = draw(st.integers(1, 7)) / 8
        if way == "across" and end - start > 2:
            at = start + share * (end - start - 0.125)
            parts += [(start, at, low, high), (at + 0.125, end, low, high)]
        elif way == "along" and high - low > 2:
            at = low + share * (high - low - 0.125)
            parts += [(start, end, low, at), (start, end, at + 0.125, high)]
        else:
            done.append((start, end, low, high))
    return done


@settings(max_examples=60, deadline=None)
@given(parts=sawn_up())
def test_whatever_was_sawn_up_can_be_sawn_up(parts: list[tuple[float, float, float, float]]) -> None:
    """Parts that came of sawing a board up are never refused by saws that are large enough."""
    assert codes(parts, BIG, kerf=0.125, size=(96, 12)) == set()


def test_a_pinwheel_cannot_be_sawn_up_by_the_plain_definition_either() -> None:
    """Five boxes round a hub: no order of cuts frees them, and the checker says so."""
    boxes = frozenset({(0, 4, 0, 2), (4, 6, 0, 3), (2, 6, 3, 5), (0, 2, 2, 5), (2, 4, 2, 3)})
    assert all(apart(one, other) for one, other in combinations(boxes, 2))
    assert sum((end - start) * (high - low) for start, end, low, high in boxes) == LENGTH * WIDTH
    assert not can_be_freed(boxes, (0, LENGTH, 0, WIDTH), 100, 100)
    assert codes(sorted(boxes), BIG) == {FindingCode.NO_STRAIGHT_CUT}


def test_without_one_sail_the_pinwheel_comes_apart() -> None:
    """Take any of the outer four away and the others can be freed."""
    boxes = [(0, 4, 0, 2), (4, 6, 0, 3), (2, 6, 3, 5), (0, 2, 2, 5), (2, 4, 2, 3)]
    for missing in boxes[:4]:
        assert codes([each for each in boxes if each != missing], BIG) == set()


def test_without_listed_saws_nothing_is_judged() -> None:
    """Even a pinwheel passes when no saws are listed."""
    work, laid = pinwheel()
    assert list(check_cuts(Case(job=work, layout=laid, surfaces=()))) == []
    assert codes([(0, 4, 0, 2), (4, 6, 0, 3), (2, 6, 3, 5), (0, 2, 2, 5), (2, 4, 2, 3)], ()) == set()


def test_pieces_that_clash_are_left_to_the_rule_of_kerfs() -> None:
    """Pieces that overlap cannot be sawn apart; that is told once, elsewhere."""
    assert codes([(0, 4, 0, 4), (2, 6, 2, 5)], BIG) == set()


def test_a_saw_of_the_other_kind_is_none() -> None:
    """With only a rip saw listed no end can be cut, with only a crosscut saw no edge."""
    assert codes([(1, 5, 0, 5)], (rip_saw(10),)) == {FindingCode.CROSSCUT_TOO_WIDE}
    assert codes([(0, 6, 1, 4)], (crosscut_saw(10),)) == {FindingCode.RIP_TOO_WIDE}


def test_a_board_wider_than_the_saw_is_ripped_first() -> None:
    """A saw that crosscuts 4 inches cuts a 5 inch board only once it is ripped to 4."""
    assert codes([(0, 3, 0, 5)], (crosscut_saw(4), rip_saw(10))) == {FindingCode.CROSSCUT_TOO_WIDE}
    assert codes([(0, 3, 0, 4)], (crosscut_saw(4), rip_saw(10))) == set()


def test_the_fence_stands_on_the_narrower_side() -> None:
    """To part a piece of 3 inches from one of 9 takes a saw that rips 3, whichever lies at the fence."""
    for boxes in ([(0, 90, 0, 3), (0, 90, 3, 12)], [(0, 90, 0, 9), (0, 90, 9, 12)]):
        assert codes(boxes, (rip_saw(3),), size=(90, 12)) == set()
        assert codes(boxes, (rip_saw(2.9),), size=(90, 12)) == {FindingCode.RIP_TOO_WIDE}


def test_waste_comes_off_strip_by_strip() -> None:
    """A small saw takes 9 inches of waste off a piece of 3 in several rips; without any rip saw it stays."""
    assert codes([(0, 90, 0, 3)], (rip_saw(1),), size=(90, 12)) == set()
    assert codes([(0, 90, 0, 3)], (crosscut_saw(12),), size=(90, 12)) == {FindingCode.RIP_TOO_WIDE}


def test_a_straightened_edge_takes_a_saw_however_little_it_takes_off() -> None:
    """An edge that the kerf takes off whole still has to be ripped."""
    boxes = [(0, 90, 0.125, 11.875)]
    assert codes(boxes, (rip_saw(1),), kerf=0.125, size=(90, 12)) == set()
    assert codes(boxes, (crosscut_saw(12),), kerf=0.125, size=(90, 12)) == {FindingCode.RIP_TOO_WIDE}


def test_a_tapered_board_is_as_wide_as_it_is_at_the_cut() -> None:
    """From 4 to 8 wide over 100 a board is 6 wide at 50: so much must the saw crosscut, or rip it first."""
    assert codes([(0, 50, 0, 4)], (crosscut_saw(6), rip_saw(1)), size=(100, 4), taper=4) == set()
    assert codes([(0, 50, 0, 4)], (crosscut_saw(4), rip_saw(1)), size=(100, 4), taper=4) == set()
    assert codes([(50, 100, 0, 6)], (crosscut_saw(5.9), rip_saw(1)), size=(100, 4), taper=4) == {
        FindingCode.CROSSCUT_TOO_WIDE
    }


def test_an_angled_end_is_as_long_as_its_slope() -> None:
    """Courses 6 high under a slope of 3 in 4 are cut 10 long: 6 over the cosine of the lean from square."""
    work, laid = gable()
    (finding,) = {
        (each.code, each.measured, each.allowed)
        for each in check_angled_cuts(
            open_surface(job(work.surfaces[0], work.boards, saws=(crosscut_saw(9.5),)), laid.surfaces[0])
        )
    }
    assert finding == (FindingCode.ANGLED_CUT_TOO_LONG, nm(10), nm(9.5))


def angled(*corners: tuple[float, float]) -> list[int | None]:
    """Give the angled cuts over 1 inch long of one piece over the whole of a surface."""
    surface = wall(100, 50, outline=outline(*corners))
    row = (0, max(y for _, y in corners))
    laid = surface_layout(
        surface, course(1, row, piece(surface, "1a A", (0, max(x for x, _ in corners)), row))
    )
    work = job(surface, [board("A", 130, 13)], Rules(expansion_gap_nm=0), (crosscut_saw(1),))
    return [finding.measured for finding in check_angled_cuts(open_surface(work, laid))]


def test_a_steep_corner_is_cut_across_and_a_flat_one_is_not() -> None:
    """A corner of 3 along by 4 across is a cut of 5; one of 4 along by 3 across is sawn along."""
    assert angled((0, 0), (100, 0), (100, 6), (97, 10), (0, 10)) == [nm(5)]
    assert angled((0, 0), (100, 0), (100, 7), (96, 10), (0, 10)) == []
    assert angled((0, 0), (100, 0), (100, 10), (0, 10)) == []
