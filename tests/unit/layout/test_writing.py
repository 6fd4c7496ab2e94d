"""Plans of the search written down: by hand-worked places, and by whole walls that the checker must pass."""

import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import pairwise

import pytest

from builders import (
    board,
    flaw,
    job,
    layout,
    nm,
    opening,
    outline,
    rectangle,
    socket,
    studs,
    wall,
)
from plankwright.check import check_layout, faults, recount
from plankwright.layout.first import build
from plankwright.layout.plan import Plan
from plankwright.layout.sticks import whole_sticks
from plankwright.layout.strips import Strips
from plankwright.layout.writing import write_surface
from plankwright.model import (
    Board,
    Bound,
    ConcealedZone,
    Direction,
    Edge,
    EdgeKind,
    EdgeProfile,
    EdgeTrim,
    Face,
    Framing,
    Job,
    JointPolicy,
    KeepOut,
    Rectangle,
    Rules,
    Severity,
    Surface,
    SurfaceLayout,
)
from plans import planned_course, planned_piece

NO_GAP = Rules(expansion_gap_nm=0)
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
EVERYWHERE = Framing(solid=True)


def _written(work: Job, plan: Plan) -> SurfaceLayout:
    return write_surface(work, Strips(work.surfaces[0], work.rules), plan, Bound())


@pytest.mark.parametrize(
    ("start", "courses_run", "place"),
    [
        (Edge.BOTTOM, Direction.HORIZONTAL, rectangle(0, 5, 60, 11)),
        (Edge.TOP, Direction.HORIZONTAL, rectangle(0, 69, 60, 75)),
        (Edge.LEFT, Direction.VERTICAL, rectangle(5, 0, 11, 60)),
        (Edge.RIGHT, Direction.VERTICAL, rectangle(85, 0, 91, 60)),
    ],
)
def test_a_piece_hangs_where_it_was_planned(start: Edge, courses_run: Direction, place: Rectangle) -> None:
    """From 0 to 60 along and from 5 to 11 across a wall of 96 by 80, from each side in turn."""
    surface = wall(96, 80, start=start, courses_run=courses_run, framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 7)], NO_GAP)
    written = _written(work, (planned_course((5, 11), planned_piece(work, 0, (0, 60), 6, at=(2, 0.5))),))
    (piece,) = written.pieces
    assert piece.place == place
    assert (piece.along_from_nm, piece.along_to_nm) == (nm(2), nm(62))
    assert (piece.across_from_nm, piece.across_to_nm) == (nm(0.5), nm(6.5))
    assert (piece.label, piece.board_id, piece.face, piece.turned) == ("1a", "A", Face.FRONT, False)
    (course,) = written.courses
    assert (course.number, course.from_nm, course.to_nm) == (1, nm(5), nm(11))


def test_a_piece_a_little_narrower_than_its_course_hangs_short_of_its_far_edge() -> None:
    """By 1/32 inch, counted from the top, where the courses start."""
    surface = wall(96, 80, start=Edge.TOP, framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 6.21875)], NO_GAP)
    course = planned_course((0, 6), planned_piece(work, 0, (0, 96), 5.96875))
    written = _written(work, (course,))
    (piece,) = written.pieces
    assert piece.place == rectangle(0, 74.03125, 96, 80)
    assert written.courses[0].to_nm == nm(6)


def test_pieces_are_lettered_along_their_course_and_courses_numbered_from_the_start() -> None:
    """A course of two pieces, then one without any, then one of one piece."""
    work = job(wall(96, 80, framing=EVERYWHERE), [board("A", 98, 7), board("B", 98, 7)], NO_GAP)
    plan = (
        planned_course(
            (0, 6),
            planned_piece(work, 0, (0, 40), 6),
            planned_piece(work, 0, (40, 96), 6, at=(41, 0.125)),
        ),
        planned_course((6, 12), bare=((0, 96),)),
        planned_course((12, 18), planned_piece(work, 1, (0, 96), 6)),
    )
    written = _written(work, plan)
    assert [piece.label for piece in written.pieces] == ["1a", "1b", "2a"]
    assert [course.number for course in written.courses] == [1, 2]
    assert written.bare == (rectangle(0, 6, 96, 12),)


def test_a_course_ends_where_the_peak_of_a_gable_does() -> None:
    """The peak stands at 50; the course planned up to 52 is cut two inches narrower, its piece too."""
    surface = wall(96, 50, outline=outline((0, 0), (96, 0), (96, 20), (48, 50), (0, 20)), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 9)], NO_GAP)
    written = _written(work, (planned_course((44, 52), planned_piece(work, 0, (38.4, 57.6), 8)),))
    (piece,) = written.pieces
    assert piece.place == rectangle(38.4, 44, 57.6, 50)
    assert piece.across_to_nm - piece.across_from_nm == nm(6)
    assert written.courses[0].to_nm == nm(50)


def test_a_course_is_never_trimmed_below_the_narrowest() -> None:
    """Only an inch of it hangs under the peak, and it stays two inches wide."""
    surface = wall(96, 50, outline=outline((0, 0), (96, 0), (96, 20), (48, 50), (0, 20)), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 9)], NO_GAP)
    written = _written(work, (planned_course((49, 52), planned_piece(work, 0, (46.4, 49.6), 3)),))
    assert written.courses[0].height_nm == nm(2)


def test_a_course_begins_where_its_pieces_do() -> None:
    """A window over the whole wall ends at 10; the piece planned from 8 is cut from two inches farther in."""
    surface = wall(96, 50, openings=(opening("window", 0, 4, 96, 10),), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 9)], NO_GAP)
    written = _written(work, (planned_course((8, 14), planned_piece(work, 0, (0, 96), 6, at=(0.5, 1))),))
    (piece,) = written.pieces
    assert piece.place == rectangle(0, 10, 96, 14)
    assert (piece.across_from_nm, piece.across_to_nm) == (nm(3), nm(7))
    assert written.courses[0].from_nm == nm(10)


@pytest.mark.parametrize(("ends", "begins"), [((0, 48, 96), 8), ((0, 96), 12)])
def test_a_course_is_not_trimmed_so_far_that_pieces_that_butt_cannot_be_nailed(
    ends: Sequence[float], begins: float
) -> None:
    """A window over the whole wall ends at 12: two inches hang, all of it within an inch of the cut edges."""
    surface = wall(96, 50, openings=(opening("window", 0, 4, 96, 12),), framing=studs(24, 48, 72))
    work = job(surface, [board("A", 98, 9), board("B", 98, 9)], replace(NO_GAP, nail_edge_nm=nm(1)))
    pieces = [planned_piece(work, number, along, 6) for number, along in enumerate(pairwise(ends))]
    written = _written(work, (planned_course((8, 14), *pieces),))
    assert written.courses[0].from_nm == nm(begins)
    assert all(piece.nails for piece in written.pieces) is (len(pieces) > 1)


def test_a_course_of_which_little_hangs_is_never_begun_too_near_its_end() -> None:
    """A window over the whole wall ends an inch below the course does; it stays two inches wide."""
    surface = wall(96, 50, openings=(opening("window", 0, 4, 96, 13),), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 9)], NO_GAP)
    written = _written(work, (planned_course((8, 14), planned_piece(work, 0, (0, 96), 6, at=(0.5, 1))),))
    assert (written.courses[0].from_nm, written.courses[0].to_nm) == (nm(12), nm(14))


def test_a_course_of_boards_that_no_saw_rips_keeps_its_whole_width() -> None:
    """Above the peak of a gable, too, where it would else be cut narrower."""
    surface = wall(96, 50, outline=outline((0, 0), (96, 0), (96, 20), (48, 50), (0, 20)), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 8)], NO_GAP)
    piece = planned_piece(work, 0, (38.4, 57.6), 8)
    as_found = replace(piece, stick=replace(piece.stick, widest_rip=0))
    (written,) = _written(work, (planned_course((44, 52), as_found),)).pieces
    assert written.across_to_nm - written.across_from_nm == nm(8)


def test_a_piece_is_no_longer_than_what_hangs() -> None:
    """The wall ends at 96; planned from -4 to 100, the piece is cut four inches shorter at both ends."""
    work = job(wall(96, 50, framing=EVERYWHERE), [board("A", 120, 9)], NO_GAP)
    written = _written(work, (planned_course((0, 6), planned_piece(work, 0, (-4, 100), 6, at=(1, 1))),))
    (piece,) = written.pieces
    assert piece.place == rectangle(0, 0, 96, 6)
    assert (piece.along_from_nm, piece.along_to_nm) == (nm(5), nm(101))


def test_a_piece_of_which_nothing_hangs_is_left_out() -> None:
    """It lies wholly inside the window."""
    surface = wall(96, 50, openings=(opening("window", 20, 0, 60, 30),), framing=EVERYWHERE)
    work = job(surface, [board("A", 98, 9), board("B", 98, 9)], NO_GAP)
    plan = (planned_course((0, 6), planned_piece(work, 0, (20, 60), 6), planned_piece(work, 1, (60, 96), 6)),)
    assert [(piece.label, piece.board_id) for piece in _written(work, plan).pieces] == [("1a", "B")]


def test_a_piece_too_narrow_to_reach_what_is_to_be_covered_is_left_out() -> None:
    """On the right the wall begins at 5-15/16; a board of 5-7/8, as a course of six may have, ends below."""
    surface = wall(96, 24, outline=outline((0, 0), (48, 0), (48, 5.9375), (96, 5.9375), (96, 24), (0, 24)))
    work = job(surface, [board("A", 50, 8), board("B", 50, 8)], NO_GAP)
    wide, narrow = planned_piece(work, 0, (0, 48), 6), planned_piece(work, 1, (48, 96), 5.875)
    [course] = _written(work, (planned_course((0, 6), wide, narrow),)).courses
    assert [piece.board_id for piece in course.pieces] == ["A"]


def test_bare_blanks_are_told_where_they_must_be_covered_only() -> None:
    """What the skirting will hide need not be covered, and nothing is told beyond the slope."""
    surface = wall(
        96,
        50,
        outline=outline((0, 0), (96, 0), (96, 20), (48, 50), (0, 20)),
        trim=EdgeTrim(bottom=nm(4)),
        framing=EVERYWHERE,
    )
    work = job(surface, [], NO_GAP)
    written = _written(
        work, (planned_course((0, 4), bare=((0, 96),)), planned_course((35, 52), bare=((0, 96),)))
    )
    assert written.bare == (rectangle(24, 35, 72, 50),)


def test_the_score_counts_what_is_bare_what_shows_and_what_is_spent() -> None:
    """Two ends are bare, 16 and 20 inches long; one joint shows, the other stands behind a bench.

    Board A gives both pieces of the lower course. Less 80 in of pieces, two kerfs of 1/8 in and 1/2 in of
    trim at both ends it leaves 16.75 in, straightened to 6 in: kept. B and C are used up but for 7/8 in.
    """
    surface = wall(
        96,
        12,
        framing=EVERYWHERE,
        concealed=(ConcealedZone(id="bench", place=rectangle(30, 0, 60, 6)),),
    )
    boards = [board("A", 98, 6.25), board("B", 50, 6.25), board("C", 30, 6.25)]
    work = job(surface, boards, NO_GAP)
    plan = (
        planned_course(
            (0, 6),
            planned_piece(work, 0, (0, 40), 6),
            planned_piece(work, 0, (40, 80), 6, at=(40.625, 0.125)),
            bare=((80, 96),),
        ),
        planned_course(
            (6, 12),
            planned_piece(work, 1, (0, 48), 6),
            planned_piece(work, 2, (48, 76), 6),
            bare=((76, 96),),
        ),
    )
    written = _written(work, plan)
    assert written.score.bare_nm2 == (16 * 6 + 20 * 6) * nm(1) ** 2
    assert written.score.joints_in_sight == 1
    kept = 16.75 * 6
    assert written.score.wood_spent_nm2 == ((98 + 50 + 30) * 6.25 - kept) * nm(1) ** 2
    assert written.score == recount(work, written)
    assert written.bare == (rectangle(80, 0, 96, 6), rectangle(76, 6, 96, 12))


def test_the_score_of_a_surface_counts_its_own_pieces_only() -> None:
    """A board gives a piece to each of two walls, and counts on either as though cut for it alone."""
    first, second = wall(40, 6, id="first", framing=EVERYWHERE), wall(40, 6, id="second", framing=EVERYWHERE)
    work = job([first, second], [board("A", 98, 6.25)], NO_GAP)
    written = [
        write_surface(
            work,
            Strips(surface, NO_GAP),
            (planned_course((0, 6), planned_piece(work, 0, (0, 40), 6, at=at)),),
            Bound(),
        )
        for surface, at in ((first, (0.5, 0.125)), (second, (40.625, 0.125)))
    ]
    left_over = 97.5 - 40.625, (40.625 - 0.5 - 0.125) + 16.75
    assert [each.score.wood_spent_nm2 for each in written] == [
        (98 * 6.25 - length * 6) * nm(1) ** 2 for length in left_over
    ]
    assert not faults(check_layout(work, layout(*written)))


def _course_of(thicknesses: Sequence[float], shim_up_to: float, *, hidden: bool = False) -> list[float]:
    """Butt boards of these thicknesses and give their shims; all in inches."""
    zones = (ConcealedZone(id="panel", place=rectangle(0, 0, 96, 12)),) if hidden else ()
    surface = wall(96, 12, framing=EVERYWHERE, concealed=zones)
    boards = [
        board(f"A{index}", 40, 6.25, thickness_nm=nm(thickness))
        for index, thickness in enumerate(thicknesses)
    ]
    rules = Rules(expansion_gap_nm=0, shim_up_to_nm=nm(shim_up_to), joints=JointPolicy.COUNT)
    work = job(surface, boards, rules)
    pieces = (
        planned_piece(work, index, (24 * index, 24 * (index + 1)), 6) for index in range(len(thicknesses))
    )
    written = _written(work, (planned_course((0, 6), *pieces),))
    return [piece.shim_nm / nm(1) for piece in written.pieces]


@pytest.mark.parametrize(
    ("thicknesses", "shims"),
    [
        ((0.75, 0.75, 0.75), [0, 0, 0]),
        ((0.75, 0.8125), [0, 0]),
        ((0.75, 0.875), [0.0625, 0]),
        ((0.875, 0.75), [0, 0.0625]),
        ((0.75, 0.75, 0.875), [0, 0.0625, 0]),
        ((0.8125, 0.8125, 1.0, 0.875), [0.0625, 0.125, 0, 0.0625]),
    ],
)
def test_thin_boards_are_shimmed_until_no_step_is_more_than_the_tolerance(
    thicknesses: tuple[float, ...], shims: list[float]
) -> None:
    """Steps of 1/16 inch may show; the thickest board is never shimmed, the others as little as will do."""
    assert _course_of(thicknesses, 0.125) == shims


def test_boards_that_meet_out_of_sight_need_no_shims() -> None:
    """Whoever looks behind the panel may find a step."""
    assert _course_of((0.75, 1.0), 0.125, hidden=True) == [0, 0]


# Whole walls, laid out by the first search and judged by the checker.

WIDTHS = (5.25, 6.25, 5.75, 7.25, 4.75)
LENGTHS = (62, 99, 122, 78, 144, 55)


def _pile(
    count: int, profiles: Sequence[EdgeProfile] = (EdgeProfile(),), taper: float = 0, spread: float = 0
) -> list[Board]:
    """Give boards of mixed sizes: some with rot, some with a stain, as many thicker by the spread as not."""
    return [
        board(
            f"A{number}",
            LENGTHS[number % len(LENGTHS)],
            WIDTHS[number % len(WIDTHS)],
            width_end_nm=nm(WIDTHS[number % len(WIDTHS)] - taper * (number % 3)),
            thickness_nm=nm(0.75 + spread * (number % 2)),
            profile=profiles[number % len(profiles)],
            flaws={0: (flaw(20, 24),), 3: (flaw(30, 33, Severity.BLEMISH, face=Face.FRONT),)}.get(
                number % 7, ()
            ),
        )
        for number in range(count)
    ]


GABLE = outline((0, 0), (120, 0), (120, 40), (60, 70), (0, 40))
PIPE = KeepOut(id="pipe", place=rectangle(39, 0, 40.5, 60), what="water pipe")
WIRE = KeepOut(id="wire", place=rectangle(60, 13, 120, 13.5), what="wire")
ON_STRIPS = studs(2, 14, 26, 38, 50, 58, runs=Direction.HORIZONTAL)
FLOOR = outline((0, 1), (40, 0), (120, 2), (120, 60), (0, 60))


def _busy() -> Surface:
    return wall(
        120,
        60,
        openings=(
            opening("door", 44, 0, 76, 40, trim=2),
            opening("window", 90, 24, 108, 44, trim=2),
        ),
        cut_outs=(socket(20, 12, 22, 16), socket(82, 12, 84, 16)),
        concealed=(ConcealedZone(id="bench", place=rectangle(0, 0, 40, 18)),),
        keep_outs=(PIPE, WIRE),
        framing=studs(0.75, 12, 24, 40.25, 43, 60, 77, 88, 100, 110, 119.25),
    )


WALLS: dict[str, Callable[[], Job]] = {
    "plain": lambda: job(wall(120, 60), _pile(40)),
    "door, window, sockets, bench, pipe and wire": lambda: job(_busy(), _pile(60)),
    "gable": lambda: job(wall(120, 70, outline=GABLE), _pile(50)),
    "upright on strips": lambda: job(
        wall(120, 60, courses_run=Direction.VERTICAL, start=Edge.LEFT, framing=ON_STRIPS), _pile(60)
    ),
    "upright under a gable from the right": lambda: job(
        wall(120, 70, outline=GABLE, courses_run=Direction.VERTICAL, start=Edge.RIGHT, framing=ON_STRIPS),
        _pile(70),
    ),
    "from the top": lambda: job(wall(120, 60, start=Edge.TOP, trim=EdgeTrim(bottom=nm(4))), _pile(40)),
    "solid backing": lambda: job(wall(120, 60, framing=EVERYWHERE), _pile(40)),
    "uneven floor": lambda: job(wall(120, 60, outline=FLOOR), _pile(40)),
    "uneven floor behind a skirting": lambda: job(
        wall(120, 60, outline=FLOOR, trim=EdgeTrim(bottom=nm(4))), _pile(40)
    ),
    "tongues, laps and square edges": lambda: job(
        wall(120, 60),
        _pile(
            60,
            (
                EdgeProfile(),
                TONGUE,
                TONGUE,
                EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.375)),
                EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.375)),
            ),
        ),
    ),
    "tapered boards": lambda: job(wall(120, 60), _pile(60, taper=0.25)),
    "thick and thin boards": lambda: job(
        wall(120, 60), _pile(40, spread=0.125), Rules(shim_up_to_nm=nm(0.125), joints=JointPolicy.COUNT)
    ),
    "joints behind fixtures only": lambda: job(
        wall(120, 60, concealed=(ConcealedZone(id="shelves", place=rectangle(30, 0, 60, 60)),)),
        _pile(40),
        Rules(joints=JointPolicy.NEVER),
    ),
    "too few boards": lambda: job(wall(120, 60), _pile(8)),
}


@pytest.mark.parametrize("name", WALLS)
@pytest.mark.parametrize("seed", [0, 1])
def test_walls_are_written_without_a_fault(name: str, seed: int) -> None:
    """The checker, which shares no code with the search, finds nothing wrong, in the score neither."""
    work = WALLS[name]()
    (surface,) = work.surfaces
    strips = Strips(surface, work.rules)
    sticks = [
        stick for place, each in enumerate(work.boards) for stick in whole_sticks(each, place, work.rules)
    ]
    plan = build(strips, sticks, random.Random(seed))  # noqa: S311 - no secret hangs on it
    written = write_surface(work, strips, plan, Bound())
    assert written.pieces
    assert bool(written.bare) is (name == "too few boards")
    assert not faults(check_layout(work, layout(written)))
    assert written.score.wood_spent_nm2 == recount(work, written).wood_spent_nm2
    if not surface.framing.solid:
        assert all(piece.nails for piece in written.pieces)
