"""What the search takes and gives: effort, progress, result."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from plankwright.measure import Nm
from plankwright.model import Bound, EdgeProfile, Job, Layout, Score, SurfaceLayout


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How long to search.

    Parameters
    ----------
    name
        In plain words.
    seconds
        About how long one surface may take on a common machine: the search counts deterministic work, so the
        same job and seed give the same layout; the clock only stops it at fifteen times as much. [s]
    searches
        How many searches, each so long, there are side by side for a surface that is laid out by itself.
    """

    name: str
    seconds: float
    searches: int = 1


SIDE_BY_SIDE = 2
"""So many searches there are where somebody asks for more than a glance: nearly every machine has two cores,
and two find in the same time what one may miss."""


EFFORTS = {
    effort.name: effort
    for effort in (
        Effort(name="glance", seconds=2.0),
        Effort(name="steady", seconds=20.0, searches=SIDE_BY_SIDE),
        Effort(name="thorough", seconds=120.0, searches=SIDE_BY_SIDE),
    )
}
"""The efforts that have a name."""


class Verdict(StrEnum):
    """Is the pile enough?"""

    ENOUGH = "enough"
    NOT_ENOUGH = "not enough"
    UNSETTLED = "not settled"


def verdict(layout: SurfaceLayout) -> Verdict:
    """Say whether the pile is enough for a surface.

    Returns
    -------
    Verdict
        Enough when nothing is left bare, not enough when no layout can cover everything, else not settled.
    """
    if not layout.bare:
        return Verdict.ENOUGH
    return Verdict.NOT_ENOUGH if layout.bound.bare_nm2 > 0 else Verdict.UNSETTLED


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far the search has come.

    Parameters
    ----------
    surface_id
        The surface that is being laid out.
    stage
        What is being done, in a few plain words.
    done
        Share of the effort for this surface that is spent, from 0 to 1.
    best
        The best layout so far, if any.
    bound
        What no layout can beat, as far as is known.
    laid
        The best layout of it so far, and of those that are linked with it: only with the first report of one
        that is better than those before, and only for whoever wants to see them. Nobody has checked it.
    """

    surface_id: str
    stage: str
    done: float
    best: Score | None
    bound: Bound
    laid: tuple[SurfaceLayout, ...] = ()


class Watch:
    """Somebody who follows a search and may stop it.

    Parameters
    ----------
    report
        Called with each step forward.
    stopped
        Asked often; once it answers yes, the search gives the best that it has.
    sees
        Whether the best layouts so far are to come with the reports.
    """

    def __init__(
        self,
        report: Callable[[Progress], None] = lambda _progress: None,
        stopped: Callable[[], bool] = lambda: False,
        *,
        sees: bool = False,
    ) -> None:
        self.report = report
        self.stopped = stopped
        self.sees = sees


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Further boards that would close what is left bare.

    Parameters
    ----------
    count
        How many such boards. [boards]
    length_nm, width_nm
        Least clear length and least width as found, straight-edge loss and end trim counted in. [nm]
    thickness_nm, profile
        What the board must match, or nothing when anything will do.
    """

    count: int
    length_nm: Nm
    width_nm: Nm
    thickness_nm: Nm | None = None
    profile: EdgeProfile | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TooLittle:
    """Linked surfaces that no layout covers all of.

    Parameters
    ----------
    surfaces
        Their ids, from left to right.
    bare_nm2
        At least so much of them together is left bare. [nm²]
    """

    surfaces: tuple[str, ...]
    bare_nm2: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What a search came to.

    Parameters
    ----------
    layout
        The best layout found, whole or in part.
    wanted
        When something is left bare: the shortest list of further boards found that closes it; empty when the
        search was stopped.
    closing
        A job with those boards, and the layout made with them that covers everything, if one was made.
    held_back
        Boards kept out of the layout as spares, as the rules ask.
    stopped
        Whether somebody stopped the search before its effort was spent.
    too_little
        Linked surfaces that surely cannot all be covered, each of which might be by itself.
    """

    layout: Layout
    wanted: tuple[Wanted, ...] = ()
    closing: tuple[Job, Layout] | None = None
    held_back: tuple[str, ...] = ()
    stopped: bool = False
    too_little: tuple[TooLittle, ...] = ()
