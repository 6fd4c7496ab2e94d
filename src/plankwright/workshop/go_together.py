"""A job, what was marked on it and the layout that it is worked by must go together."""

from collections.abc import Callable, Iterable
from typing import ClassVar

from plankwright.errors import ExitCode, PlankwrightError
from plankwright.model import Job, Layout, Standing, Work
from plankwright.workshop.mark_work import begin_work
from plankwright.workshop.wording import listed


class MissingError(PlankwrightError, ValueError):
    """A job no longer has what pieces hang of, or on.

    Parameters
    ----------
    missing
        The ids of what it lacks.
    """

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT

    def __init__(self, missing: tuple[str, ...]) -> None:
        self.missing = missing
        super().__init__(self.tell(listed(missing), one=len(missing) == 1))

    def tell(self, which: str, *, one: bool) -> str:
        """Say what is missing, and how to mend it."""
        raise NotImplementedError

    def __reduce__(self) -> tuple[type["MissingError"], tuple[tuple[str, ...]]]:
        """Rebuild from what is missing, not from the message, when the error comes from another process."""
        return type(self), (self.missing,)


class BoardsMissingError(MissingError):
    """Boards that pieces hang of, or are cut from, are no longer in the tally."""

    def tell(self, which: str, *, one: bool) -> str:
        """Say which."""
        of, it = ("board", "it") if one else ("boards", "them")
        return (
            f"Pieces of {of} {which} hang or are cut, but the tally no longer has {it}: put the row back. "
            "A board that is lost is marked as lost, not taken out."
        )


class SurfacesMissingError(MissingError):
    """Surfaces that pieces hang on, or are cut for, are no longer in the job."""

    def tell(self, which: str, *, one: bool) -> str:
        """Say which."""
        surfaces, it = ("surface", "it") if one else ("surfaces", "them")
        return (
            f"Pieces hang on {surfaces} {which} or are cut for {it}, but the job no longer has {it}: "
            f"call {it} in job.toml as before."
        )


class OtherLayoutError(PlankwrightError, ValueError):
    """A layout is not one of the surfaces that the job has.

    Parameters
    ----------
    laid, asked
        Ids of the surfaces in the layout, and of those in the job.
    """

    exit_code: ClassVar[int] = ExitCode.BAD_INPUT

    def __init__(self, laid: tuple[str, ...], asked: tuple[str, ...]) -> None:
        self.laid, self.asked = laid, asked
        of = listed(laid) if laid else "no surface"
        super().__init__(
            f"This layout is of {of}, but the job has {listed(asked)}: name the "
            "one that the job is worked by. What was added since is laid out as a job of its own."
        )

    def __reduce__(self) -> tuple[Callable[..., "OtherLayoutError"], tuple[tuple[str, ...], tuple[str, ...]]]:
        """Rebuild from the ids, not from the message, when the error comes from another process."""
        return type(self), (self.laid, self.asked)


def work_on(job: Job, marked: Work | None) -> Work:
    """Give the work on a job: what was marked, or nothing yet.

    Raises
    ------
    SurfacesMissingError
        If pieces hang on surfaces that the job no longer has.
    """
    work = marked or begin_work(job)
    standing = work.standing
    of = (*(row.surface_id for row in standing.hung), *(cut.surface_id for cut in standing.cut))
    missing = _lacking((surface.id for surface in job.surfaces), of)
    if missing:
        raise SurfacesMissingError(missing)
    return work


def demand_boards(job: Job, standing: Standing) -> None:
    """Let a tally pass that has every board that pieces hang of or are cut from.

    Raises
    ------
    BoardsMissingError
        If it does not.
    """
    hung = (piece.board_id for row in standing.hung for piece in row.course.pieces)
    missing = _lacking(
        (board.id for board in job.boards), (*hung, *(cut.piece.board_id for cut in standing.cut))
    )
    if missing:
        raise BoardsMissingError(missing)


def demand_same_surfaces(job: Job, layout: Layout) -> None:
    """Let a layout pass that is of all surfaces of the job and of no other.

    Raises
    ------
    OtherLayoutError
        If it is not.
    """
    laid = tuple(surface.surface_id for surface in layout.surfaces)
    asked = tuple(surface.id for surface in job.surfaces)
    if sorted(laid) != sorted(asked):
        raise OtherLayoutError(laid, asked)


def _lacking(known: Iterable[str], asked: Iterable[str]) -> tuple[str, ...]:
    there = set(known)
    return tuple(name for name in dict.fromkeys(asked) if name not in there)
