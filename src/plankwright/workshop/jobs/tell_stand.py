"""How far a job has come, as a person would say it: in a sentence, stage by stage, and what to do next."""

from dataclasses import dataclass

from plankwright.errors import Problem
from plankwright.layout.result import Verdict
from plankwright.workshop.jobs.kept import KeptSearch, Made, SearchState
from plankwright.workshop.jobs.leaf_words import on_screen
from plankwright.workshop.jobs.stand_of_job import StandOfJob
from plankwright.workshop.jobs.tell_faults import plain_faults
from plankwright.workshop.wording import capital, counted, listed, number

_MOST_NAMED = 4
"""How many surfaces are named before they are only counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """A stage of a job.

    Parameters
    ----------
    screen
        Where it is worked at.
    what
        In a word.
    told
        How it stands with it.
    done
        Whether nothing more is to be done there.
    """

    screen: str
    what: str
    told: str
    done: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Something to do.

    Parameters
    ----------
    screen
        Where it is done.
    what
        In a few words.
    search
        What is to be laid out, where a search is begun at once.
    """

    screen: str
    what: str
    search: Made | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """Something that needs a look.

    Parameters
    ----------
    screen
        Where one looks.
    told
        In a sentence.
    """

    screen: str
    told: str


def tell_stand(stand: StandOfJob) -> tuple[str, ...]:
    """Say how far a job has come: a sentence that answers, then what belongs to it."""
    if stand.layout is None:
        return (_tell_measured(stand), *_tell_search(stand))
    if stand.faults:
        return (
            "What is laid out fits no longer: something was measured or marked otherwise since.",
            *_tell_search(stand),
        )
    if stand.pieces and stand.hung == stand.pieces:
        return (f"All {counted(stand.pieces, 'piece')} hang. The job is done.",)
    answer = stand.layout.answer
    headline = "A layout came along with the job." if answer is None else answer.headline
    return (headline, *((_tell_progress(stand),) if stand.begun else ()), *_tell_search(stand))


def next_steps(stand: StandOfJob) -> tuple[Step, ...]:
    """Give what to do next; the first is what most would do."""
    if stand.problems:
        return (Step(screen=_screen(stand.problems[0]), what="Mend what is wrong"),)
    measuring = (
        *((Step(screen="tally", what="Tally the boards"),) if not stand.boards else ()),
        *((Step(screen="surfaces", what="Measure a surface"),) if not stand.surfaces else ()),
    )
    return measuring or _steps_when_measured(stand)


def road(stand: StandOfJob) -> tuple[Stage, ...]:
    """Give the stages of a job in their order."""
    pieces, done = stand.pieces, stand.pieces if not stand.faults else -1
    return (
        Stage(
            screen="tally",
            what="Tally",
            told=counted(stand.boards, "board") if stand.boards else "none yet",
            done=bool(stand.boards),
        ),
        Stage(
            screen="surfaces",
            what="Surfaces",
            told=_tell_surfaces(stand.surfaces),
            done=bool(stand.surfaces),
        ),
        Stage(
            screen="layout",
            what="Layout",
            told=_tell_layout(stand),
            done=stand.layout is not None and not stand.faults,
        ),
        Stage(
            screen="cutting",
            what="Cutting",
            told=f"{stand.cut} of {pieces} pieces cut" if stand.cut else "nothing yet",
            done=pieces > 0 and stand.cut == done,
        ),
        Stage(
            screen="hanging",
            what="Hanging",
            told=f"{stand.hung} of {pieces} pieces hang" if stand.hung else "nothing yet",
            done=pieces > 0 and stand.hung == done,
        ),
    )


def looks(stand: StandOfJob) -> tuple[tuple[Look, ...], tuple[Look, ...]]:
    """Give what is wrong, and what is only doubtful."""
    wrong = tuple(_look(problem) for problem in stand.problems)
    outdated = tuple(Look(screen="layout", told=fault) for fault in plain_faults(stand.faults))
    return (*wrong, *outdated), tuple(_look(remark) for remark in stand.remarks)


def _steps_when_measured(stand: StandOfJob) -> tuple[Step, ...]:
    """Give what to do next once boards and surfaces are measured."""
    if stand.searching:
        return (Step(screen="search", what="See how far the search is"),)
    if stand.layout is None:
        found = stand.in_vain is not None and stand.in_vain.best is not None
        seen = (Step(screen="search", what="See what the search had found"),) if found else ()
        return (*seen, Step(screen="layout", what="Lay it out"))
    if stand.faults:
        if stand.begun:
            return (Step(screen="layout", what="Lay out what is left anew", search=Made.AGAIN),)
        return (Step(screen="layout#anew", what="Lay it out anew"),)
    return _work_steps(stand)


def _work_steps(stand: StandOfJob) -> tuple[Step, ...]:
    """Give what to do next with a layout that can be worked by."""
    answer = None if stand.layout is None else stand.layout.answer
    if not stand.begun and answer is not None and answer.verdict is Verdict.NOT_ENOUGH:
        return (
            Step(screen="layout", what="See what is missing"),
            Step(screen="tally", what="Tally more boards"),
        )
    if stand.hung == stand.pieces:
        return (Step(screen="left", what="See what is left over"),)
    if not stand.begun:
        return (
            Step(screen="cutting", what="Cut the first boards"),
            Step(screen="layout", what="Look at the layout"),
        )
    hang = Step(screen="hanging", what="Go on hanging" if stand.hung else "Hang the first course")
    if stand.cut == stand.pieces:
        return (hang,)
    cut = Step(screen="cutting", what="Go on cutting")
    return (hang, cut) if stand.cut > stand.hung else (cut, hang)


def _tell_measured(stand: StandOfJob) -> str:
    boards, surfaces = stand.boards, len(stand.surfaces)
    if not boards and not surfaces:
        return "Nothing is measured yet. Begin with the boards or with the wall, whichever is nearer."
    told = f"{counted(boards, 'board')} {'is' if boards == 1 else 'are'} tallied"
    if not surfaces:
        return capital(f"{told}, and it is not measured yet what they are to cover.")
    measured = f"{counted(surfaces, 'surface')} {'is' if surfaces == 1 else 'are'} measured"
    if not boards:
        return capital(f"{measured}, and no board is tallied yet.")
    return capital(f"{told} and {measured}. Nothing is laid out yet.")


def _tell_progress(stand: StandOfJob) -> str:
    some = number(stand.hung) if stand.hung else "none"
    hang = capital(f"{some} of {counted(stand.pieces, 'piece')} {'hangs' if stand.hung == 1 else 'hang'}")
    in_hand = stand.cut - stand.hung
    if not in_hand:
        return f"{hang}."
    return f"{hang}; {number(in_hand)} more {'is' if in_hand == 1 else 'are'} cut."


def _tell_search(stand: StandOfJob) -> tuple[str, ...]:
    search = stand.in_vain
    return () if search is None else (_tell_in_vain(search),)


def _tell_in_vain(search: KeptSearch) -> str:
    if search.state is SearchState.CUT_OFF:
        kept = "the best that it had found is kept" if search.best is not None else "begin it again"
        return f"The last search for a layout was cut off when the app closed: {kept}."
    return f"The last search for a layout came to nothing: {search.trouble}"


def _tell_surfaces(surfaces: tuple[str, ...]) -> str:
    if not surfaces:
        return "none yet"
    return counted(len(surfaces), "surface") if len(surfaces) > _MOST_NAMED else listed(surfaces)


def _tell_layout(stand: StandOfJob) -> str:
    if stand.searching is not None:
        return "a search is under way"
    if stand.layout is None:
        return "none yet"
    if stand.faults:
        return "fits no longer"
    answer = stand.layout.answer
    return "brought along" if answer is None else _VERDICTS[answer.verdict]


_VERDICTS = {
    Verdict.ENOUGH: "enough for all of it",
    Verdict.NOT_ENOUGH: "not enough for all of it",
    Verdict.UNSETTLED: "not settled whether it is enough",
}


def _look(problem: Problem) -> Look:
    what = on_screen(problem.what)
    told = what if what.startswith(problem.place) else f"{problem.place}: {what}"
    return Look(screen=_screen(problem), told=capital(told))


def _screen(problem: Problem) -> str:
    """Give the screen on which something wrong or doubtful is looked at."""
    if problem.place.startswith("surface"):
        return "surfaces"
    return "tally" if problem.place.startswith("board") or problem.file == "the tally" else "rules"
