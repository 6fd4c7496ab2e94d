"""What is dear besides wood while the surface is being covered, and once it is."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Prices:
    """What is dear besides wood.

    Parameters
    ----------
    bare
        To leave something bare costs so many times as much wood.
    joint
        A joint in sight costs as much as so many middling sticks.
    """

    bare: float
    joint: float


COVERING = Prices(bare=50.0, joint=1 / 6)
"""While something is bare: wood is short, so a joint must not cost much of it."""

COVERED = Prices(bare=1000.0, joint=4.0)
"""Once nothing is: joints count before wood."""
