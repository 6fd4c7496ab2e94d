"""Compare two layouts of a job: what each comes to, and which pieces are different."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.layout.again import changes_between
from plankwright.layout.offcuts import wood_spent_nm2
from plankwright.measure import write_area
from plankwright.model import Job, Layout, Standing
from plankwright.workshop.jobs.kept import KeptLayout, Made
from plankwright.workshop.jobs.see_layout import Said, said
from plankwright.workshop.tell_changes import tell_changes
from plankwright.workshop.wording import capital, counted


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """What a layout comes to, all its surfaces together.

    Parameters
    ----------
    bare_nm2
        Left bare. [nm²]
    joints
        Joints in sight.
    wood_nm2
        Wood spent. [nm²]
    cuts, pieces, boards
        How many there are.
    """

    bare_nm2: int
    joints: int
    wood_nm2: int
    cuts: int
    pieces: int
    boards: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureRow:
    """A figure of two layouts: what it is, both in words, and which is better: 0 or 1, or neither."""

    what: str
    words: tuple[str, str]
    better: int | None


def figures_of(job: Job, layout: Layout) -> Figures:
    """Add up what a layout comes to.

    Parameters
    ----------
    job
        The job as it is now.
    layout
        Any of its layouts.
    """
    scores = [laid.score for laid in layout.surfaces]
    apart = sum(score.wood_spent_nm2 for score in scores)
    used = {piece.board_id for piece in layout.pieces}
    known = used <= {board.id for board in job.boards}
    return Figures(
        bare_nm2=sum(score.bare_nm2 for score in scores),
        joints=sum(score.joints_in_sight for score in scores),
        # A board that is cut for two surfaces counts once, as long as it is in the tally.
        wood_nm2=wood_spent_nm2(job, layout.pieces) if known and len(scores) > 1 else apart,
        cuts=sum(score.cuts for score in scores),
        pieces=len(layout.pieces),
        boards=len(used),
    )


def figure_rows(job: Job, one: Layout, other: Layout) -> tuple[FigureRow, ...]:
    """Put the figures of two layouts side by side; the less of each is the better.

    Parameters
    ----------
    job
        The job.
    one, other
        Two of its layouts.
    """
    return tuple(_rows(job, figures_of(job, one), figures_of(job, other)))


def tell_figures(job: Job, layout: Layout) -> str:
    """Say in one sentence what a layout comes to; parameters as in `figures_of`."""
    found = figures_of(job, layout)
    parts = (
        f"{_area(job, found.bare_nm2)} left bare",
        f"{counted(found.joints, 'joint')} in sight",
        f"{_area(job, found.wood_nm2)} of wood",
        counted(found.cuts, "cut"),
        f"{counted(found.pieces, 'piece')} from {counted(found.boards, 'board')}",
    )
    return f"{capital(', '.join(parts))}."


def differences(job: Job, one: Layout, other: Layout, standing: Standing) -> tuple[Said, ...]:
    """Say which pieces would be different, if the other layout were taken after the one.

    Parameters
    ----------
    job, one, other
        As in `figure_rows`.
    standing
        How far the job has come: what hangs is not told of.

    Returns
    -------
    tuple of Said
        Nothing where one of them is of surfaces that the job has no longer.
    """
    known = {surface.id for surface in job.surfaces}
    if not known.issuperset(laid.surface_id for laid in (*one.surfaces, *other.surfaces)):
        return ()
    return said(tell_changes(job, changes_between(job, one, other, standing, by_place=True)))


def tell_made(laid: KeptLayout) -> str:
    """Say how a layout came about."""
    how = _MADE[laid.made]
    effort = f", {laid.layout.effort}" if laid.layout.effort else ""
    seed = f", seed {laid.layout.seed}" if laid.layout.seed else ""
    return f"{how}{effort}{seed}"


def _area(job: Job, nm2: int) -> str:
    """Write an area; what is rounding, and no wood, is nothing."""
    words = write_area(nm2, job.tape)
    return "nothing" if words == write_area(0, job.tape) else words


_MADE = {
    Made.SEARCHED: "laid out from scratch",
    Made.AGAIN: "what was left laid out anew",
    Made.AROUND: "laid out around what was asked for",
    Made.SWAPPED: "boards swapped",
    Made.BROUGHT: "brought along",
}


def _rows(job: Job, one: Figures, other: Figures) -> Iterator[FigureRow]:
    every = [
        ("Left bare", one.bare_nm2, other.bare_nm2),
        ("Joints in sight", one.joints, other.joints),
        ("Wood spent", one.wood_nm2, other.wood_nm2),
        ("Cuts", one.cuts, other.cuts),
        ("Pieces", one.pieces, other.pieces),
        ("Boards cut into", one.boards, other.boards),
    ]
    for what, first, second in every:
        as_area = what in {"Left bare", "Wood spent"}
        words = tuple(_area(job, each) if as_area else str(each) for each in (first, second))
        better = None if words[0] == words[1] else int(second < first)
        yield FigureRow(what=what, words=(words[0], words[1]), better=better)
