"""Which board, pair or three of boards fits a run with least waste: what a careful carpenter sees.

It shares nothing with the search but what a run is, what a stick is and what sawing leaves of it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from plankwright.layout.butting import can_butt, reaches_barred
from plankwright.layout.plan import PlannedPiece, Stick
from plankwright.layout.runs import Run
from plankwright.layout.sticks import cut_from, remainders
from plankwright.measure import INCH, Nm
from plankwright.model import JointPolicy, Rules


@dataclass(frozen=True, slots=True, kw_only=True)
class Care:
    """How a carpenter weighs what is cut off.

    Parameters
    ----------
    end_lost
        What counts as lost of an offcut that could be used again: long boards are scarce.
    beside_lost
        The same of a strip that is ripped off a wide board.
    joint_price
        So much of a board, over the height of the course, is given for one joint in sight less. [nm]
    """

    end_lost: float
    beside_lost: float
    joint_price: Nm = 2 * INCH


CAREFUL = Care(end_lost=0.6, beside_lost=0.05)
"""What left least bare on eight walls of the family real, seeds 100 to 107."""

HASTY = Care(end_lost=0.0, beside_lost=0.0)
"""Somebody for whom nothing is wasted that could be used again, and who cuts long boards up early."""

_SEEN = 4
"""How many of the boards that waste least are looked at for each place."""

Chosen = list[tuple[int, int, int]]
"""Pieces from one place of a run to another, and which stick gives them."""


@dataclass(frozen=True, slots=True)
class Fitted:
    """A run with boards in it.

    Parameters
    ----------
    pieces
        In order.
    bare
        Stretches that nothing covers. [nm]
    price
        Wood that is wasted, and what the joints in sight count for. [nm²]
    left
        What is left of the sticks.
    """

    pieces: tuple[PlannedPiece, ...]
    bare: tuple[tuple[Nm, Nm], ...]
    price: float
    left: list[Stick]


class Eye:
    """Somebody who looks at a run of some height, and at the sticks that are wide enough for it.

    Parameters
    ----------
    run, height
        What is to be covered. [nm]
    near
        Joints in sight of the course below. [nm]
    rules
        What must be kept.
    care
        How waste is weighed.
    """

    def __init__(self, run: Run, height: Nm, near: Sequence[Nm], rules: Rules, care: Care = CAREFUL) -> None:
        self.run, self.height, self.rules, self.care = run, height, rules, care
        usable = [
            joint
            for joint in run.joints
            if joint.hidden
            or (
                rules.joints is not JointPolicy.NEVER
                and (
                    rules.joints is JointPolicy.COUNT
                    or all(abs(joint.at - at) >= rules.stagger_nm for at in near)
                )
            )
        ]
        self.places = (run.start, *(joint.at for joint in usable), run.end)
        self.shown = {place for place, joint in enumerate(usable, start=1) if not joint.hidden}

    def fit(self, sticks: Sequence[Stick]) -> Fitted:
        """Fill the run from its start: one board, two or three; and where those do not reach, ever one more.

        Parameters
        ----------
        sticks
            The wood at hand.
        """
        left, price = list(sticks), 0.0
        pieces: list[PlannedPiece] = []
        bare: list[tuple[Nm, Nm]] = []
        first, last = 0, len(self.places) - 1
        before: Stick | None = None
        while first < last:
            wide = [stick for stick in left if stick.makes(self.height, self.rules.width_tolerance_nm)]
            found = self._best(wide, first, before)
            if found is None:
                bare.append((self.places[first], self.places[first + 1]))
                first, before = first + 1, None
                continue
            cost, chosen = found
            price += cost
            for start, end, index in chosen:
                piece = self._cut(wide[index], start, end)
                pieces.append(piece)
                at = left.index(wide[index])
                left[at : at + 1] = remainders(wide[index], piece.stick, self.rules)
                first, before = end, wide[index]
        return Fitted(tuple(pieces), tuple(bare), price, left)

    def _best(self, sticks: list[Stick], first: int, before: Stick | None) -> tuple[float, Chosen] | None:
        """Give the cheapest way to the end of the run, or the longest single piece where there is none."""
        best: tuple[float, Chosen] | None = None
        longest: tuple[Nm, float, Chosen] | None = None
        for group, all_hidden in self._groups(sticks, first, before):
            looks = self._look(sticks, group, first, before)
            found = self._cheapest(looks, first, all_hidden=all_hidden)
            if found is not None and (best is None or found[0] < best[0]):
                best = found
            for (start, end), seen in looks.items():
                if start == first and (not all_hidden or end not in self.shown):
                    reach = self.places[end] - self.places[start]
                    if longest is None or (-reach, seen[0][0]) < (-longest[0], longest[1]):
                        longest = reach, seen[0][0], [(start, end, seen[0][1])]
        if best is not None or longest is None:
            return best
        _, cost, chosen = longest
        return cost + self._joint_price(chosen[0][1]), chosen

    def _groups(
        self, sticks: list[Stick], first: int, before: Stick | None
    ) -> Iterator[tuple[list[int], bool]]:
        """Give sticks that may butt each other in sight, and all of them where every joint is hidden."""
        every = list(range(len(sticks)))
        tolerance = self.rules.thickness_tolerance_nm
        mated = before is not None and first in self.shown
        for profile in dict.fromkeys(stick.profile for stick in sticks):
            alike = [place for place in every if sticks[place].profile == profile]
            if mated and before is not None and before.profile != profile:
                continue
            reached: Nm = -1
            for thinnest in sorted({sticks[place].thickness for place in alike}):
                group = [place for place in alike if 0 <= sticks[place].thickness - thinnest <= tolerance]
                thickest = max(sticks[place].thickness for place in group)
                if thickest > reached:
                    reached = thickest
                    yield group, False
        if every and not mated:
            yield every, True

    def _look(
        self, sticks: list[Stick], group: list[int], first: int, before: Stick | None
    ) -> dict[tuple[int, int], list[tuple[float, int]]]:
        """Give for each piece that there may be the few sticks that waste least, least first."""
        spans = list(self._spans(first))
        if not spans or not group:
            return {}
        waste = self._waste(
            np.array([self.places[end] - self.places[start] for start, end in spans], dtype=np.float64),
            [sticks[place] for place in group],
        )
        for column, place in enumerate(group):
            stick = sticks[place]
            unlike = (
                before is not None
                and first in self.shown
                and abs(stick.thickness - before.thickness) > self.rules.thickness_tolerance_nm
            )
            for row, (start, end) in enumerate(spans):
                shows = stick.hidden_only and not self.run.hides(self.places[start], self.places[end])
                if shows or (unlike and start == first):
                    waste[row, column] = np.inf
        looks: dict[tuple[int, int], list[tuple[float, int]]] = {}
        order = np.argsort(waste, axis=1, kind="stable")[:, :_SEEN]
        for row, span in enumerate(spans):
            seen = [(float(waste[row, column]), group[column]) for column in order[row]]
            finite = [look for look in seen if look[0] < float("inf")]
            if finite:
                looks[span] = finite
        return looks

    def _spans(self, first: int) -> Iterator[tuple[int, int]]:
        """Give the pieces that there may be, between two places each, by the rules."""
        last = len(self.places) - 1
        for start in range(first, last):
            for end in range(start + 1, last + 1):
                left, right = self.places[start], self.places[end]
                alone = (start, end) == (0, last)
                allowed = alone or can_butt(left, right, self.run.nails, self.rules)
                if allowed and not reaches_barred(left, right, self.run.barred):
                    yield start, end

    def _cheapest(
        self, looks: dict[tuple[int, int], list[tuple[float, int]]], first: int, *, all_hidden: bool
    ) -> tuple[float, Chosen] | None:
        """Give the least wasteful board, pair or three from a place to the end of the run."""
        last = len(self.places) - 1
        between = [place for place in range(first + 1, last) if not (all_hidden and place in self.shown)]
        ways = [[first, last], *([first, one, last] for one in between)]
        ways += [[first, one, two, last] for one in between for two in between if one < two]
        best: tuple[float, Chosen] | None = None
        for way in ways:
            spans = list(pairwise(way))
            if not all(span in looks for span in spans):
                continue
            price = sum(self._joint_price(place) for place in way[1:-1])
            least = price + sum(looks[span][0][0] for span in spans)
            if best is not None and least >= best[0]:
                continue
            chosen = _unlike([looks[span] for span in spans])
            if chosen is not None and (best is None or price + chosen[0] < best[0]):
                pieces = [(*span, stick) for span, stick in zip(spans, chosen[1], strict=True)]
                best = price + chosen[0], pieces
        return best

    def _joint_price(self, place: int) -> float:
        return float(self.care.joint_price) * self.height if place in self.shown else 0.0

    def _waste(self, lengths: NDArray[np.float64], sticks: Sequence[Stick]) -> NDArray[np.float64]:
        """Give what of each stick a piece of each length wastes; infinite where it is too short. [nm²]

        Shape (n_lengths, n_sticks).
        """
        rules = self.rules
        rest = np.array([stick.length for stick in sticks], dtype=np.float64)[None, :] - lengths[:, None]
        width = np.array([stick.width for stick in sticks], dtype=np.float64)[None, :]
        kerf, rip = float(rules.crosscut_kerf_nm), float(rules.rip_kerf_nm)
        ends = np.where(
            rest >= rules.shortest_piece_nm + kerf, kerf + self.care.end_lost * (rest - kerf), rest
        )
        spare = np.maximum(width - self.height, 0.0)
        beside = np.where(
            spare >= rules.narrowest_course_nm + rip, rip + self.care.beside_lost * (spare - rip), spare
        )
        waste: NDArray[np.float64] = np.where(rest >= 0, ends * width + beside * lengths[:, None], np.inf)
        return waste

    def _cut(self, stick: Stick, start: int, end: int) -> PlannedPiece:
        left, right = self.places[start], self.places[end]
        width = min(self.height, stick.width)
        return PlannedPiece(
            cut_from(stick, stick.along_from, right - left, stick.across_from, width), left, right
        )


def _unlike(looks: Sequence[Sequence[tuple[float, int]]]) -> tuple[float, list[int]] | None:
    """Choose a stick for each piece, no stick twice, so that least is wasted."""
    best: tuple[float, list[int]] | None = None
    ways: list[tuple[float, list[int]]] = [(0.0, [])]
    for seen in looks:
        ways = [
            (price + cost, [*chosen, stick])
            for price, chosen in ways
            for cost, stick in seen
            if stick not in chosen
        ]
    for way in ways:
        if best is None or way[0] < best[0]:
            best = way
    return best
