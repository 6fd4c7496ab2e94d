"""The definition of job.toml."""

from enum import StrEnum
from typing import Annotated, cast

from pydantic import AfterValidator, Field, ValidationInfo

from plankwright.files.document import Count, Document, Flag, Name, Text
from plankwright.files.notation import Length, Notation, PositiveLength, refusal
from plankwright.files.surface_document import SurfaceDocument
from plankwright.files.trade_document import (
    HouseDocument,
    LotDocument,
    NailsDocument,
    PriceDocument,
    RoomDocument,
    TaskDocument,
)
from plankwright.measure import INCH, MILLIMETRE, Nm, Unit
from plankwright.model import BlemishPolicy, JointPolicy, Rules, SawKind

_RULES = Rules()


class Units(StrEnum):
    """Unit of a number that has none."""

    INCHES = "inches"
    FEET = "feet"
    MILLIMETRES = "mm"
    CENTIMETRES = "cm"
    METRES = "m"

    @property
    def unit(self) -> Unit:
        """The unit itself."""
        return _UNITS[self]


_UNITS = {
    Units.INCHES: Unit.INCH,
    Units.FEET: Unit.FOOT,
    Units.MILLIMETRES: Unit.MILLIMETRE,
    Units.CENTIMETRES: Unit.CENTIMETRE,
    Units.METRES: Unit.METRE,
}


class Fraction(StrEnum):
    """The finest mark of an inch tape."""

    WHOLE = "1"
    HALVES = "1/2"
    QUARTERS = "1/4"
    EIGHTHS = "1/8"
    SIXTEENTHS = "1/16"
    THIRTY_SECONDS = "1/32"
    SIXTY_FOURTHS = "1/64"

    @property
    def denominator(self) -> int:
        """How many parts of an inch."""
        return int(self.rpartition("/")[2])


_WIDEST_KERF_NM = INCH // 2
"""No blade that cuts boards takes more: common practice, no source."""


def _of_a_blade(nm: Nm, info: ValidationInfo) -> Nm:
    # A size is judged only where its unit is known.
    if nm > _WIDEST_KERF_NM and not cast(Notation, info.context).guessed:
        raise refusal("must be 1/2 in (12.7 mm) or less: no saw blade takes more, so check the unit")
    return nm


_Kerf = Annotated[Length, AfterValidator(_of_a_blade)]
"""Width that a blade takes. [nm]"""


class RulesDocument(Document):
    """What a layout must respect."""

    crosscut_kerf: Annotated[
        _Kerf, Field(description="Width that the blade takes when it cuts across a board.")
    ] = _RULES.crosscut_kerf_nm
    rip_kerf: Annotated[
        _Kerf, Field(description="Width that the blade takes when it cuts along a board.")
    ] = _RULES.rip_kerf_nm
    straight_edge_loss: Annotated[
        Length, Field(description="Taken off each long edge of a square-edged board to make it straight.")
    ] = _RULES.straight_edge_loss_nm
    end_trim: Annotated[
        Length, Field(description="Taken off each end of a board as it lies in the pile.")
    ] = _RULES.end_trim_nm
    width_tolerance: Annotated[
        Length, Field(description="How far the widths of the pieces of a course may differ.")
    ] = _RULES.width_tolerance_nm
    thickness_tolerance: Annotated[
        Length, Field(description="How far the thicknesses of two butted pieces in sight may differ.")
    ] = _RULES.thickness_tolerance_nm
    gap_tolerance: Annotated[Length, Field(description="The widest gap that counts as none.")] = (
        _RULES.gap_tolerance_nm
    )
    joints: Annotated[JointPolicy, Field(description="What may be done with butt joints in sight.")] = (
        _RULES.joints
    )
    stagger: Annotated[
        Length, Field(description="Least sideways distance between joints in sight of neighbouring courses.")
    ] = _RULES.stagger_nm
    bearing: Annotated[
        Length, Field(description="Wood that each of two butted pieces must have on the framing.")
    ] = _RULES.bearing_nm
    shortest_piece: Annotated[
        PositiveLength, Field(description="No piece is shorter, unless the run that it covers is.")
    ] = _RULES.shortest_piece_nm
    narrowest_course: Annotated[PositiveLength, Field(description="No course is narrower.")] = (
        _RULES.narrowest_course_nm
    )
    expansion_gap: Annotated[
        Length, Field(description="Left open along every side of the surface and of its openings.")
    ] = _RULES.expansion_gap_nm
    shim_up_to: Annotated[
        Length, Field(description="The thickest shim that may level a butt joint in sight.")
    ] = _RULES.shim_up_to_nm
    blemishes: Annotated[BlemishPolicy, Field(description="Where a blemish may hang.")] = _RULES.blemishes
    hold_back: Annotated[Count, Field(description="How many whole boards to keep as spares.")] = (
        _RULES.hold_back
    )
    nailing_points: Annotated[
        Count,
        Field(
            ge=1, description="At how many framing members a piece must be nailed, where it crosses so many."
        ),
    ] = _RULES.nailing_points
    nail_edge: Annotated[
        Length, Field(description="Least distance of a nail from the long edge of its piece.")
    ] = _RULES.nail_edge_nm
    nail_end: Annotated[Length, Field(description="Least distance of a nail from the end of its piece.")] = (
        _RULES.nail_end_nm
    )
    nail_clearance: Annotated[Length, Field(description="Least distance of a nail from a keep-out.")] = (
        _RULES.nail_clearance_nm
    )

    def rules(self) -> Rules:
        """Give the rules as the model knows them.

        Raises
        ------
        InvalidValueError
            If they contradict each other.
        """
        given = self.model_dump()
        return Rules(**{name: given[name.removesuffix("_nm")] for name in Rules.__dataclass_fields__})


class SawDocument(Document):
    """A saw at hand."""

    name: Name
    cuts: Annotated[SawKind, Field(description="Across the board, or along it.")]
    capacity: Annotated[PositiveLength, Field(description="The widest board it crosscuts, or strip it rips.")]


class JobDocument(Document):
    """A job: what is to be covered, under which rules, with which saws. The boards are in the tally."""

    name: Annotated[Name, Field(description="What you call the job.")]
    units: Annotated[Units, Field(description="Unit of a number that has none, here and in the tally.")]
    decimal_comma: Annotated[Flag, Field(description="Whether 2,4 in text means two and four tenths.")] = (
        False
    )
    fraction: Annotated[
        Fraction | None, Field(description="Finest mark of an inch tape; 1/16 without it.")
    ] = None
    millimetre_step: Annotated[
        PositiveLength | None,
        Field(description="Finest mark of a metric tape: 1 mm, or 0.5 mm; 1 mm without it."),
    ] = None
    linked: Annotated[
        tuple[tuple[Name, ...], ...],
        Field(
            description="Walls whose courses run round the corners between them at the same heights: in each "
            "group their ids, from left to right as seen from inside the room; the first again at the end "
            "where courses run all round.",
            examples=[[["north", "east"]]],
        ),
    ] = ()
    surfaces: Annotated[
        tuple[SurfaceDocument, ...],
        Field(alias="surface", json_schema_extra={"minItems": 1}, description="The most important first."),
    ]
    rules: RulesDocument = RulesDocument()
    saws: Annotated[tuple[SawDocument, ...], Field(alias="saw")] = ()
    house: HouseDocument = HouseDocument()
    lots: Annotated[tuple[LotDocument, ...], Field(alias="lot")] = ()
    room: RoomDocument | None = None
    nails: NailsDocument = NailsDocument()
    tasks: Annotated[tuple[TaskDocument, ...], Field(alias="task")] = ()
    prices: Annotated[tuple[PriceDocument, ...], Field(alias="price")] = ()
    currency: Annotated[Text, Field(description="Written before an amount of money.", examples=["$"])] = ""


MILLIMETRE_STEPS = (MILLIMETRE, MILLIMETRE // 2)
"""What `millimetre_step` may be. [nm]"""
