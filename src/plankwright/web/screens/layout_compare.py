"""The layouts that were made of a job: when, how, and what each comes to; and two of them side by side."""

from starlette.responses import Response

from plankwright.model import Job
from plankwright.web.screens.layout_page import WHOLE, kept_layout, looked_at, number_of
from plankwright.web.visit import Visit
from plankwright.workshop.jobs.compare_layouts import differences, figure_rows, tell_figures, tell_made
from plankwright.workshop.jobs.kept import KeptLayout, NotThereError
from plankwright.workshop.jobs.see_layout import draw_surface, faults_now, standing_of
from plankwright.workshop.jobs.tally_boards import fingerprint


def show_kept(visit: Visit) -> Response:
    """List the layouts of a job, the newest first."""
    job = visit.reading.job
    rows = [
        {"laid": laid, "made": tell_made(laid), "figures": tell_figures(job, laid.layout)}
        for laid in visit.desk.store.layouts(visit.job_id)
    ]
    return visit.show("layout_kept.html", rows=rows)


def compare(visit: Visit) -> Response:
    """Show two layouts side by side."""
    one, other = (kept_layout(visit, visit.asked(name)) for name in ("one", "other"))
    job, standing = visit.reading.job, standing_of(visit.job)
    pair = [
        {
            "laid": laid,
            "made": tell_made(laid),
            "faults": faults_now(job, laid.layout, standing),
            "maps": _maps(visit, job, laid),
        }
        for laid in (one, other)
    ]
    return visit.show(
        "layout_compare.html",
        pair=pair,
        rows=figure_rows(job, one.layout, other.layout),
        different=differences(job, one.layout, other.layout, standing),
        **looked_at(visit, WHOLE),
    )


def show_map(visit: Visit) -> Response:
    """Give the drawing of a surface of a kept layout as a picture.

    Raises
    ------
    NotThereError
        If the layout has no such surface, or it cannot be drawn any more.
    """
    laid = kept_layout(visit, str(visit.request.path_params["number"]))
    place = number_of(str(visit.request.path_params["place"]))
    surfaces = laid.layout.surfaces
    if not 0 <= place < len(surfaces):
        raise NotThereError("There is no such surface in this layout.")
    drawing = draw_surface(
        visit.reading.job,
        surfaces[place],
        standing_of(visit.job),
        as_boards_look=visit.asked("look") == "boards",
    )
    return picture(drawing)


def picture(drawing: str) -> Response:
    """Give a drawing as a picture; its address changes with it, so that a browser may keep it.

    Raises
    ------
    NotThereError
        If there is none.
    """
    if not drawing:
        raise NotThereError("This cannot be drawn: the surface is not what it was.")
    headers = {"cache-control": "private, max-age=3600"}
    return Response(drawing, media_type="image/svg+xml", headers=headers)


def _maps(visit: Visit, job: Job, laid: KeptLayout) -> list[dict[str, str]]:
    """Give the pictures of a layout, each with an address that is another one when anything is."""
    look = "&look=boards" if visit.asked("look") == "boards" else ""
    mark = fingerprint((job, standing_of(visit.job)))
    return [
        {
            "url": f"/jobs/{visit.job_id}/layout/kept/{laid.id}/maps/{place}.svg?of={mark}{look}",
            "id": surface.surface_id,
        }
        for place, surface in enumerate(laid.layout.surfaces)
    ]
