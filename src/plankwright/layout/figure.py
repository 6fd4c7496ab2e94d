"""How good a plan is, and which of two is better."""

from collections.abc import Sequence

from plankwright.layout.butting import joints_of
from plankwright.layout.plan import Plan, Stick
from plankwright.layout.sticks import free_sticks
from plankwright.layout.strips import Strips

Figure = tuple[int, int, int]
"""How good a plan is: area bare, joints in sight, wood spent; the smaller the better."""


def figure(strips: Strips, stock: Sequence[Stick], faces: Sequence[int], plan: Plan) -> Figure:
    """Measure a plan.

    Parameters
    ----------
    strips, stock
        The surface and the wood that it may use.
    faces
        Face area of each board of the tally. [nm²]
    plan
        The plan.

    Returns
    -------
    tuple of int
        Bare area [nm²], joints in sight, wood spent [nm²]; where there are endless sticks, the length of what
        is asked of them instead of wood spent [nm].
    """
    bare = sum(course.bare_area for course in plan)
    joints = sum(1 for course in plan for _, hidden in joints_of(strips, course) if not hidden)
    if any(stick.endless for stick in stock):
        pieces = [piece for course in plan for piece in course.pieces if piece.stick.endless]
        return bare, joints, sum(piece.stick.length for piece in pieces)
    used = {piece.stick.board for course in plan for piece in course.pieces}
    kept = sum(
        stick.length * stick.width for stick in free_sticks(stock, plan, strips.rules) if stick.board in used
    )
    return bare, joints, sum(faces[board] for board in used) - kept


def ranked(found: Figure, *, short: bool = False) -> Figure:
    """Put a figure so that the better plan has the lesser one: wood counts before joints while it is short.

    Parameters
    ----------
    found
        Of a plan.
    short
        Whether wood is short although nothing is bare, as while boards are asked for.
    """
    bare, joints, wood = found
    return (bare, wood, joints) if bare or short else found
