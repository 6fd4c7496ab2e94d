"""Measures in messages."""

from plankwright.measure import MILLIMETRE, SIXTY_FOURTH, Nm, System, TapeStyle, write_exact, write_length


def tell(tape: TapeStyle, *measures: float) -> tuple[str, ...]:
    """Write the measures of one message so that unequal ones also read unequal.

    Parameters
    ----------
    tape
        The tape of the job.
    measures
        What the message compares. [nm]

    Returns
    -------
    tuple[str, ...]
        As read off the tape, but 1/32" and the like in full; all in full where they would read alike.
    """
    whole = tuple(round(measure) for measure in measures)
    read = tuple(_write(measure, tape) for measure in whole)
    if len(set(read)) == len(set(whole)):
        return read
    return tuple(write_exact(measure, tape) for measure in whole)


def _write(measure: Nm, tape: TapeStyle) -> str:
    """Write what stands on the finest tape of its kind in full, and anything else to the nearest mark."""
    finest = MILLIMETRE // 2 if tape.system is System.METRIC else SIXTY_FOURTH
    return write_exact(measure, tape) if measure % finest == 0 else write_length(measure, tape)
