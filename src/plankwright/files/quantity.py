"""Temperatures, shares, money and times as a job file writes them, and the fields that hold them."""

import math
import re
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, cast

from pydantic import (
    AfterValidator,
    BeforeValidator,
    PlainSerializer,
    SerializationInfo,
    ValidationInfo,
    WithJsonSchema,
)

from plankwright.files.notation import Notation, refusal
from plankwright.measure import to_celsius, to_fahrenheit

_TEMPERATURE = re.compile(
    r"(?P<sign>[-−]?)\s*(?P<number>[\d.,]+)\s*(?:°|deg(?:rees)?\s*)?\s*(?P<unit>[CFcf])"
)
_NUMBER = re.compile(r"\d+(?:\.\d+)?|\.\d+")
_FULL = 100
_LARGEST = 10**9


def read_number(text: str, *, decimal_comma: bool) -> Fraction | None:
    """Read a plain number of zero or more; nothing where it is none."""
    plain = text.strip().replace(",", ".") if decimal_comma else text.strip()
    return Fraction(plain) if _NUMBER.fullmatch(plain) else None


def read_per_cent(text: str, *, decimal_comma: bool) -> Fraction | None:
    """Read a number of per cent, with or without its sign; nothing where it is none."""
    return read_number(text.strip().removesuffix("%"), decimal_comma=decimal_comma)


def _read_temperature(value: object, info: ValidationInfo) -> float:
    text = value.strip() if isinstance(value, str) else ""
    match = _TEMPERATURE.fullmatch(text)
    number = match and read_number(match["number"], decimal_comma=_comma(info))
    if match is None or number is None:
        raise refusal('must be a temperature with its unit, like "68 F" or "20 C"')
    degrees = -float(number) if match["sign"] else float(number)
    return to_celsius(degrees) if match["unit"] in "Ff" else degrees


def _read_per_cent(value: object, info: ValidationInfo) -> Fraction:
    number = _number(value)
    if number is None and isinstance(value, str):
        number = read_per_cent(value, decimal_comma=_comma(info))
    if number is None or number > _FULL:
        raise refusal("must be a number of per cent from 0 to 100, like 35")
    return number


def _read_amount(value: object, info: ValidationInfo) -> Fraction:
    number = _number(value)
    if number is None and isinstance(value, str):
        number = read_number(value, decimal_comma=_comma(info))
    if number is None or number > _LARGEST:
        raise refusal("must be a number, like 4.50")
    return number


def _number(value: object) -> Fraction | None:
    """Give a number as it is written: 0.1 means a tenth and not what a machine makes of it."""
    if isinstance(value, bool) or not isinstance(value, int | float) or value < 0 or not math.isfinite(value):
        return None
    return Fraction(str(value))


def _comma(info: ValidationInfo) -> bool:
    return cast(Notation, info.context).decimal_comma


def _number_written(number: Fraction) -> str:
    """Write a number that was read from decimals, which divide out."""
    return f"{Decimal(number.numerator) / Decimal(number.denominator):f}"


def _temperature_written(celsius: float, info: SerializationInfo) -> str:
    """Write a temperature to the tenth of a degree, finer than rooms are measured."""
    unit = cast(Notation, info.context).unit
    if unit is not None and unit.is_metric:
        return f"{round(celsius, 1):g} C"
    return f"{round(to_fahrenheit(celsius), 1):g} F"


def _more_than_nothing(amount: Fraction) -> Fraction:
    if amount == 0:
        raise refusal("must be more than nothing")
    return amount


Temperature = Annotated[
    float,
    BeforeValidator(_read_temperature),
    PlainSerializer(_temperature_written, when_used="json"),
    WithJsonSchema(
        {"type": "string", "description": 'A temperature with its unit, such as "68 F" or "20 C".'}
    ),
]
"""[°C]"""

PerCent = Annotated[
    Fraction,
    BeforeValidator(_read_per_cent),
    PlainSerializer(_number_written, when_used="json"),
    WithJsonSchema({"type": ["string", "number"], "description": "A number of per cent, such as 35."}),
]
"""[%]"""

Amount = Annotated[
    Fraction,
    BeforeValidator(_read_amount),
    PlainSerializer(_number_written, when_used="json"),
    AfterValidator(_more_than_nothing),
    WithJsonSchema({"type": ["string", "number"], "description": "A number of more than nothing."}),
]
"""Money, or minutes; exact."""
