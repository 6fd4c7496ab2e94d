"""What of a job decides which hazards it has."""

from dataclasses import dataclass

from plankwright.model import Paint, Treatment


@dataclass(frozen=True, slots=True, kw_only=True)
class PaintedLot:
    """Boards of one lot, or of none.

    Parameters
    ----------
    name
        What they are called.
    built
        Year in which their building was built, if it is known.
    paint
        What is said to be on them.
    area
        Of one face of all of them, in words and in the user's units; of a lot that is said to be unpainted,
        of those on which paint was seen.
    face_ft2
        The same. [ft²]
    seen
        Those of them on which the tally speaks of paint.
    """

    name: str
    built: int | None
    paint: Paint
    area: str
    face_ft2: float
    seen: tuple[str, ...] = ()

    @property
    def untested(self) -> bool:
        """Whether there is paint on them, or may be, of which nobody knows whether it holds lead."""
        return self.paint is Paint.UNKNOWN or (self.paint is Paint.NONE and bool(self.seen))

    @property
    def doubtful(self) -> bool:
        """Whether there is lead on them, or may be for all that anybody knows."""
        return self.untested or self.paint is Paint.LEAD


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """What of a job decides which hazards it has.

    Parameters
    ----------
    lots
        The boards, lot by lot.
    house_built
        Year of the house they go into, if it is known.
    treated
        Ids of boards that were soaked with something, and with what.
    woods
        What the woods of the untreated boards are called.
    layers
        What lies between framing and boards, in the user's words.
    ceilings
        Surfaces that are overhead.
    unseen
        Surfaces whose inside nobody looked at.
    keep_outs
        How many were entered.
    tasks
        What is to be done, in the user's words.
    nails_in
        Boards in which nails are, or of which nobody said that they are not.
    measured
        Whether anything is known of what is to be covered.
    """

    lots: tuple[PaintedLot, ...]
    house_built: int | None = None
    treated: tuple[tuple[str, Treatment], ...] = ()
    woods: tuple[str, ...] = ()
    layers: tuple[str, ...] = ()
    ceilings: tuple[str, ...] = ()
    unseen: tuple[str, ...] = ()
    keep_outs: int = 0
    tasks: tuple[str, ...] = ()
    nails_in: tuple[str, ...] = ()
    measured: bool = True

    @property
    def tallied(self) -> bool:
        """Whether anything is known of any board."""
        return bool(self.lots or self.treated)
