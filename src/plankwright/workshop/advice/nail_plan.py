"""How a job is nailed, as values: which nail, how many, how deep, what they hold, what to buy."""

from dataclasses import dataclass

from plankwright.measure import Nm
from plankwright.model import Point
from plankwright.trade.fasteners.facts import TRUSTED_SHARE
from plankwright.trade.fasteners.nails import Nail
from plankwright.trade.fasteners.reach import Chosen, DepthRule, PublishedLengths


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """Nails of one sort in a piece.

    Parameters
    ----------
    chosen
        The nail, and how deep it goes.
    count
        How many.
    spots
        Where they go in, in the frame of the surface; none on solid backing, which takes them anywhere.
    blind
        Whether they go in at the root of the tongue, instead of through the face.
    """

    chosen: Chosen
    count: int
    spots: tuple[Point, ...]
    blind: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNails:
    """What a piece is nailed with.

    Parameters
    ----------
    surface_id, label
        The piece.
    driven
        Nails through the face, nails at the tongue, or both.
    members, members_wanted
        At how many framing members a nail holds it, and at how many it should be held.
    cut_off_by
        What runs behind it and keeps nails from members that it crosses.
    weight_n
        Of the piece, at most. [N]
    holds_n
        Load that pulls all of its nails out; nothing where it has none, or on backing of which nobody knows
        how thick it is. [N]
    near_ends
        How many of its nails stand near an end.
    bit_nm
        Widest drill bit for those; zero where the nail is too thin for any. [nm]
    """

    surface_id: str
    label: str
    driven: tuple[Driven, ...]
    members: int
    members_wanted: int
    cut_off_by: tuple[str, ...]
    weight_n: float
    holds_n: float | None
    near_ends: int
    bit_nm: Nm

    @property
    def held(self) -> bool:
        """Whether it is nailed at as many members as it should be, by nails that there are."""
        return self.members >= self.members_wanted and all(one.chosen.nail for one in self.driven)

    @property
    def times_its_weight(self) -> float | None:
        """How many times its weight pulls the nails out."""
        return None if self.holds_n is None or not self.weight_n else self.holds_n / self.weight_n


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceNails:
    """How a surface is nailed.

    Parameters
    ----------
    surface_id
        The surface.
    opened
        Whether its inside was looked at.
    overhead
        Whether it is a ceiling.
    solid
        Whether its backing takes nails anywhere.
    backing_nm
        How thick solid backing is; nothing where that is not known or it is not solid. [nm]
    between_nm, board_nm
        What lies between framing and boards, and the thickness that most boards have. [nm]
    published
        What two published rules would ask for with such a board.
    pieces
        Piece by piece.
    """

    surface_id: str
    opened: bool
    overhead: bool
    solid: bool
    backing_nm: Nm | None
    between_nm: Nm
    board_nm: Nm
    published: PublishedLengths
    pieces: tuple[PieceNails, ...]

    @property
    def not_held(self) -> tuple[PieceNails, ...]:
        """Pieces that nails alone do not hold."""
        return tuple(piece for piece in self.pieces if not piece.held)

    @property
    def unchecked(self) -> bool:
        """Whether boards hang overhead on backing of which nobody knows how thick it is."""
        return self.overhead and self.solid and self.backing_nm is None and bool(self.pieces)

    @property
    def brads_alone(self) -> bool:
        """Whether boards hang overhead by brads."""
        nails = [one.chosen.nail for piece in self.pieces for one in piece.driven]
        return self.overhead and any(nail is not None and nail.is_brad for nail in nails)

    @property
    def behind_nm(self) -> Nm:
        """How far the deepest nail comes out behind the backing. [nm]"""
        if self.backing_nm is None:
            return 0
        depths = [one.chosen.deepest_nm for piece in self.pieces for one in piece.driven]
        return max(0, max(depths, default=0) - self.backing_nm)

    @property
    def too_heavy(self) -> tuple[PieceNails, ...]:
        """Pieces overhead whose nails are trusted with less than their weight."""
        if not self.overhead:
            return ()
        return tuple(
            piece
            for piece in self.pieces
            if piece.times_its_weight is not None and piece.times_its_weight < TRUSTED_SHARE.value
        )

    @property
    def short_bite(self) -> tuple[PieceNails, ...]:
        """Pieces whose nails reach less far into the framing than is wanted."""
        return tuple(
            piece
            for piece in self.pieces
            if any(one.chosen.nail and not one.chosen.enough for one in piece.driven)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ToBuy:
    """Nails to buy.

    Parameters
    ----------
    nail
        The nail.
    driven, bought
        How many are driven, and how many are bought.
    pounds
        What those weigh, where a count by the pound is known. [lb]
    """

    nail: Nail
    driven: int
    bought: int
    pounds: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class NailPlan:
    """How a job is nailed.

    Parameters
    ----------
    kind
        The kind of nail.
    rule
        How deep nails may and should go.
    surfaces
        Surface by surface.
    to_buy
        The nails, by length.
    """

    kind: str
    rule: DepthRule
    surfaces: tuple[SurfaceNails, ...]
    to_buy: tuple[ToBuy, ...]

    @property
    def pieces(self) -> tuple[PieceNails, ...]:
        """Every piece of every surface."""
        return tuple(piece for surface in self.surfaces for piece in surface.pieces)
