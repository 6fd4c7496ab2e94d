"""Draw the map of a surface: on one sheet to look at and print, and at full size for a drawing program."""

from collections.abc import Mapping
from dataclasses import replace

from plankwright.draw.dxf import write_dxf
from plankwright.draw.full_size import wall_at_full_size
from plankwright.draw.svg import write_svg
from plankwright.draw.wall import wall_map
from plankwright.layout.again import links_kept
from plankwright.layout.done import done_on
from plankwright.model import NOTHING_DONE, Job, Standing, SurfaceLayout
from plankwright.workshop.paper_size import PaperSize, page_of


def draw_map(
    job: Job,
    laid: SurfaceLayout,
    paper: PaperSize | None = None,
    *,
    standing: Standing = NOTHING_DONE,
    links: Mapping[str, str] | None = None,
    as_boards_look: bool = False,
) -> str:
    """Draw the map of one surface.

    Parameters
    ----------
    job
        The job.
    laid
        The layout of one of its surfaces.
    paper
        The sheet to fit it on; the one that goes with the job's tape when left out.
    standing
        How far the job has come: what hangs and what is cut is marked.
    links
        For each label where a tap on the piece leads; pieces that are missing here lead nowhere.
    as_boards_look
        Whether to show the tones and the lots of the boards instead of what is behind them.

    Returns
    -------
    str
        An SVG file.
    """
    job = replace(job, linked=links_kept(job, standing))
    drawn = wall_map(
        job,
        laid,
        page_of(job.tape, paper),
        links=links,
        done=done_on(job, laid, standing),
        as_boards_look=as_boards_look,
    )
    return write_svg(drawn)


def draw_full_size(job: Job, laid: SurfaceLayout, *, standing: Standing = NOTHING_DONE) -> str:
    """Draw one surface at full size, in the units of the job's tape; parameters as in `draw_map`.

    Returns
    -------
    str
        A DXF file, with a layer for each sort of thing.
    """
    return write_dxf(wall_at_full_size(job, laid, done=done_on(job, laid, standing)), job.tape.system)
