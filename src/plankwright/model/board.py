"""A board as it lies in the pile: its measurements, its edge and its flaws.

Positions along a board are measured from its marked end, positions across from its reference edge: the edge
towards you when the board lies front up with its marked end to the left. Of a milled board the end is marked
that makes it the groove (or the under-lap).
"""

from dataclasses import dataclass
from enum import StrEnum

from plankwright.measure import Nm
from plankwright.model.origin import NailsLeft, Treatment
from plankwright.model.validity import demand

_WETTEST_PCT = 200.0


class EdgeKind(StrEnum):
    """How the long edges of a board are milled."""

    SQUARE = "square"
    TONGUE_AND_GROOVE = "tongue-and-groove"
    SHIPLAP = "shiplap"


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeProfile:
    """The milling of a board's long edges.

    Parameters
    ----------
    kind
        Square, tongue-and-groove or shiplap.
    reach_nm
        How far the tongue or the lap reaches beyond the face width; zero for square edges. [nm]
    """

    kind: EdgeKind = EdgeKind.SQUARE
    reach_nm: Nm = 0

    def __post_init__(self) -> None:
        demand(self.reach_nm >= 0, "a tongue or lap cannot be negative", field="reach")
        demand(
            self.kind is not EdgeKind.SQUARE or self.reach_nm == 0,
            "a square edge has no tongue or lap: "
            "give the edge as tongue-and-groove or shiplap, or leave the size out",
            field="reach",
        )

    @property
    def milled(self) -> bool:
        """Whether the edges interlock with a neighbour's."""
        return self.kind is not EdgeKind.SQUARE


class Severity(StrEnum):
    """What a flaw does to the wood."""

    LOST = "lost"
    BLEMISH = "blemish"


class Face(StrEnum):
    """One of the two wide faces of a board."""

    FRONT = "front"
    BACK = "back"


@dataclass(frozen=True, slots=True, kw_only=True)
class Flaw:
    """A stretch of a board, over its whole width, that is lost or only ugly.

    Parameters
    ----------
    start_nm, end_nm
        From where to where, from the marked end of the board. [nm]
    what
        What is wrong, in the words of whoever tallied it.
    severity
        Lost wood is never hung; a blemish may hang where it does not show.
    face
        The face that a blemish shows on; nothing when it shows on both.
    """

    start_nm: Nm
    end_nm: Nm
    what: str
    severity: Severity
    face: Face | None = None

    def __post_init__(self) -> None:
        demand(self.start_nm >= 0, "a flaw cannot start before the board does", field="flaws")
        demand(self.start_nm < self.end_nm, "a flaw must end beyond where it starts", field="flaws")

    def shows_on(self, face: Face) -> bool:
        """Whether the flaw can be seen on the given face."""
        return self.face is None or self.face is face


def lot_key(lot: str) -> str:
    """Give what a lot goes by, so that "Hall" and "hall " are one lot."""
    return " ".join(lot.split()).casefold()


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """One salvaged piece as it lies in the pile.

    Parameters
    ----------
    id
        What is written on the board.
    length_nm
        From end to end. [nm]
    width_start_nm, width_end_nm
        Face width at the marked end and at the other; a taper runs straight between them. [nm]
    thickness_nm
        [nm]
    profile
        How its long edges are milled.
    flaws
        In order along the board.
    lot, species, tone, note
        As tallied; empty when not given. The tone is the user's own word for light or dark.
    moisture_pct
        As a meter read it. [% of dry mass]
    nails
        How far it is rid of nails, if somebody said so.
    treatment
        What it was soaked with; such a board has nothing but lost wood, so it never hangs.
    untreated
        Whether somebody said of this very board that it was soaked with nothing, whatever its lot was.
    """

    id: str
    length_nm: Nm
    width_start_nm: Nm
    width_end_nm: Nm
    thickness_nm: Nm
    profile: EdgeProfile = EdgeProfile()
    flaws: tuple[Flaw, ...] = ()
    lot: str = ""
    species: str = ""
    tone: str = ""
    note: str = ""
    moisture_pct: float | None = None
    nails: NailsLeft | None = None
    treatment: Treatment = Treatment.NONE
    untreated: bool = False

    def __post_init__(self) -> None:
        demand(bool(self.id.strip()), "a board needs an id: write one on the board and here", field="id")
        demand(self.length_nm > 0, "the length must be more than nothing", field="length")
        demand(
            self.width_start_nm > 0 and self.width_end_nm > 0,
            "the width must be more than nothing",
            field="width",
        )
        demand(self.thickness_nm > 0, "the thickness must be more than nothing", field="thickness")
        demand(
            max(self.width_start_nm, self.width_end_nm) <= self.length_nm,
            "the board is wider than it is long: swap the width and the length",
            field="width",
        )
        demand(
            all(flaw.end_nm <= self.length_nm for flaw in self.flaws),
            "a flaw reaches beyond the end of the board: check its positions and the length",
            field="flaws",
        )

        demand(
            self.moisture_pct is None or 0 <= self.moisture_pct <= _WETTEST_PCT,
            "is no moisture of wood: write per cent of its dry mass, as the meter shows it",
            field="moisture",
        )
        demand(
            self.treatment is Treatment.NONE
            or any(
                flaw.severity is Severity.LOST and (flaw.start_nm, flaw.end_nm) == (0, self.length_nm)
                for flaw in self.flaws
            ),
            "treated wood is lost from end to end",
            field="treatment",
        )
        demand(
            self.treatment is Treatment.NONE or not self.untreated,
            "a board cannot be both treated and untreated",
            field="treatment",
        )

    @property
    def lot_key(self) -> str:
        """What its lot goes by: the same however it is capitalised and spaced; empty without a lot."""
        return lot_key(self.lot)

    @property
    def tapered(self) -> bool:
        """Whether the board is wider at one end than at the other."""
        return self.width_start_nm != self.width_end_nm

    @property
    def narrowest_width_nm(self) -> Nm:
        """The smaller of the widths at both ends. [nm]"""
        return min(self.width_start_nm, self.width_end_nm)

    @property
    def face_area_nm2(self) -> int:
        """Area of one face, flaws and all. [nm²]"""
        return (self.width_start_nm + self.width_end_nm) * self.length_nm // 2
