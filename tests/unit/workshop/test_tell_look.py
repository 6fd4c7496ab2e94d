"""How a layout looks, in words."""

from dataclasses import replace
from typing import Any

from builders import board, flaw, job, nm, outline, rectangle, studs, wall
from choosing import plain
from looking import boards, pieced
from plankwright.layout.lay_out import lay_out
from plankwright.layout.result import Effort
from plankwright.model import BlemishPolicy, ConcealedZone, EdgeKind, EdgeProfile, Severity
from plankwright.workshop.tell_look import tell_look

STUDS = studs(*range(0, 97, 8))
TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))


def _told(*rows: tuple[float, ...]) -> tuple[str, ...]:
    """Tell of courses of plain boards by the lengths of their pieces."""
    each = [
        [(board(f"{n}{letter}", 96, 6), at) for letter, at in zip("ab", row, strict=False)]
        for n, row in enumerate(rows)
    ]
    dresser, plan = pieced(wall(96, 6 * len(rows), framing=STUDS), each)
    return tell_look(dresser.work, dresser.layout(plan).surfaces[0])


def test_nothing_is_said_where_nothing_is_to_be_seen() -> None:
    """No tones, no milling, no joints in line."""
    assert _told((96,), (40, 56)) == ()


def test_patterns_of_joints_are_counted() -> None:
    """An H of two joints; and three that make a stair."""
    assert _told((40, 56), (64, 32), (40, 56)) == ("One pair of joints in line in sight.",)
    assert _told((16, 80), (32, 64), (48, 48)) == ("One stair of three joints in sight.",)


def test_tones_are_told_by_the_share_that_clumps() -> None:
    """Dark above dark above light."""
    rows = [[(board(f"B{n}", 96, 6, tone=tone), 96)] for n, tone in enumerate(("dark", "dark", "light"))]
    dresser, plan = pieced(wall(96, 18, framing=STUDS), rows)
    told = tell_look(dresser.work, dresser.layout(plan).surfaces[0])
    assert told == ("Boards of one tone touch along 50 % of where tones meet.",)


def test_what_stands_out_is_told_as_far_as_it_is_in_sight() -> None:
    """A stain of eight inches, and a board of another lot of which a pipe hides a foot."""
    stained = board("S", 96, 6, flaws=(flaw(40, 48, Severity.BLEMISH),), lot="hall")
    rows = [[(board("C", 96, 6, lot="chapel"), 96)], [(stained, 96)]]
    pipe = ConcealedZone(id="pipe", place=rectangle(0, 0, 12, 12))
    dresser, plan = pieced(
        wall(96, 12, framing=STUDS, concealed=(pipe,)),
        rows,
        rules=plain(blemishes=BlemishPolicy.ANYWHERE),
        spare=boards("H", 8, 96, lot="hall"),
    )
    told = tell_look(dresser.work, dresser.layout(plan).surfaces[0])
    assert told == ("1' 0\" of blemishes and 7' 0\" of boards unlike most in sight.",)


def test_milled_boards_are_told_by_what_they_keep_and_where_they_interlock() -> None:
    """Two whole, one ripped by an inch below a square one."""
    wide = board("W", 96, 7, profile=TONGUE)
    rows = [[(each, 96)] for each in (*boards("T", 2, 96, profile=TONGUE), wide, board("S", 96, 6))]
    dresser, plan = pieced(wall(96, 24, framing=STUDS), rows)
    told = tell_look(dresser.work, dresser.layout(plan).surfaces[0])
    ripped = 'Two milled pieces with the whole face width, one piece ripped square and 1" narrower'
    assert told == (f"{ripped}; they interlock along 16' 0\" of seam.",)
    dresser, plan = pieced(wall(96, 12, framing=STUDS), rows[1:2] + rows[3:])
    told = tell_look(dresser.work, dresser.layout(plan).surfaces[0])
    assert told == (
        "One milled piece with the whole face width; along 8' 0\" they meet what they do not fit.",
    )


def _closed(height: float, **more: Any) -> tuple[str, ...]:  # noqa: ANN401 - any field of a wall
    """Tell of three courses of six inches and one that is ripped to end under the ceiling."""
    surface = wall(96, 18 + height, framing=STUDS, **more)
    dresser, (*below, last) = pieced(surface, [[(each, 96)] for each in boards("B", 4, 96)])
    (piece,) = last.pieces
    stick = replace(piece.stick, across_to=piece.stick.across_from + nm(height))
    closing = replace(last, high=last.low + nm(height), pieces=(replace(piece, stick=stick),))
    return tell_look(dresser.work, dresser.layout((*below, closing)).surfaces[0])


def test_a_narrow_closing_course_is_told_with_a_way_out() -> None:
    """Two inches below the ceiling, where most are six; half of that looks right."""
    (told,) = _closed(2)
    assert told.startswith(
        'The closing course is 2", less than half of what most are: a wider narrowest_course'
    )
    assert _closed(3) == ()


def test_the_peak_of_a_gable_is_no_closing_course() -> None:
    """There courses are as narrow as it comes."""
    assert _closed(2, outline=outline((0, 0), (96, 0), (96, 18), (48, 20), (0, 18))) == ()


def test_a_wider_narrowest_course_shares_the_closing_one_out() -> None:
    """What the answer advises works: of four boards no course is narrower than four inches."""
    work = job(wall(96, 20, framing=STUDS), boards("B", 4, 96), plain(narrowest_course_nm=nm(4)))
    (laid,) = lay_out(work, effort=Effort(name="moment", seconds=2.0)).layout.surfaces
    assert not laid.bare
    assert tell_look(work, laid) == ()
