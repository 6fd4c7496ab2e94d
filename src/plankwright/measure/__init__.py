"""Tape-measure lengths: exact whole nanometres, read from and written as feet-inch-fraction or metric."""

from plankwright.measure.length import (
    CENTIMETRE,
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    SIXTY_FOURTH,
    Nm,
    System,
    TapeStyle,
    Unit,
    round_down,
    round_nearest,
    round_up,
)
from plankwright.measure.quantity import (
    to_celsius,
    to_fahrenheit,
    write_fine,
    write_force,
    write_mass,
    write_small,
    write_temperature,
    write_volume,
)
from plankwright.measure.reading import LengthError, read_length
from plankwright.measure.writing import write_area, write_exact, write_inches, write_length

__all__ = [
    "CENTIMETRE",
    "FOOT",
    "INCH",
    "METRE",
    "MILLIMETRE",
    "SIXTY_FOURTH",
    "LengthError",
    "Nm",
    "System",
    "TapeStyle",
    "Unit",
    "read_length",
    "round_down",
    "round_nearest",
    "round_up",
    "to_celsius",
    "to_fahrenheit",
    "write_area",
    "write_exact",
    "write_fine",
    "write_force",
    "write_inches",
    "write_length",
    "write_mass",
    "write_small",
    "write_temperature",
    "write_volume",
]
