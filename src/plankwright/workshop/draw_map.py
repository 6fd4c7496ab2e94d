"""Draw the map of a surface: every piece in its place, to scale, on one sheet."""

from plankwright.draw.svg import write_svg
from plankwright.draw.wall import wall_map
from plankwright.model import Job, SurfaceLayout
from plankwright.workshop.paper_size import PaperSize, page_of


def draw_map(job: Job, laid: SurfaceLayout, paper: PaperSize | None = None) -> str:
    """Draw the map of one surface.

    Parameters
    ----------
    job
        The job.
    laid
        The layout of one of its surfaces.
    paper
        The sheet to fit it on; the one that goes with the job's tape when left out.

    Returns
    -------
    str
        An SVG file.
    """
    return write_svg(wall_map(job, laid, page_of(job.tape, paper)))
