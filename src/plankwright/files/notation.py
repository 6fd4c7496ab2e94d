"""How a file writes its lengths, and the field of a document that holds one."""

import math
from dataclasses import dataclass
from typing import Annotated, cast

from pydantic import (
    AfterValidator,
    BeforeValidator,
    PlainSerializer,
    SerializationInfo,
    ValidationInfo,
    WithJsonSchema,
)
from pydantic_core import PydanticCustomError

from plankwright.measure import LengthError, Nm, System, TapeStyle, Unit, read_length, write_exact

_LARGEST_NUMBER = 1e12


@dataclass(frozen=True, slots=True, kw_only=True)
class Notation:
    """How the lengths of a file are written.

    Parameters
    ----------
    unit
        Unit of a number that has none; nothing where every length must name its own.
    decimal_comma
        Whether the comma is the decimal mark in text.
    guessed
        Whether the unit stands in for one that could not be read, so that no size is to be judged by it.
    """

    unit: Unit | None
    decimal_comma: bool = False
    guessed: bool = False

    def read(self, value: object) -> Nm:
        """Read a length from text or from a bare number. [nm]

        Raises
        ------
        LengthError
            If it is no length.
        """
        if isinstance(value, str):
            return read_length(value, default_unit=self.unit, decimal_comma=self.decimal_comma)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise LengthError(
                str(value).lower(), "is not a length: write a number, or text like 87-5/8 in or 2226 mm"
            )
        return read_length(number_text(value), default_unit=self.unit)

    def write(self, nm: Nm) -> str:
        """Write a length with its unit, so that it is read as the same one whatever unit is meant."""
        metric = self.unit is not None and self.unit.is_metric
        text = write_exact(nm, TapeStyle(system=System.METRIC if metric else System.IMPERIAL))
        return text.replace(".", ",") if self.decimal_comma else text


def number_text(value: float) -> str:
    """Write a number as a person would, without an exponent.

    Raises
    ------
    LengthError
        If it is no number that could measure anything.
    """
    if abs(value) > _LARGEST_NUMBER or not math.isfinite(value):
        raise LengthError(
            "a number" if isinstance(value, int) else str(value), "is no length that could be measured"
        )
    if isinstance(value, int):
        return str(value)
    text = f"{value:.12f}".rstrip("0")
    return text.removesuffix(".")


def _read(value: object, info: ValidationInfo) -> Nm:
    notation = cast(Notation, info.context)
    try:
        return notation.read(value)
    except LengthError as trouble:
        raise refusal(str(trouble)) from None


def _read_signed(value: object, info: ValidationInfo) -> Nm:
    if isinstance(value, str) and value.lstrip().startswith("-"):
        return -_read(value.lstrip()[1:], info)
    if isinstance(value, int | float) and not isinstance(value, bool) and value < 0:
        return -_read(-value, info)
    return _read(value, info)


def _written(nm: Nm, info: SerializationInfo) -> str:
    # The defaults in a schema are written without any.
    return (cast(Notation | None, info.context) or Notation(unit=None)).write(nm)


def _more_than_nothing(nm: Nm) -> Nm:
    if nm == 0:
        raise refusal("must be more than nothing")
    return nm


def refusal(sentence: str, *field: str | int) -> PydanticCustomError:
    """Make the error with which a document refuses a value.

    Parameters
    ----------
    sentence
        What is wrong and how to mend it; it follows the name of the field.
    field
        Path of the offending field below the part that refuses.
    """
    return PydanticCustomError("refused", "{sentence}", {"sentence": sentence, "field": field})


_LENGTH_SCHEMA = {"type": ["string", "number"], "description": 'A length, such as "7 ft 3-5/8" or "2226 mm".'}

Length = Annotated[
    int,
    BeforeValidator(_read),
    PlainSerializer(_written, when_used="json"),
    WithJsonSchema(_LENGTH_SCHEMA),
]
"""A length of zero or more, as text or as a bare number in the unit of the file. [nm]"""

PositiveLength = Annotated[Length, AfterValidator(_more_than_nothing)]
"""A length of more than nothing. [nm]"""

SignedLength = Annotated[int, BeforeValidator(_read_signed), WithJsonSchema(_LENGTH_SCHEMA)]
"""A length or position that may lie below zero. [nm]"""
