"""What the tally comes to while boards are still being measured, and how far they reach on the surfaces."""

from plankwright.measure import write_area, write_length
from plankwright.workshop.jobs.count_courses import count_courses, tell_count
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.judge_tally import judge_tally
from plankwright.workshop.ports import DefinitionReading
from plankwright.workshop.wording import listed_at_most

_MOST_NAMED = 6


def tell_totals(kept: KeptJob, reading: DefinitionReading) -> tuple[str, ...]:
    """Say what the boards add up to, as soon as there is one.

    Parameters
    ----------
    kept
        The job.
    reading
        What its definition says.
    """
    if not kept.boards:
        return ()
    tape = reading.tape
    judged = judge_tally(kept.boards, reading.rules, tape)
    pile, useless = judged.pile, judged.useless
    usable, face = write_area(pile.usable_nm2, tape), write_area(pile.face_nm2, tape)
    boards = "1 board" if pile.boards == 1 else f"{pile.boards} boards"
    verb = "gives" if len(useless) == 1 else "give"
    return (
        f"{boards}, {write_length(pile.length_nm, tape)} end to end.",
        f"After trims and flaws, {usable} of {face} can be hung ({100 * pile.recovery:.0f} %).",
        *(
            (f"{listed_at_most(useless, _MOST_NAMED)} {verb} nothing long and wide enough to be hung.",)
            if useless
            else ()
        ),
    )


def tell_reach(kept: KeptJob, reading: DefinitionReading) -> tuple[str, ...]:
    """Say how far the boards reach on the surfaces, at a quick look; it takes up to a second.

    Parameters
    ----------
    kept
        The job.
    reading
        What its definition says, read with its boards.

    Returns
    -------
    tuple of str
        First the answer, or why there is none, then what it is worth.
    """
    if not kept.boards:
        return ("Measure the first board, and this counts along.",)
    if not kept.definition.get("surface"):
        return ("There is no surface to compare with yet: measure one, and this counts its courses.",)
    if kept.begun:
        return ("Boards are cut or hang already: the layout says how far the rest reaches.",)
    if reading.problems:
        return (
            "What is said of the surfaces or the rules will not do yet, so nothing is compared: look there.",
        )
    job = reading.job
    return tell_count(count_courses(job), job.tape)
