"""What the eye minds, each thing by itself; expected values are counted by hand."""

from dataclasses import replace

import pytest

from builders import board, flaw, nm, rectangle, studs, wall
from choosing import plain
from looking import boards, pieced
from plankwright.layout.look import Look
from plankwright.model import BlemishPolicy, ConcealedZone, Edge, EdgeKind, EdgeProfile, Face, Severity

WALL = wall(96, 24, framing=studs(*range(0, 97, 8)))
BENCH = ConcealedZone(id="bench", place=rectangle(0, 0, 40, 6))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
LONGER = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.375))


def _joined(*joints: float) -> Look:
    """Look at courses with one joint each."""
    rows = [
        list(zip(boards(f"{number}-", 2, 96), (at, 96 - at), strict=True)) for number, at in enumerate(joints)
    ]
    dresser, plan = pieced(WALL, rows)
    return dresser.look(plan)


@pytest.mark.parametrize(
    ("joints", "in_line"),
    [
        ((32, 64), 0),
        ((32, 32), 1),
        ((32, 64, 32), 1),
        ((32, 64, 40), 0),
        ((32, 64, 32, 64), 2),
        ((32, 64, 48, 32), 0),
    ],
)
def test_joints_in_line_are_those_of_one_course_and_the_next_but_one(
    joints: tuple[float, ...], in_line: int
) -> None:
    """Right above one another is worse still, where the rules let it be; two courses between hide it."""
    assert _joined(*joints).in_line == in_line


@pytest.mark.parametrize(
    ("joints", "steps"),
    [
        ((16, 32), 0),
        ((16, 32, 48), 1),
        ((48, 32, 16), 1),
        ((16, 32, 48, 64), 2),
        ((16, 32, 16), 0),
        ((16, 32, 56), 0),
        ((8, 48, 88), 0),
        ((32, 32, 32), 0),
    ],
)
def test_three_joints_make_a_stair_when_they_step_evenly_the_same_way(
    joints: tuple[float, ...], steps: int
) -> None:
    """Neither back and forth, nor unevenly, nor by more than a yard, nor by nothing."""
    assert _joined(*joints).steps == steps


def test_a_hidden_joint_makes_no_pattern() -> None:
    """The lowest of the three is behind the bench."""
    rows = [
        list(zip(boards(f"{number}-", 2, 96), (at, 96 - at), strict=True))
        for number, at in enumerate((32, 64, 32))
    ]
    dresser, plan = pieced(wall(96, 24, framing=WALL.framing, concealed=(BENCH,)), rows)
    assert dresser.look(plan).in_line == 0


def test_like_tones_clump_along_what_length_they_touch() -> None:
    """Two dark ones end to end touch over six inches; above them a light one hides half of a dark one."""
    dark, light = boards("D", 3, 48, tone=" Dark"), boards("L", 1, 48, tone="light")
    dark[2] = replace(dark[2], tone="dark")
    dresser, plan = pieced(WALL, [[(dark[0], 48), (dark[1], 48)], [(light[0], 48), (dark[2], 48)]])
    look = dresser.look(plan)
    assert look.clumped == nm(6 + 48)
    assert look.touching == nm(6 + 6 + 96)


def test_a_board_without_a_tone_is_like_none() -> None:
    """Two of them do not clump, nor do they count as touching."""
    nameless = boards("N", 4, 48)
    dresser, plan = pieced(
        WALL, [[(each, 48) for each in nameless[:2]], [(each, 48) for each in nameless[2:]]]
    )
    assert dresser.look(plan) == Look(in_line=1)


def test_like_tones_one_course_apart_echo() -> None:
    """Dark, light, dark."""
    tones = ("dark", "light", "dark")
    rows = [[(board(f"B{number}", 96, 6, tone=tone), 96)] for number, tone in enumerate(tones)]
    dresser, plan = pieced(WALL, rows)
    look = dresser.look(plan)
    assert (look.clumped, look.echoed) == (0, nm(96))


def test_of_an_odd_board_counts_what_no_fixture_hides() -> None:
    """One board of the chapel among nine of the hall; the bench hides 40 inches of it."""
    hall = boards("H", 8, 96, lot="hall")
    chapel = board("C", 96, 6, lot="chapel")
    surface = wall(96, 24, framing=WALL.framing, concealed=(BENCH,))
    dresser, plan = pieced(surface, [[(chapel, 96)], [(hall[0], 96)]], spare=hall[1:])
    assert dresser.look(plan).odd == nm(56)
    dresser, plan = pieced(surface, [[(chapel, 96)], [(hall[0], 96)]], spare=hall[1:7])
    assert dresser.look(plan).odd == 0, "one in eight is not odd"


@pytest.mark.parametrize(
    ("start", "face", "left"),
    [
        (Edge.BOTTOM, Face.FRONT, True),
        (Edge.TOP, Face.FRONT, False),
        (Edge.BOTTOM, Face.BACK, False),
        (Edge.TOP, Face.BACK, True),
    ],
)
def test_a_blemish_is_seen_where_its_end_of_the_board_hangs(start: Edge, face: Face, *, left: bool) -> None:
    """A stain near the marked end, which points left on an unturned board that begins at the bottom."""
    worse = flaw(30, 60, Severity.BLEMISH, face=Face.FRONT if face is Face.BACK else Face.BACK)
    stained = board("S", 96, 6, flaws=(flaw(10, 20, Severity.BLEMISH, face=face), worse))
    place = rectangle(5, 0, 15, 24)
    surface = wall(
        96, 24, framing=WALL.framing, start=start, concealed=(ConcealedZone(id="pipe", place=place),)
    )
    dresser, plan = pieced(surface, [[(stained, 96)]], rules=plain(blemishes=BlemishPolicy.ANYWHERE))
    assert plan[0].pieces[0].stick.face is face
    assert dresser.look(plan).blemished == nm(5 if left else 10)


@pytest.mark.parametrize(
    ("lower", "upper", "loose"),
    [
        (EdgeProfile(), EdgeProfile(), 0),
        (TONGUE, TONGUE, 0),
        (TONGUE, LONGER, 0),
        (LONGER, TONGUE, 96),
        (TONGUE, EdgeProfile(), 96),
        (EdgeProfile(), TONGUE, 96),
    ],
)
def test_a_seam_is_loose_along_what_does_not_interlock(
    lower: EdgeProfile, upper: EdgeProfile, loose: float
) -> None:
    """A tongue that finds no groove, or a groove that finds no tongue."""
    rows = [[(board(name, 96, 6, profile=profile), 96)] for name, profile in (("L", lower), ("U", upper))]
    dresser, plan = pieced(WALL, rows)
    assert dresser.look(plan).loose == nm(loose)


def test_boards_ripped_square_on_both_sides_of_a_seam_are_not_loose() -> None:
    """The lower loses its tongue, the upper its groove: nothing is left to fit."""
    wide = boards("T", 2, 96, 7, profile=TONGUE)
    dresser, plan = pieced(WALL, [[(wide[0], 96)], [(wide[1], 96)]])
    assert dresser.look(plan).loose == nm(96)
    (upper,) = plan[1].pieces
    moved = replace(upper.stick, across_from=nm(1), across_to=nm(7))
    plan = (plan[0], replace(plan[1], pieces=(replace(upper, stick=moved),)))
    assert dresser.look(plan).loose == 0


def test_faults_add_up_by_what_counts_more() -> None:
    """Worst faces before patterns before tones."""
    faults = [
        Look(blemished=nm(12)).fault,
        Look(odd=nm(12)).fault,
        Look(loose=nm(12)).fault,
        Look(clumped=nm(12)).fault,
        Look(echoed=nm(12)).fault,
        Look(touching=nm(12)).fault,
    ]
    assert faults == sorted(set(faults), reverse=True)
    assert faults[-1] == 0
    assert Look(in_line=1).fault > Look(steps=1).fault > 0
    both = Look(odd=nm(1), steps=1).and_(Look(odd=nm(2), clumped=nm(3)))
    assert both == Look(odd=nm(3), steps=1, clumped=nm(3))
