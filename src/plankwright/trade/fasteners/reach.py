"""How deep a nail goes: the one rule by which a length is chosen.

Published rules pull against each other. Three times the thickness of the board, or 1-1/2 in of bite, drives
a nail through a 3/4 in board on bare studs to the depth where an unprotected cable may lie, or past it. Here
the depth comes first: of the lengths that stay within the depth allowed the longest is taken, and where its
bite is less than what is wanted, that is said.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from plankwright.measure import Nm
from plankwright.trade.fasteners.facts import (
    BITE_NM,
    BLIND_DEG,
    KEPT_BACK_NM,
    PROTECTED_DEPTH_NM,
    ROOT_FROM,
    ROOT_TO,
    SIDING_BITE_NM,
    TIMES_THICKNESS,
)
from plankwright.trade.fasteners.nails import Nail


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthRule:
    """How deep nails may and should go, from the face of the framing.

    Parameters
    ----------
    bite_nm
        Wanted at least. [nm]
    unknown_nm
        Allowed where the inside of the wall is unknown. [nm]
    opened_nm
        Allowed where it was opened and what runs there was mapped. [nm]
    """

    bite_nm: Nm = BITE_NM.value
    unknown_nm: Nm = PROTECTED_DEPTH_NM.value - KEPT_BACK_NM.value
    opened_nm: Nm = PROTECTED_DEPTH_NM.value

    def allowed_nm(self, *, opened: bool, backing_nm: Nm | None = None) -> Nm:
        """Give the depth allowed. [nm]

        Parameters
        ----------
        opened
            Whether the inside was opened and mapped.
        backing_nm
            How thick solid backing is, if that is known: behind it a cable may touch it, so no tip comes out
            there where nobody looked. [nm]
        """
        if opened:
            return self.opened_nm
        return self.unknown_nm if backing_nm is None else min(self.unknown_nm, backing_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """What a nail goes through before it reaches the framing.

    Parameters
    ----------
    least_nm, most_nm
        Square to the framing, at least and at most: board, shim and whatever lies between. [nm]
    lean_deg
        How far the nail leans from square. [degrees]
    backing_nm
        How thick solid backing is, if that is known: what comes out behind it holds nothing. [nm]
    """

    least_nm: Nm
    most_nm: Nm
    lean_deg: float = 0.0
    backing_nm: Nm | None = None

    def deepest_nm(self, nail: Nail) -> Nm:
        """Give how far into the framing its tip reaches at most. [nm]"""
        return max(0, math.ceil(self._square_nm(nail)) - self.least_nm)

    def bite_nm(self, nail: Nail) -> Nm:
        """Give how far into the framing it reaches at least. [nm]"""
        reached = max(0, math.floor(self._square_nm(nail)) - self.most_nm)
        return reached if self.backing_nm is None else min(reached, self.backing_nm)

    def aside_nm(self, allowed_nm: Nm) -> Nm:
        """Give how far aside the tip of any nail lies at most that stays within a depth. [nm]"""
        return math.ceil((self.least_nm + allowed_nm) * math.tan(math.radians(self.lean_deg)))

    def _square_nm(self, nail: Nail) -> float:
        return nail.length_nm * math.cos(math.radians(self.lean_deg)) if self.lean_deg else nail.length_nm


def face_passage(board_nm: Nm, between_nm: Nm, backing_nm: Nm | None = None) -> Passage:
    """Give the passage of a nail driven square through the face.

    Parameters
    ----------
    board_nm
        Thickness of the board. [nm]
    between_nm
        Thickness of all that lies between board and framing: shim, wallboard, furring. [nm]
    backing_nm
        How thick solid backing is, if that is known. [nm]
    """
    return Passage(least_nm=board_nm + between_nm, most_nm=board_nm + between_nm, backing_nm=backing_nm)


def blind_passage(board_nm: Nm, between_nm: Nm) -> Passage:
    """Give the passage of a nail driven at 45° at the root of a tongue; parameters as in `face_passage`."""
    return Passage(
        least_nm=math.floor(board_nm * ROOT_FROM.value) + between_nm,
        most_nm=math.ceil(board_nm * ROOT_TO.value) + between_nm,
        lean_deg=BLIND_DEG.value,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """The nail that a rule leads to.

    Parameters
    ----------
    nail
        The longest that stays within the depth allowed; nothing where even the shortest would pass it.
    bite_nm, deepest_nm
        How far into the framing it reaches, at least and at most. [nm]
    enough
        Whether the bite is as much as is wanted.
    """

    nail: Nail | None
    bite_nm: Nm = 0
    deepest_nm: Nm = 0
    enough: bool = False


def choose_nail(nails: Sequence[Nail], passage: Passage, rule: DepthRule, *, opened: bool) -> Chosen:
    """Choose the length of a nail.

    Parameters
    ----------
    nails
        Of one kind.
    passage
        What it goes through.
    rule
        How deep it may and should go.
    opened
        Whether the inside of the wall was opened and mapped.

    Returns
    -------
    Chosen
        Never a nail that goes deeper than is allowed, and none that does not reach the framing.
    """
    allowed = rule.allowed_nm(opened=opened, backing_nm=passage.backing_nm)
    fitting = [nail for nail in nails if passage.deepest_nm(nail) <= allowed and passage.bite_nm(nail) > 0]
    if not fitting:
        return Chosen(nail=None)
    nail = max(fitting, key=lambda one: one.length_nm)
    bite = passage.bite_nm(nail)
    return Chosen(nail=nail, bite_nm=bite, deepest_nm=passage.deepest_nm(nail), enough=bite >= rule.bite_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class PublishedLengths:
    """What the published rules would ask for, to be shown beside what is chosen. [nm]

    Parameters
    ----------
    three_times_nm, siding_nm
        Lengths of nails: three times the board, and 1-1/2 in of bite.
    three_times_depth_nm, siding_depth_nm
        How far into the framing those would reach.
    """

    three_times_nm: Nm
    three_times_depth_nm: Nm
    siding_nm: Nm
    siding_depth_nm: Nm


def published_lengths(board_nm: Nm, between_nm: Nm) -> PublishedLengths:
    """Give the lengths of two published rules for nails through the face; parameters as in `face_passage`."""
    through = board_nm + between_nm
    three_times = TIMES_THICKNESS.value * board_nm
    return PublishedLengths(
        three_times_nm=three_times,
        three_times_depth_nm=max(0, three_times - through),
        siding_nm=through + SIDING_BITE_NM.value,
        siding_depth_nm=SIDING_BITE_NM.value,
    )
