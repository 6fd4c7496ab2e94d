"""The surfaces: what is to be covered, in their order, and where courses run round corners."""

from collections.abc import Callable

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.web.filled_form import FilledForm
from plankwright.web.forms import flat, nested
from plankwright.web.mishaps import sentences_of, status_of
from plankwright.web.screens import surface
from plankwright.web.screens.surface import place_of
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.kept import KeptJob, NotThereError
from plankwright.workshop.jobs.link_surfaces import (
    as_groups,
    groups_filled_in,
    link_surfaces,
    links_of,
    may_be_linked,
)
from plankwright.workshop.jobs.measure_surfaces import (
    ANOTHER_JOB,
    raise_surface,
    surface_at,
    surfaces_of,
    take_out_surface,
)
from plankwright.workshop.jobs.preview_surface import draw_surface, surfaces_seen
from plankwright.workshop.tell_surface import tell_surface

_TAKEN_OUT = ("surface ", " taken out")
"""The step in words, before and after the name of the surface."""


def show_surfaces(visit: Visit) -> Response:
    """Show every surface, in their order."""
    return _show(visit)


def draw(visit: Visit) -> Response:
    """Draw a surface small."""
    place = place_of(str(visit.request.path_params["place"]))
    surface_at(visit.job, place)
    seen, tape = surfaces_seen(visit.job, visit.desk.bench.files)[place]
    return Response(draw_surface(seen, tape), media_type="image/svg+xml")


def raise_one(visit: Visit) -> Response:
    """Make a surface more important."""
    place, files = place_of(str(visit.request.path_params["place"])), visit.desk.bench.files
    return _change(
        visit,
        f"surface {_name(visit, place)} made more important",
        lambda kept: raise_surface(kept, files, place, visit.text("seen")),
    )


def take_out(visit: Visit) -> Response:
    """Take a surface out."""
    place, files = place_of(str(visit.request.path_params["place"])), visit.desk.bench.files
    return _change(
        visit,
        f"{_TAKEN_OUT[0]}{_name(visit, place)}{_TAKEN_OUT[1]}",
        lambda kept: take_out_surface(kept, files, place, visit.text("seen")),
        then="surfaces?out=1",
    )


def link(visit: Visit) -> Response:
    """Say round which corners courses run."""
    given = {name: text for name, text in visit.fields() if name not in {"seen", "key"}}
    groups, files = groups_filled_in(nested(given.items())), visit.desk.bench.files
    return _change(
        visit,
        "courses taken round corners" if groups else "courses left to end at every corner",
        lambda kept: link_surfaces(kept, files, groups, visit.text("seen")),
        given,
    )


def _change(
    visit: Visit,
    what: str,
    edit: Callable[[KeptJob], KeptJob],
    given: dict[str, str] | None = None,
    then: str = "surfaces",
) -> Response:
    """Take a step, or show the list again with why not."""
    try:
        visit.change(what, edit)
    except NotThereError:
        raise
    except PlankwrightError as trouble:
        return _show(visit, sentences_of(trouble), status=status_of(trouble), given=given)
    return visit.go_to_job(then)


def _show(
    visit: Visit, problems: list[str] | None = None, *, status: int = 200, given: dict[str, str] | None = None
) -> Response:
    job = visit.desk.store.job(visit.job_id)
    seen = surfaces_seen(job, visit.desk.bench.files)
    links = links_of(job.definition)
    return visit.show(
        "surfaces.html",
        status=status,
        job=job,
        problems=problems or [],
        just_out=_just_out(visit),
        another_job=ANOTHER_JOB,
        surfaces=[
            (table, tell_surface(one, tape))
            for table, (one, tape) in zip(surfaces_of(job.definition), seen, strict=True)
        ],
        links=links,
        walls=[(name, name) for name in may_be_linked([one for one, _ in seen])],
        form=FilledForm(given if given is not None else flat({"linked": as_groups(links)})),
    )


def _just_out(visit: Visit) -> str:
    """Name the surface that was taken out in the last step, on the page that follows it; else nothing."""
    last = next(iter(visit.desk.store.changes(visit.job_id, 1)), None)
    before, after = _TAKEN_OUT
    if not visit.asked("out") or last is None or not last.what.startswith(before):
        return ""
    return last.what[len(before) :].removesuffix(after) if last.what.endswith(after) else ""


def _name(visit: Visit, place: int) -> str:
    return str(surface_at(visit.job, place).get("id"))


ROUTES: list[Route] = [
    page("/jobs/{job_id}/surfaces", show_surfaces),
    page("/jobs/{job_id}/surfaces/links", link, "POST"),
    *surface.ROUTES,
    page("/jobs/{job_id}/surfaces/{place}/drawing", draw),
    page("/jobs/{job_id}/surfaces/{place}/up", raise_one, "POST"),
    page("/jobs/{job_id}/surfaces/{place}/out", take_out, "POST"),
]
