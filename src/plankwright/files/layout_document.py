"""The definition of a layout file: JSON, of our own, the same words as the model."""

import re
from typing import Annotated, Literal

from pydantic import AfterValidator, BeforeValidator, Field, WithJsonSchema, model_validator

from plankwright.files.document import Document, Flag, Name, Text
from plankwright.files.job_document import Units
from plankwright.files.notation import SignedLength, refusal
from plankwright.measure import MILLIMETRE
from plankwright.model import EdgeTreatment, Face

FORMAT = "plankwright layout"
VERSION = 1

_SQUARE_MILLIMETRE = MILLIMETRE**2
_AREA = re.compile(r"([0-9]{1,15})(?:\.([0-9]{1,12}))? ?mm²")


def _read_area(value: object) -> int:
    match = _AREA.fullmatch(value) if isinstance(value, str) else None
    if match is None:
        raise refusal("must be an area in square millimetres, like “1250.5 mm²”")
    return int(match[1]) * _SQUARE_MILLIMETRE + int((match[2] or "").ljust(12, "0"))


def write_area_exact(nm2: int) -> str:
    """Write an area so that reading it back gives exactly the same one, in mm²."""
    whole, rest = divmod(nm2, _SQUARE_MILLIMETRE)
    return f"{whole}.{rest:012d}".rstrip("0").rstrip(".") + " mm²"


def _in_order(extent: tuple[int, int]) -> tuple[int, int]:
    if extent[0] >= extent[1]:
        raise refusal("must go from the lower to the higher position")
    return extent


Area = Annotated[
    int,
    BeforeValidator(_read_area),
    WithJsonSchema({"type": "string", "pattern": f"^{_AREA.pattern}$"}),
]
"""An area, exact. [nm²]"""

Position = tuple[SignedLength, SignedLength]
Extent = Annotated[Position, AfterValidator(_in_order)]
Whole = Annotated[int, Field(strict=True, ge=0, le=2**53)]


class BoxDocument(Document):
    """An upright rectangle on the surface, from its lower left corner."""

    left: SignedLength
    bottom: SignedLength
    right: SignedLength
    top: SignedLength

    @model_validator(mode="after")
    def _encloses_something(self) -> "BoxDocument":
        if self.left >= self.right:
            raise refusal("must lie to the right of left", "right")
        if self.bottom >= self.top:
            raise refusal("must lie above bottom", "top")
        return self


class PieceDocument(Document):
    """What is cut from a board and hung in one place."""

    label: Annotated[Name, Field(description="Written on the piece: course number and letter, such as 4b.")]
    board: Annotated[Name, Field(description="The board that it comes from.")]
    place: Annotated[BoxDocument, Field(description="The blank as hung.")]
    along: Annotated[Extent, Field(description="Where it lies along the board, from the marked end.")]
    across: Annotated[Extent, Field(description="Where it lies across the board, from the reference edge.")]
    face: Annotated[Face, Field(description="The face that shows.")] = Face.FRONT
    turned: Annotated[
        Flag, Field(description="Whether the reference edge lies farthest from the start edge.")
    ] = False
    near: Annotated[EdgeTreatment, Field(description="The long edge nearest to the start edge.")] = (
        EdgeTreatment.AS_FOUND
    )
    far: Annotated[EdgeTreatment, Field(description="The long edge farthest from it.")] = (
        EdgeTreatment.AS_FOUND
    )
    shim: Annotated[SignedLength, Field(description="Thickness of the shim behind it.")] = 0
    nails: Annotated[tuple[Position, ...], Field(description="Where it is nailed, [x, y] each.")] = ()


class CourseDocument(Document):
    """One row of boards."""

    number: Annotated[Whole, Field(description="From the start edge, the starter being 1.")]
    from_nm: Annotated[SignedLength, Field(alias="from", description="Its near edge, from the start side.")]
    to_nm: Annotated[SignedLength, Field(alias="to", description="Its far edge, from the start side.")]
    pieces: Annotated[tuple[PieceDocument, ...], Field(description="From the left, or from the bottom.")]

    @model_validator(mode="after")
    def _has_a_height(self) -> "CourseDocument":
        if self.from_nm >= self.to_nm:
            raise refusal("must be farther from the start side than from", "to")
        return self


class ScoreDocument(Document):
    """How good the layout of a surface is."""

    bare: Annotated[Area, Field(description="Area left bare.")]
    joints_in_sight: Whole
    wood_spent: Annotated[
        Area, Field(description="Faces of the boards cut into, less what is worth keeping.")
    ]
    cuts: Annotated[Whole, Field(description="Passes of a saw.")]


class BoundDocument(Document):
    """What no layout of the surface can beat."""

    bare: Area = 0
    joints_in_sight: Whole = 0
    wood_spent: Area = 0


class SurfaceLayoutDocument(Document):
    """The layout of one surface."""

    surface: Annotated[Name, Field(description="Id of the surface in the job.")]
    courses: Annotated[tuple[CourseDocument, ...], Field(description="From the start edge on.")]
    bare: Annotated[
        tuple[BoxDocument, ...], Field(description="Blanks that no board could be found for.")
    ] = ()
    score: ScoreDocument
    bound: BoundDocument = BoundDocument()


class LayoutDocument(Document):
    """Which piece goes where."""

    format: Literal["plankwright layout"]
    version: Literal[1]
    job: Annotated[Name, Field(description="Name of the job.")]
    seed: Annotated[int, Field(strict=True, ge=-(2**63), lt=2**63, description="Seed of the search.")] = 0
    effort: Annotated[Text, Field(description="Effort of the search; empty for a layout made by hand.")] = ""
    units: Annotated[
        Units | None, Field(description="Unit of a number that has none; without it, all must.")
    ] = None
    surfaces: tuple[SurfaceLayoutDocument, ...]
