"""Hanging, a course at a time."""

from collections.abc import Sequence

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.measure import write_length
from plankwright.model import MarkKind
from plankwright.web.screens.mishap_marks import mishap_routes
from plankwright.web.screens.working import (
    lay_anew,
    mark,
    pieces_named,
    put_news_aside,
    to_mark_on,
    to_work_by,
    told_first,
    told_of,
)
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.at_work import AtWork
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.mark_kept import happened_to
from plankwright.workshop.jobs.next_step import SurfaceStep, course_after, course_numbered
from plankwright.workshop.mark_work import Happened, Measured

_LONGEST_NUMBER = 6


def show_course(visit: Visit) -> Response:
    """Show one course: what hangs where, piece by piece."""
    at = to_work_by(visit)
    if isinstance(at, Response):
        return at
    return _show(visit, at, visit.asked("surface"), visit.asked("course"))


def mark_piece(visit: Visit) -> Response:
    """Mark pieces as hung."""
    return _mark_pieces(visit, MarkKind.HUNG)


def mark_down(visit: Visit) -> Response:
    """Mark pieces as taken down again, whole."""
    return _mark_pieces(visit, MarkKind.DOWN)


def mark_course(visit: Visit) -> Response:
    """Mark a whole course as hung, where it was planned or where its edge was measured."""
    at = to_mark_on(visit)
    surface_id, number, edge = (visit.text(name) for name in ("surface", "course", "edge"))
    try:
        if not surface_id or not _is_number(number):
            raise RefusedError("No course was named: mark it at the course.")
        measured = Measured(edge_nm=visit.reading.read_length(edge)) if edge else None
        happened = Happened(
            kind=MarkKind.HUNG, names=(str(int(number)),), surface_id=surface_id, measured=measured
        )
        return mark(visit, [happened], **_after(at, surface_id, number))
    except PlankwrightError as trouble:
        return _show(visit, at, surface_id, number, edge=edge, problems=told_of(at, trouble))


def _mark_pieces(visit: Visit, kind: MarkKind) -> Response:
    at = to_mark_on(visit)
    surface_id, number = visit.text("surface"), visit.text("course")
    try:
        keys = [piece.key for piece in pieces_named(visit, at, ["piece"])]
        if not keys:
            raise RefusedError("No piece was named: mark it at its course.")
        go_on = {"surface": surface_id, "course": number}
        if kind is MarkKind.HUNG and not at.faults:
            course = course_numbered(_surface(at, surface_id), _number(number))
            if course is not None and all(step.key in keys for step in course.to_hang):
                go_on = _after(at, surface_id, number)
        return mark(visit, happened_to(kind, keys), **go_on)
    except PlankwrightError as trouble:
        return _show(visit, at, surface_id, number, problems=told_of(at, trouble))


def _after(at: AtWork, surface_id: str, number: str) -> dict[str, str]:
    """Say where one goes on once a course hangs: at the next one, or at the first that is left."""
    surface = None if at.faults else _surface(at, surface_id)
    after = surface and course_after(surface, _number(number) or 0)
    return {"surface": surface_id, "course": str(after.number)} if after else {}


def _show(
    visit: Visit,
    at: AtWork,
    surface_id: str,
    number: str,
    *,
    edge: str = "",
    problems: Sequence[str] = (),
) -> Response:
    surface = _surface(at, surface_id)
    course = course_numbered(surface, _number(number))
    return visit.show(
        "hanging.html",
        status=422 if problems else 200,
        **told_first(visit, at),
        surfaces=at.surfaces,
        surface=surface,
        course=course,
        planned=write_length(course.edge_nm, at.job.tape) if course else "",
        edge=edge,
        problems=problems,
        other_surface=next((one for one in at.surfaces if not one.done and one.id != surface.id), None),
    )


def _surface(at: AtWork, surface_id: str) -> SurfaceStep:
    """Give a surface by its id; without one, the first that is not done."""
    asked = (surface for surface in at.surfaces if surface.id == surface_id)
    left = (surface for surface in at.surfaces if not surface.done)
    return next(asked, next(left, at.surfaces[0]))


def _number(text: str) -> int | None:
    return int(text) if _is_number(text) else None


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdecimal() and len(text) <= _LONGEST_NUMBER


ROUTES: list[Route] = [
    page("/jobs/{job_id}/hanging", show_course),
    page("/jobs/{job_id}/hanging/hung", mark_piece, "POST"),
    page("/jobs/{job_id}/hanging/course", mark_course, "POST"),
    page("/jobs/{job_id}/hanging/down", mark_down, "POST"),
    page("/jobs/{job_id}/hanging/anew", lay_anew, "POST"),
    page("/jobs/{job_id}/hanging/read", put_news_aside, "POST"),
    *mishap_routes("hanging"),
]
