"""One piece of the layout: its board with its cuts, its place, and what one would have otherwise."""

from collections.abc import Sequence
from functools import partial
from urllib.parse import quote

from starlette.responses import Response

from plankwright.web.screens.layout_page import number_of
from plankwright.web.visit import Visit, job_url
from plankwright.workshop.jobs.kept import NotThereError
from plankwright.workshop.jobs.see_layout import faults_now, standing_of
from plankwright.workshop.jobs.see_piece import see_piece
from plankwright.workshop.jobs.see_wishes import asked_of, swap_choices


def show_piece(visit: Visit) -> Response:
    """Show a piece of the layout that is worked by."""
    return piece_page(visit, *piece_named(visit))


def piece_page(
    visit: Visit, place: int, label: str, *, status: int = 200, problems: Sequence[str] = ()
) -> Response:
    """Show a piece.

    Parameters
    ----------
    visit
        What was asked for.
    place, label
        The place of its surface in the layout that is worked by, and what is written on it.
    status
        Of the answer.
    problems
        Why something was not done.

    Raises
    ------
    NotThereError
        If there is no layout, or no such piece in it.
    BadInputError
        If what was measured is no job any more.
    """
    if visit.job.layout_id is None:
        raise NotThereError("There is no layout of this job yet: have it laid out first.")
    layout = visit.desk.store.layout(visit.job_id, visit.job.layout_id).layout
    standing, job = standing_of(visit.job), visit.reading.job
    faults = faults_now(job, layout, standing)
    seen = see_piece(job, layout, standing, place, label, fits=not faults)
    open_to_wishes = not faults and not seen.state
    return visit.show(
        "layout_piece.html",
        status=status,
        problems=list(problems),
        seen=seen,
        faults=faults,
        asked=asked_of(job, layout, standing, visit.job.wishes),
        swaps=swap_choices(job, layout, standing, place, label) if open_to_wishes else (),
        open_to_wishes=open_to_wishes,
        piece_url=partial(piece_url, visit.job_id),
    )


def piece_url(job_id: str, surface: int, label: str, screen: str = "pieces") -> str:
    """Give the address of a piece, by the place of its surface in the layout and by its label."""
    return job_url(job_id, f"layout/{screen}/{surface}/{quote(label, safe='')}")


def piece_named(visit: Visit) -> tuple[int, str]:
    """Give the place of the surface and the label that the address names; no surface has the place -1."""
    params = visit.request.path_params
    return number_of(str(params["place"])), str(params["label"])
