"""What a layout must respect, and the saws that cut it. Each default's reason stands in docs/formats.md."""

from dataclasses import dataclass
from enum import StrEnum

from plankwright.measure import INCH, Nm
from plankwright.model.validity import demand


class JointPolicy(StrEnum):
    """What may be done with butt joints in sight."""

    NEVER = "never"
    COUNT = "count"
    STAGGER = "stagger"


class BlemishPolicy(StrEnum):
    """Where a blemish may hang."""

    HIDDEN = "hidden"
    ANYWHERE = "anywhere"


class SawKind(StrEnum):
    """What a saw is used for."""

    CROSSCUT = "crosscut"
    RIP = "rip"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """A saw at hand.

    Parameters
    ----------
    name
        What the user calls it.
    cuts
        Across or along the board.
    capacity_nm
        The widest board that it crosscuts, or the widest strip that it rips. [nm]
    """

    name: str
    cuts: SawKind
    capacity_nm: Nm

    def __post_init__(self) -> None:
        demand(self.capacity_nm > 0, "a saw must be able to cut something", field="capacity")


@dataclass(frozen=True, slots=True, kw_only=True)
class Rules:
    """What a layout must respect. All lengths in nm.

    Parameters
    ----------
    crosscut_kerf_nm, rip_kerf_nm
        Width that the blade takes.
    straight_edge_loss_nm
        Taken off each long edge of a square-edged board to make it straight.
    end_trim_nm
        Taken off each end of a board as it lies in the pile.
    width_tolerance_nm, thickness_tolerance_nm
        How far butted pieces may differ.
    gap_tolerance_nm
        The widest gap that counts as none.
    joints
        What may be done with butt joints in sight.
    stagger_nm
        Least sideways distance between joints in sight of neighbouring courses, when they are staggered.
    bearing_nm
        Wood that each of two butted pieces must have on the framing.
    shortest_piece_nm
        No piece is shorter, unless the run that it covers is.
    narrowest_course_nm
        No course is narrower.
    expansion_gap_nm
        Left open along every side of the surface and of its openings.
    shim_up_to_nm
        The thickest shim that may level a butt joint in sight.
    blemishes
        Where a blemish may hang.
    hold_back
        How many whole boards to keep as spares. [boards]
    nailing_points
        At how many framing members a piece must be nailed, where its run crosses so many.
    nail_edge_nm, nail_end_nm
        Least distance of a nail from the long edge and from the end of its piece.
    nail_clearance_nm
        Least distance of a nail from a keep-out.
    """

    crosscut_kerf_nm: Nm = INCH // 8
    rip_kerf_nm: Nm = INCH // 8
    straight_edge_loss_nm: Nm = INCH // 8
    end_trim_nm: Nm = INCH // 2
    width_tolerance_nm: Nm = INCH // 32
    thickness_tolerance_nm: Nm = INCH // 16
    gap_tolerance_nm: Nm = INCH // 16
    joints: JointPolicy = JointPolicy.STAGGER
    stagger_nm: Nm = 12 * INCH
    bearing_nm: Nm = INCH // 2
    shortest_piece_nm: Nm = 16 * INCH
    narrowest_course_nm: Nm = 2 * INCH
    expansion_gap_nm: Nm = INCH // 4
    shim_up_to_nm: Nm = 0
    blemishes: BlemishPolicy = BlemishPolicy.HIDDEN
    hold_back: int = 0
    nailing_points: int = 2
    nail_edge_nm: Nm = INCH // 2
    nail_end_nm: Nm = INCH // 4
    nail_clearance_nm: Nm = INCH

    def __post_init__(self) -> None:
        for name in self.__slots__:
            value = getattr(self, name)
            demand(not isinstance(value, int) or value >= 0, f"{name} cannot be negative", field=name)
        demand(self.nailing_points >= 1, "a piece must be nailed somewhere", field="nailing_points")
        demand(
            self.narrowest_course_nm > 0,
            "the narrowest course must be more than nothing",
            field="narrowest_course",
        )
        demand(
            self.shortest_piece_nm > 0, "the shortest piece must be more than nothing", field="shortest_piece"
        )
        demand(
            self.width_tolerance_nm <= self.gap_tolerance_nm,
            "width_tolerance is more than gap_tolerance: unequal pieces of one course would leave a gap",
            field="width_tolerance",
        )
