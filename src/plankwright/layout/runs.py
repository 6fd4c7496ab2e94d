"""What a strip of the surface asks of one course: runs to cover, and where in them pieces may butt."""

from dataclasses import dataclass

from plankwright.measure import Nm


@dataclass(frozen=True, slots=True)
class JointPlace:
    """A place for a joint within one run.

    Parameters
    ----------
    at
        Along the course. [nm]
    hidden
        Whether a concealed zone hides a joint here.
    """

    at: Nm
    hidden: bool


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of a course between surface edges and openings, and where joints may fall in it.

    Parameters
    ----------
    start, end
        Its long points. [nm]
    joints
        In order along the run.
    nails
        Where a piece over it can be nailed: framing that is clear of keep-outs and covered high enough. [nm]
    concealed
        Stretches that one concealed zone hides, over the whole height of the strip. [nm]
    barred
        Stretches that no piece may reach: its end would slope so far that no saw at hand cuts it, or the
        course is narrower than any may be. [nm]
    """

    start: Nm
    end: Nm
    joints: tuple[JointPlace, ...]
    nails: tuple[Nm, ...]
    concealed: tuple[tuple[Nm, Nm], ...] = ()
    barred: tuple[tuple[Nm, Nm], ...] = ()

    @property
    def length(self) -> Nm:
        """[nm]."""
        return self.end - self.start

    def hides(self, start: Nm, end: Nm) -> bool:
        """Whether one concealed zone hides all of a piece.

        Parameters
        ----------
        start, end
            Of the piece, along the course. [nm]
        """
        return any(left <= start and end <= right for left, right in self.concealed)
