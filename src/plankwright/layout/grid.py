"""The step in which the solver counts lengths."""

from collections.abc import Sequence

from plankwright.layout.plan import Stick
from plankwright.layout.strips import Strips
from plankwright.measure import INCH, MILLIMETRE, Nm, System

_STEPS = {
    System.IMPERIAL: (INCH // 16, INCH // 32, INCH // 64),
    System.METRIC: (MILLIMETRE, MILLIMETRE // 2, MILLIMETRE // 4),
}


def grid_for(strips: Strips, stock: Sequence[Stick], system: System) -> Nm:
    """Give the coarsest step that loses nothing of the widths and the height, or else a fine one.

    Parameters
    ----------
    strips, stock
        The surface and the wood: widths must add up to its height.
    system
        The user's system, whose steps are tried.

    Returns
    -------
    Nm
        The step. [nm]
    """
    exact = {stick.width for stick in stock} | {strips.must_end - strips.start}
    for step in _STEPS[system]:
        if all(length % step == 0 for length in exact):
            return step
    return _STEPS[system][-1]
