"""The last resort: every course that nothing hangs in is laid out anew, and further boards are asked for."""

from collections.abc import Sequence
from dataclasses import replace

from plankwright.layout.again.at_hand import AtHand
from plankwright.layout.again.mending import mend
from plankwright.layout.again.repair import Repair
from plankwright.layout.improve import Search
from plankwright.layout.plan import Stick
from plankwright.layout.sticks import free_sticks
from plankwright.layout.wanted import Closing, asked, close, sorts_for
from plankwright.measure import Nm, TapeStyle


def lay_anew(repair: Repair, faces: Sequence[int]) -> bool:
    """Lay everything out anew that does not hang, until all is covered or the work is spent.

    Parameters
    ----------
    repair
        Holding the plan; it is given the better one.
    faces
        Face area of each board of the tally. [nm²]

    Returns
    -------
    bool
        Whether less is bare then.
    """
    search = _search(repair, faces)
    if _is_settled(search):
        return False
    while search.figure[0] and search.spent < repair.work - repair.spent and not repair.stopped():
        search.step()
    repair.spent += search.spent
    return repair.take(search.plan)


def ask_besides(
    repair: Repair, faces: Sequence[int], tape: TapeStyle, first: int, work: float
) -> Closing | None:
    """Ask for the boards that would close what is bare.

    Where it can be, just the holes are filled with them; else as many courses are laid out anew as it takes.

    Parameters
    ----------
    repair
        Holding the plan; it is left as it is.
    faces
        Face area of each board of the tally. [nm²]
    tape
        Asked lengths are rounded up to its fraction.
    first
        Place in the tally of the first further board.
    work
        How much may be done. [s]

    Returns
    -------
    Closing or None
        Nothing when no such boards were found, or somebody wanted no more of it.
    """
    search = _search(repair, faces)
    with_sorts = AtHand(
        (*repair.at_hand.stock, *sorts_for(search, first)), repair.at_hand.pieces, repair.at_hand.only_at
    )
    closing = replace(repair, at_hand=with_sorts, work=work, spent=0.0)
    if mend(closing):
        return asked(search, closing.plan, tape, first)
    if _is_settled(search):
        return None
    return close(search, search.stock, tape, first, work=work, stopped=repair.stopped)


def _search(repair: Repair, faces: Sequence[int]) -> Search:
    return Search(
        repair.strips,
        _stock(repair),
        faces,
        repair.grid,
        repair.chance,
        repair.plan,
        repair.stopped,
        settled=_settled(repair),
    )


def _is_settled(search: Search) -> bool:
    """Whether something hangs in every course, so that none may be taken down."""
    return all(course.low in search.settled for course in search.plan)


def _stock(repair: Repair) -> list[Stick]:
    """Give the wood that fits anywhere and that no other surface has taken."""
    anywhere = [stick for stick in repair.at_hand.stock if stick not in repair.at_hand.only_at]
    return free_sticks(anywhere, repair.elsewhere, repair.strips.rules)


def _settled(repair: Repair) -> frozenset[Nm]:
    return frozenset(
        course.low for course in repair.plan if any(piece in repair.hung for piece in course.pieces)
    )
