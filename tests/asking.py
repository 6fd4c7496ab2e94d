"""Small walls put as questions, in inches as a carpenter would say them."""

from collections.abc import Sequence

from builders import nm
from choosing import WALL, plain, sticks_of
from plankwright.layout.rows import free_stack
from plankwright.layout.strips import Strips
from plankwright.layout.whole import Question
from plankwright.model import Board, Rules, Surface

RULES = plain(shortest_piece_nm=nm(20), narrowest_course_nm=nm(2))
STEP = nm(1 / 4)


def question(
    boards: Sequence[Board], heights: Sequence[float], *, surface: Surface = WALL, rules: Rules = RULES
) -> Question:
    """Ask for all of a level surface in courses of some heights."""
    strips = Strips(surface, rules)
    stack = free_stack(
        strips, [nm(height) for height in heights], (strips.start, strips.must_end, strips.may_end), ()
    )
    return Question(strips, sticks_of(boards, rules), stack, STEP)
