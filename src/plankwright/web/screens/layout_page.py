"""The page of a layout: what is missing for one, or the answer, whether it still fits, and the drawings."""

from collections.abc import Mapping, Sequence
from typing import Any

from starlette.responses import Response

from plankwright.errors import Problem
from plankwright.model import Job
from plankwright.web.visit import Visit, job_url
from plankwright.workshop.jobs.ask_for_layout import HOW_LONG, USUAL
from plankwright.workshop.jobs.compare_layouts import tell_made
from plankwright.workshop.jobs.kept import KeptLayout, KeptSearch, SearchState
from plankwright.workshop.jobs.see_layout import SeenLayout, draw_surface, see_layout, standing_of
from plankwright.workshop.jobs.see_wishes import Asked, asked_of

ZOOMS = (0.0, 1.0, 1.5, 2.0, 3.0)
"""How large a drawing is shown; at 0 all of it is seen, and from 1 on it can be read."""

WHOLE, READABLE = 0, 1
"""Which of them is shown first."""

_LONGEST_NUMBER = 15
"""No number of ours is longer. [digits]"""


def layout_page(
    visit: Visit,
    laid: KeptLayout | None = None,
    *,
    status: int = 200,
    problems: Sequence[str] = (),
    given: Mapping[str, str] | None = None,
) -> Response:
    """Show a layout, or what is missing for one.

    Parameters
    ----------
    visit
        What was asked for.
    laid
        The layout; the one that is worked by when left out.
    status
        Of the answer.
    problems
        Why something was not done.
    given
        What was filled in to have another laid out.
    """
    kept, reading = visit.job, visit.reading
    by = None if kept.layout_id is None else visit.desk.store.layout(kept.id, kept.layout_id)
    laid = laid or by
    missing = reading.problems
    job = None if missing else reading.job
    seen = None if laid is None or job is None else see_layout(job, laid, standing_of(kept))
    return visit.show(
        "layout.html",
        status=status,
        problems=list(problems),
        missing=[(_told(problem), screen_of(problem)) for problem in missing],
        laid=laid,
        seen=seen,
        by_it=laid is not None and laid.id == kept.layout_id,
        any_kept=laid is not None or bool(visit.desk.store.layouts(kept.id)),
        made="" if laid is None else tell_made(laid),
        drawings=() if seen is None or job is None else _drawings(visit, job, seen),
        search=_search_to_tell_of(visit, by),
        asked=_asked(visit, job, by),
        **looked_at(visit),
        **asking(given),
    )


def looked_at(visit: Visit, at_first: int = READABLE) -> dict[str, Any]:
    """Give how the drawings are to be shown, as the address says."""
    zoom = number_of(visit.asked("zoom"))
    return {
        "look": "boards" if visit.asked("look") == "boards" else "",
        "zoom": zoom if 0 <= zoom < len(ZOOMS) else at_first,
        "zooms": ZOOMS,
    }


def asking(given: Mapping[str, str] | None = None) -> dict[str, Any]:
    """Give what a form to have something laid out shows."""
    filled = given or {}
    return {
        "how_long": HOW_LONG,
        "effort": filled.get("effort") or USUAL,
        "seed": filled.get("seed", ""),
        "chosen_way": filled.get("made", ""),
    }


def _drawings(visit: Visit, job: Job, seen: SeenLayout) -> tuple[str, ...]:
    """Draw a layout surface by surface; pieces of the one that is worked by can be tapped."""
    standing = standing_of(visit.job)
    by_it = seen.kept.id == visit.job.layout_id
    return tuple(
        draw_surface(
            job,
            laid,
            standing,
            links=job_url(visit.job_id, f"layout/pieces/{place}/") if by_it else "",
            as_boards_look=visit.asked("look") == "boards",
        )
        for place, laid in enumerate(seen.kept.layout.surfaces)
    )


def kept_layout(visit: Visit, number: str) -> KeptLayout:
    """Give a layout of the job by its number, as an address or a form has it.

    Raises
    ------
    NotThereError
        If it is no number, or there is none.
    """
    return visit.desk.store.layout(visit.job_id, number_of(number))


def number_of(text: str) -> int:
    """Read a number as an address has it; -1, which nothing has, where it is none."""
    return int(text) if text.isascii() and text.isdigit() and len(text) <= _LONGEST_NUMBER else -1


def screen_of(problem: Problem) -> str:
    """Give the screen on which a problem is mended."""
    if problem.file == "the tally":
        return "tally"
    about = f"{problem.place} {problem.what}"
    return "surfaces" if "surface" in about or "linked" in about else "rules"


def _asked(visit: Visit, job: Job | None, by: KeptLayout | None) -> Asked:
    """Give what is wished of the layout that is worked by, as far as there is one that can be read."""
    if by is None or job is None:
        return Asked(told=())
    return asked_of(job, by.layout, standing_of(visit.job), visit.job.wishes)


def _told(problem: Problem) -> str:
    what = f"{problem.place}: {problem.what}" if problem.place else problem.what
    return what[:1].upper() + what[1:]


def _search_to_tell_of(visit: Visit, by: KeptLayout | None) -> KeptSearch | None:
    """Give the last search, if it is under way, or came to nothing and nothing was laid out since."""
    search = visit.desk.store.last_search(visit.job_id)
    if search is None or search.state in {SearchState.DONE, SearchState.STOPPED}:
        return None
    over = search.state is not SearchState.RUNNING and by is not None and by.at >= search.begun_at
    return None if over else search
