"""Which lanes lie side by side in a stick, whatever they are worth."""

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from plankwright.measure import Nm


class Rips:
    """Lanes that a stick can be ripped into, worked out once for each width.

    Parameters
    ----------
    heights
        Of lanes, in rising order. [steps]
    course_heights
        The same as the saws are asked for them. [nm]
    kerf
        Of a rip. [steps]
    """

    def __init__(self, heights: Sequence[int], course_heights: Sequence[Nm], kerf: int) -> None:
        self._heights, self._course_heights, self._kerf = heights, course_heights, kerf
        self._known: dict[tuple[int, Nm | None, int], npt.NDArray[np.int64]] = {}

    def lanes(self, width: int, widest: Nm | None, most: int) -> npt.NDArray[np.int64]:
        """Give every choice of lanes that fit side by side.

        Parameters
        ----------
        width
            Of what is ripped. [steps]
        widest
            Lane that the saws can take off it; any when nothing. [nm]
        most
            So many lanes at the most.

        Returns
        -------
        array of shape (choices, most)
            Numbers of heights, in rising order; where there are fewer lanes, how many heights there are.
        """
        key = width, widest, most
        if key not in self._known:
            choices = list(self._choices(width, widest, most, 0))
            filled = [(*choice, *[len(self._heights)] * (most - len(choice))) for choice in choices]
            self._known[key] = np.array(filled, dtype=np.int64).reshape(len(filled), most)
        return self._known[key]

    def _choices(self, width: int, widest: Nm | None, most: int, first: int) -> Iterator[tuple[int, ...]]:
        for number in range(first, len(self._heights)):
            lane = self._heights[number]
            if lane > width or (widest is not None and self._course_heights[number] > widest):
                return
            yield (number,)
            if most > 1:
                for others in self._choices(width - lane - self._kerf, widest, most - 1, number):
                    yield (number, *others)
