"""What boards are fastened with, and what lies between them and the framing."""

from dataclasses import dataclass

from plankwright.measure import Nm
from plankwright.model.validity import demand


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """What lies between the framing and the boards: old plaster, wallboard, furring.

    Parameters
    ----------
    what
        In the user's words.
    thickness_nm
        [nm]
    """

    what: str
    thickness_nm: Nm

    def __post_init__(self) -> None:
        demand(self.thickness_nm > 0, "a layer has a thickness", field="thickness")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastening:
    """What the user asks of nails; whatever is left out follows common practice.

    Parameters
    ----------
    kind
        The kind of nail.
    bite_nm
        How far into the framing they should reach at least. [nm]
    depth_unknown_nm, depth_opened_nm
        How far they may reach: where the inside of the wall is unknown, and where it was opened and
        mapped. [nm]
    """

    kind: str | None = None
    bite_nm: Nm | None = None
    depth_unknown_nm: Nm | None = None
    depth_opened_nm: Nm | None = None


AS_USUAL = Fastening()
"""Nothing is asked of nails: common practice is followed."""
