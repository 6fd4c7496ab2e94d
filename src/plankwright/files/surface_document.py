"""The definition of a surface in job.toml."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field, model_validator

from plankwright.files.document import Document, Flag, Name, Text
from plankwright.files.notation import Length, PositiveLength, refusal
from plankwright.files.trade_document import LayerDocument
from plankwright.measure import INCH
from plankwright.model import Direction, Edge, SurfaceKind

STUD_WIDTH_NM = INCH * 3 // 2
"""Face of a dressed 2-by stud. [nm]"""

Corner = tuple[Length, Length]


class Level(StrEnum):
    """Which side of a surface with differing heights is level."""

    FLOOR = "floor"
    CEILING = "ceiling"


class HeightDocument(Document):
    """The height measured at one place along the surface."""

    at: Annotated[Length, Field(description="How far from the left end the height was measured.")]
    height: Annotated[Length, Field(description="The height there.")]


class TrimDocument(Document):
    """How much of the boards the trim will cover along each side: baseboard, crown, corner boards."""

    bottom: Length = 0
    top: Length = 0
    left: Length = 0
    right: Length = 0


class PlacedDocument(Document):
    """Something in a box: its lower left corner, from that of the surface, and its size."""

    id: Annotated[Name | None, Field(description="What you call it; without it, its kind and number.")] = None
    left: Annotated[Length, Field(description="From the left end of the surface to its left side.")]
    bottom: Annotated[Length, Field(description="From the bottom of the surface to its bottom.")]
    width: PositiveLength
    height: PositiveLength


class OpeningDocument(PlacedDocument):
    """A door, window or fireplace: not covered."""

    trim: Annotated[
        Length, Field(description="How much of the boards its casing will cover, on every side.")
    ] = 0


class ConcealedDocument(PlacedDocument):
    """What a fixture hides later: joints and blemishes may go there."""


class CutOutDocument(Document):
    """An electrical box or a pipe: covered, and notched around. Placed by its corner or by its centre."""

    id: Name | None = None
    left: Length | None = None
    bottom: Length | None = None
    centre: Annotated[Corner | None, Field(description="Its centre [x, y], instead of left and bottom.")] = (
        None
    )
    width: PositiveLength
    height: PositiveLength
    what: Annotated[Text, Field(description="What comes through there.", examples=["socket"])] = ""
    front: Annotated[
        Length | None,
        Field(
            description="How far its front stands before the face of the framing; flush with what lies "
            "between framing and boards without it."
        ),
    ] = None

    @model_validator(mode="after")
    def _placed_once(self) -> "CutOutDocument":
        cornered = [self.left is not None, self.bottom is not None]
        if self.centre is None and not all(cornered):
            raise refusal("needs its place: give left and bottom, or centre = [x, y]")
        if self.centre is not None and any(cornered):
            raise refusal("is given twice over: keep either centre, or left and bottom", "centre")
        return self


class KeepOutDocument(Document):
    """Where no nail may go: a box, a strip from bottom to top, or one from side to side."""

    id: Name | None = None
    left: Length | None = None
    bottom: Length | None = None
    width: PositiveLength | None = None
    height: PositiveLength | None = None
    vertical: Annotated[Length | None, Field(description="x of the centre line of an upright strip.")] = None
    horizontal: Annotated[Length | None, Field(description="y of the centre line of a level strip.")] = None
    what: Annotated[Text, Field(description="What runs there.", examples=["water pipe"])] = ""

    @model_validator(mode="after")
    def _one_shape(self) -> "KeepOutDocument":
        box = (self.left, self.bottom, self.height)
        lines = (self.vertical, self.horizontal)
        if self.width is None:
            raise refusal("needs a width: how wide is what no nail may reach?")
        if lines == (None, None):
            if None in box:
                raise refusal(
                    "needs its place: give vertical = x, or horizontal = y, or left, bottom, width and height"
                )
        elif None not in lines or box != (None, None, None):
            raise refusal(
                "is placed twice over: keep one of vertical, horizontal, or left, bottom and height"
            )
        return self


class FramingDocument(Document):
    """What the nails go into: solid backing, or studs, joists or strips, evenly spaced or listed or both."""

    solid: Annotated[Flag, Field(description="Whether a nail holds anywhere.")] = False
    spacing: Annotated[PositiveLength | None, Field(description="From centre to centre.")] = None
    first_centre: Annotated[
        Length | None, Field(description="Centre of the first one, from the left or bottom.")
    ] = None
    centres: Annotated[
        tuple[Length, ...], Field(description="Centres as measured; they add to spaced ones.")
    ] = ()
    width: Annotated[PositiveLength, Field(description="Width of the face that the boards lie on.")] = (
        STUD_WIDTH_NM
    )
    runs: Annotated[Direction, Field(description="Which way they run.")] = Direction.VERTICAL
    wood: Annotated[Text, Field(description="Its species, if it is known.", examples=["spruce"])] = ""
    thickness: Annotated[PositiveLength | None, Field(description="Of solid backing, if it is known.")] = None
    opened: Annotated[
        Flag,
        Field(description="Whether it was looked at from inside, and all that runs there is a keep-out."),
    ] = False

    @model_validator(mode="after")
    def _one_way(self) -> "FramingDocument":
        spaced = (self.spacing, self.first_centre)
        if self.solid:
            if self.centres or spaced != (None, None):
                raise refusal("is both solid and listed: keep solid = true, or the centres", "solid")
            return self
        if self.thickness is not None:
            raise refusal("is for solid backing: leave it out, or say solid = true", "thickness")
        if self.spacing is None and self.first_centre is None and not self.centres:
            raise refusal(
                "says nothing to nail to: give spacing and first_centre, or centres = [...], or solid = true"
            )
        if (self.spacing is None) != (self.first_centre is None):
            raise refusal(
                "needs spacing and first_centre together: where is the first one, and how far is the next?"
            )
        if self.spacing is not None and self.first_centre is not None and self.first_centre > self.spacing:
            raise refusal(
                "lies beyond the spacing, so that one would be missing before it: measure to the first one",
                "first_centre",
            )
        return self


class SurfaceDocument(Document):
    """A wall, ceiling or floor to be covered."""

    id: Annotated[Name, Field(description="What you call it; no two alike.")]
    kind: SurfaceKind = SurfaceKind.WALL
    width: Annotated[PositiveLength | None, Field(description="Of a plain rectangle, with height.")] = None
    height: Annotated[PositiveLength | None, Field(description="Of a plain rectangle, with width.")] = None
    heights: Annotated[
        tuple[HeightDocument, ...],
        Field(description="Heights measured at several places, from the left end on."),
    ] = ()
    level: Annotated[
        Level, Field(description="Which of floor and ceiling is level, where heights differ.")
    ] = Level.FLOOR
    corners: Annotated[tuple[Corner, ...], Field(description="Corners [x, y] one after the other.")] = ()
    courses: Annotated[Direction, Field(description="Which way the boards run.")] = Direction.HORIZONTAL
    start: Annotated[Edge | None, Field(description="The side that the first course is hung on.")] = None
    raised: Annotated[
        Length,
        Field(
            description="How much higher its bottom lies than that of the lowest wall that it is linked to."
        ),
    ] = 0
    trim: TrimDocument = TrimDocument()
    openings: Annotated[tuple[OpeningDocument, ...], Field(alias="opening")] = ()
    cut_outs: Annotated[tuple[CutOutDocument, ...], Field(alias="cut_out")] = ()
    concealed: tuple[ConcealedDocument, ...] = ()
    framing: FramingDocument
    between: Annotated[
        tuple[LayerDocument, ...],
        Field(description="What lies between the framing and the boards, from the framing on."),
    ] = ()
    keep_outs: Annotated[tuple[KeepOutDocument, ...], Field(alias="keep_out")] = ()

    @model_validator(mode="after")
    def _one_outline(self) -> "SurfaceDocument":
        plain = (self.width is not None, self.height is not None)
        ways = (any(plain), bool(self.heights), bool(self.corners))
        if sum(ways) != 1 or (ways[0] and not all(plain)):
            raise refusal(
                "needs its outline in one way: width and height, or heights = [{at = ..., height = ...}, "
                "...], or corners = [[x, y], ...]"
            )
        return self
