"""Lengths and areas as text: for the eye, for the saw, and for a file that must lose nothing.

A negative length, such as a difference, is its text without sign behind a minus.
"""

from plankwright.measure.length import (
    FOOT,
    INCH,
    METRE,
    MILLIMETRE,
    SIXTY_FOURTH,
    Nm,
    System,
    TapeStyle,
    round_nearest,
)


def write_length(nm: Nm, style: TapeStyle) -> str:
    """Write a length as it is read off the tape, to the nearest step of the style.

    Parameters
    ----------
    nm
        The length. [nm]
    style
        The tape.

    Returns
    -------
    Feet, inches and fraction, or millimetres: `7' 3-5/8"`, `3-5/8"`, `2226 mm`. Half a step goes away from
    zero.
    """
    if nm < 0:
        return _negative(write_length(-nm, style))
    rounded = round_nearest(nm, style.step_nm)
    return _write_millimetres(rounded) if style.system is System.METRIC else _write_feet(rounded)


def write_inches(nm: Nm, style: TapeStyle) -> str:
    """Write a length for the saw: all in inches, so that nobody adds feet up at the fence.

    Parameters
    ----------
    nm
        The length. [nm]
    style
        The tape; on a metric one this is `write_length`.

    Returns
    -------
    Inches and fraction, or millimetres: `87-5/8"`, `2226 mm`.
    """
    if style.system is System.METRIC:
        return write_length(nm, style)
    if nm < 0:
        return _negative(write_inches(-nm, style))
    return _write_inches(round_nearest(nm, style.step_nm))


def write_exact(nm: Nm, style: TapeStyle) -> str:
    """Write a length so that reading it back gives exactly the same one, however fine it is.

    Parameters
    ----------
    nm
        The length; only one that is not negative can be read back. [nm]
    style
        The tape; only its system counts, not its step.

    Returns
    -------
    Feet, inches and 64ths where they hold it exactly, else millimetres with up to six decimals behind a
    point.
    """
    if nm < 0:
        return _negative(write_exact(-nm, style))
    if style.system is System.IMPERIAL and nm % SIXTY_FOURTH == 0:
        return _write_feet(nm)
    return _write_millimetres(nm)


def write_area(nm2: int, style: TapeStyle) -> str:
    """Write an area in square feet with one decimal or square metres with two.

    Parameters
    ----------
    nm2
        The area. [nm²]
    style
        The tape; only its system counts.

    Returns
    -------
    `32.5 sq ft` or `2.97 m²`. Half of the last decimal goes away from zero.
    """
    if nm2 < 0:
        return _negative(write_area(-nm2, style))
    square, decimals, name = (METRE**2, 2, "m²") if style.system is System.METRIC else (FOOT**2, 1, "sq ft")
    scale: int = 10**decimals
    whole, rest = divmod((2 * scale * nm2 + square) // (2 * square), scale)
    return f"{whole}.{rest:0{decimals}d} {name}"


def _negative(text: str) -> str:
    return f"-{text}" if any(digit in text for digit in "123456789") else text


def _write_millimetres(nm: Nm) -> str:
    whole, rest = divmod(nm, MILLIMETRE)
    decimals = f".{rest:06d}".rstrip("0").rstrip(".")
    return f"{whole}{decimals} mm"


def _write_feet(nm: Nm) -> str:
    feet, rest = divmod(nm, FOOT)
    if not feet:
        return _write_inches(rest)
    nought = "0-" if 0 < rest < INCH else ""  # 4' 0-5/8": nobody asks whether the inches were forgotten
    return f"{feet}' {nought}{_write_inches(rest)}"


def _write_inches(nm: Nm) -> str:
    """Write a whole number of 64ths, its fraction in lowest terms."""
    inches, rest = divmod(nm, INCH)
    top, bottom = rest // SIXTY_FOURTH, 64
    while top and top % 2 == 0:
        top, bottom = top // 2, bottom // 2
    if not top:
        return f'{inches}"'
    return f'{inches}-{top}/{bottom}"' if inches else f'{top}/{bottom}"'
