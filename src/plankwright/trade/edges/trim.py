"""Whether trim covers the gap at an edge, in the driest season too."""

from dataclasses import dataclass

from plankwright.measure import Nm
from plankwright.trade.edges.facts import OVERLAP_NM


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeCover:
    """What trim has to cover along an edge, and how much of the boards is left under it.

    Parameters
    ----------
    trim_nm
        Width of the trim that lies on the surface; nothing where there is none. [nm]
    gap_nm
        Left open along the edge by the rules: no board comes nearer. [nm]
    widest_nm
        Left open where the boards end farthest from the edge; nothing where no board ends there. [nm]
    shrinks_nm
        How far the edge of the boards draws back in the driest season. [nm]
    """

    trim_nm: Nm
    gap_nm: Nm
    widest_nm: Nm | None
    shrinks_nm: Nm

    @property
    def overlap_nm(self) -> Nm | None:
        """How much of the boards it covers in the driest season; below zero where the gap shows. [nm]"""
        return None if self.widest_nm is None else self.trim_nm - self.widest_nm - self.shrinks_nm

    @property
    def untrimmed(self) -> bool:
        """Whether a gap is left open that no trim lies over."""
        return self.trim_nm == 0 and self.gap_nm > 0

    @property
    def too_little(self) -> bool:
        """Whether trim covers less than is wanted."""
        return self.trim_nm > 0 and self.overlap_nm is not None and self.overlap_nm < OVERLAP_NM.value

    @property
    def too_narrow(self) -> bool:
        """Whether it would cover too little however far the boards reached."""
        return self.too_little and self.trim_nm - self.gap_nm - self.shrinks_nm < OVERLAP_NM.value

    @property
    def wide_enough_nm(self) -> Nm:
        """The narrowest trim that covers what is wanted of the boards where they end. [nm]"""
        return (self.widest_nm or 0) + self.shrinks_nm + OVERLAP_NM.value
