"""Measures and counts in messages."""

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


def counted(count: int, noun: str) -> str:
    """Say how many there are of something.

    Parameters
    ----------
    count
        How many.
    noun
        In the singular; its plural takes an s.

    Returns
    -------
    str
        Such as "1 stud" or "no studs".
    """
    return f"{count or 'no'} {noun}{'' if count == 1 else 's'}"


def _write(measure: Nm, tape: TapeStyle) -> str:
    """Write what stands on the finest tape of its kind in full, and anything else to the nearest mark."""
    finest = MILLIMETRE // 2 if tape.system is System.METRIC else SIXTY_FOURTH
    return write_exact(measure, tape) if measure % finest == 0 else write_length(measure, tape)
