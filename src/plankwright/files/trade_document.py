"""The definition of what job.toml says besides the layout: the room, the lots, nails, times and prices."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from plankwright.files.document import Document, Name
from plankwright.files.notation import PositiveLength
from plankwright.files.quantity import Amount, PerCent, Temperature
from plankwright.model import Air, Fastening, Lot, Paint, Per, Price, Room, Task, Treatment
from plankwright.trade.fasteners.nails import USUAL_KIND, nail_kinds
from plankwright.trade.fasteners.reach import DepthRule
from plankwright.trade.lumber.facts import NEW_EXTRA_SHARE

_PER_CENT = 100
_RULE = DepthRule()

Year = Annotated[int, Field(strict=True, description="Four figures.", examples=[1926])]

NailKind = StrEnum("NailKind", {kind.upper().replace(" ", "_"): kind for kind in nail_kinds()})  # type: ignore[misc] # mypy wants the names spelt out
"""The kinds of nails that are known."""


class HouseDocument(Document):
    """The house whose surfaces are covered."""

    built: Annotated[Year | None, Field(description="Year in which it was built.")] = None


class LotDocument(Document):
    """What is known of the boards of a lot of the tally."""

    name: Annotated[Name, Field(description="The lot, as the tally has it.")]
    built: Annotated[Year | None, Field(description="Year in which their building was built.")] = None
    paint: Annotated[Paint, Field(description="What is on the boards.")] = Paint.UNKNOWN
    treatment: Annotated[Treatment, Field(description="What they were soaked with against rot.")] = (
        Treatment.NONE
    )

    moisture: Annotated[
        tuple[PerCent, PerCent] | None,
        Field(
            description="The driest and the dampest reading of its boards, for those that have none of their "
            "own in the tally.",
            examples=[[8, 12]],
        ),
    ] = None

    def lot(self) -> Lot:
        """Give the lot as the model knows it."""
        spread = self.moisture
        return Lot(
            name=self.name,
            built=self.built,
            paint=self.paint,
            treatment=self.treatment,
            moisture_pct=None if spread is None else (float(spread[0]), float(spread[1])),
        )


class AirDocument(Document):
    """The air of the room at a time of the year."""

    temperature: Annotated[Temperature, Field(description="Of the air, with its unit.")]
    humidity: Annotated[PerCent, Field(description="Relative humidity, in per cent.")]

    def air(self) -> Air:
        """Give the air as the model knows it."""
        return Air(temperature_c=self.temperature, humidity_pct=float(self.humidity))


class RoomDocument(Document):
    """The air that the boards come to live in, through the year."""

    dry: Annotated[AirDocument, Field(description="In the season in which wood gets driest.")]
    damp: Annotated[AirDocument, Field(description="In the season in which it gets dampest.")]
    now: Annotated[AirDocument | None, Field(description="As measured now.")] = None

    def room(self) -> Room:
        """Give the room as the model knows it."""
        return Room(
            dry=self.dry.air(), damp=self.damp.air(), now=None if self.now is None else self.now.air()
        )


class NailsDocument(Document):
    """What is asked of nails."""

    kind: Annotated[NailKind, Field(description="The kind of nail.")] = NailKind(USUAL_KIND)
    bite: Annotated[
        PositiveLength, Field(description="How far into the framing a nail should reach at least.")
    ] = _RULE.bite_nm
    depth_unknown: Annotated[
        PositiveLength,
        Field(description="How far into the framing it may reach where nobody looked inside."),
    ] = _RULE.unknown_nm
    depth_opened: Annotated[
        PositiveLength,
        Field(description="The same where the wall was opened and everything in it is a keep-out."),
    ] = _RULE.opened_nm

    def fastening(self) -> Fastening:
        """Give what is asked for as the model knows it; what is left out follows common practice there."""
        given = self.model_fields_set
        return Fastening(
            kind=self.kind.value if "kind" in given else None,
            bite_nm=self.bite if "bite" in given else None,
            depth_unknown_nm=self.depth_unknown if "depth_unknown" in given else None,
            depth_opened_nm=self.depth_opened if "depth_opened" in given else None,
        )


class TaskDocument(Document):
    """A task, and how long it takes you."""

    name: Name
    minutes: Annotated[Amount, Field(description="How long it takes each time.")]
    per: Annotated[Per, Field(description="What it is done to.")]

    def task(self) -> Task:
        """Give it as the model knows it."""
        return Task(name=self.name, minutes=self.minutes, per=self.per)


class PriceDocument(Document):
    """Wood that you could buy instead, new or from a yard."""

    name: Name
    cost: Annotated[Amount, Field(description="What one costs.")]
    per: Annotated[Per, Field(description="What it is sold by.")]
    waste: Annotated[
        PerCent | None,
        Field(
            description="How much of what is bought is lost, in per cent; without it "
            f"{float(NEW_EXTRA_SHARE.value) * _PER_CENT:.0f} % more than the area is bought."
        ),
    ] = None

    def price(self) -> Price:
        """Give it as the model knows it."""
        waste = None if self.waste is None else self.waste / _PER_CENT
        return Price(name=self.name, cost=self.cost, per=self.per, waste=waste)


class LayerDocument(Document):
    """What lies between the framing and the boards."""

    what: Annotated[Name, Field(description="In your words.", examples=["plaster on lath"])]
    thickness: Annotated[PositiveLength, Field(description="How thick it is.")]
