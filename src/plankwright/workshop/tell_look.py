"""Say in plain words what the eye will mind in a layout, and how its milled boards go together."""

from collections.abc import Iterator

from plankwright.layout.look import Look, look_of, milled_of, narrow_closing_course
from plankwright.measure import CENTIMETRE, FOOT, Nm, System, TapeStyle, round_nearest, round_up, write_length
from plankwright.model import Job, SurfaceLayout
from plankwright.workshop.wording import capital, counted, listed


def tell_look(job: Job, laid: SurfaceLayout) -> tuple[str, ...]:
    """Say how a layout looks, as far as there is anything to say.

    Parameters
    ----------
    job
        The job.
    laid
        The layout of one of its surfaces, which breaks no rule.

    Returns
    -------
    tuple of str
        A sentence each on tones, on what stands out, on a narrow closing course and on milled boards, where
        there are such.
    """
    look, tape = look_of(job, laid), job.tape
    return (
        *_tell_tones(look),
        *_tell_what_stands_out(look, tape),
        *_tell_closing(job, laid),
        *_tell_milled(job, laid, look),
    )


def _tell_tones(look: Look) -> Iterator[str]:
    if look.touching:
        yield f"Boards of one tone touch along {100 * look.clumped // look.touching} % of where tones meet."


def _tell_what_stands_out(look: Look, tape: TapeStyle) -> Iterator[str]:
    found = [
        *((f"{_length(look.blemished, tape)} of blemishes",) if look.blemished else ()),
        *((f"{_length(look.odd, tape)} of boards unlike most",) if look.odd else ()),
        *((f"{counted(look.in_line, 'pair')} of joints in line",) if look.in_line else ()),
        *((f"{counted(look.steps, 'stair')} of three joints",) if look.steps else ()),
    ]
    if found:
        yield f"{capital(listed(found))} in sight."


def _tell_closing(job: Job, laid: SurfaceLayout) -> Iterator[str]:
    closing = narrow_closing_course(job, laid)
    if closing is not None:
        yield (
            f"The closing course is {write_length(closing, job.tape)}, less than half of what most are: "
            "a wider narrowest_course in the rules shares that out, for some more wood."
        )


def _tell_milled(job: Job, laid: SurfaceLayout, look: Look) -> Iterator[str]:
    milled, tape = milled_of(job, laid), job.tape
    if not milled.whole and not milled.narrower_nm:
        return
    told = f"{capital(counted(milled.whole, 'milled piece'))} with the whole face width"
    if milled.narrower_nm:
        ends = milled.narrower_nm[0], milled.narrower_nm[-1]
        least, most = (write_length(round_nearest(each, tape.step_nm), tape) for each in ends)
        by = least if least == most else f"{least} to {most}"
        told += f", {counted(len(milled.narrower_nm), 'piece')} ripped square and {by} narrower"
    seams = [
        *((f"they interlock along {_length(look.fitted, tape)} of seam",) if look.fitted else ()),
        *((f"along {_length(look.loose, tape)} they meet what they do not fit",) if look.loose else ()),
    ]
    yield "; ".join([told, *seams]) + "."


def _length(nm: Nm, tape: TapeStyle) -> str:
    """Write a length that adds up many: in whole feet or decimetres, rounded up."""
    return write_length(round_up(nm, FOOT if tape.system is System.IMPERIAL else 10 * CENTIMETRE), tape)
