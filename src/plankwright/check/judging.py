"""Every check, in the order of the codes."""

from collections.abc import Callable, Iterable

from plankwright.check import (
    blemishes,
    boards,
    corners,
    courses,
    cover,
    done,
    joints,
    nails,
    saws,
    score,
    seams,
    slivers,
)
from plankwright.check.case import Case, SurfaceCase, open_surface
from plankwright.check.document import check_document, judged
from plankwright.check.finding import Finding
from plankwright.model import NOTHING_DONE, Job, Layout, Standing

SURFACE_CHECKS: tuple[Callable[[SurfaceCase], Iterable[Finding]], ...] = (
    cover.check_gaps,
    cover.check_overlaps,
    cover.check_outside,
    cover.check_blank_sizes,
    cover.check_declared_bare,
    done.check_hung,
    boards.check_known,
    boards.check_ends,
    boards.check_lost_wood,
    boards.check_widths,
    boards.check_sizes,
    blemishes.check_blemishes,
    courses.check_near_edges,
    courses.check_face_widths,
    courses.check_course_overlaps,
    courses.check_course_widths,
    courses.check_order,
    courses.check_labels,
    courses.check_piece_lengths,
    slivers.check_slivers,
    joints.check_profiles,
    joints.check_thicknesses,
    joints.check_shims,
    joints.check_bearing,
    joints.check_sight,
    joints.check_stagger,
    seams.check_statements,
    seams.check_tongues,
    seams.check_grooves,
    saws.check_angled_cuts,
    nails.check_nails_on_pieces,
    nails.check_nail_edges,
    nails.check_nail_ends,
    nails.check_nails_on_framing,
    nails.check_keep_outs,
    nails.check_nailing,
    score.check_score,
)
"""The rules that one surface is held to by itself."""

LAYOUT_CHECKS: tuple[Callable[[Case], Iterable[Finding]], ...] = (
    corners.check_corners,
    boards.check_kerfs,
    done.check_wood_left,
    done.check_shapes_left,
    boards.check_spares,
    saws.check_cuts,
)
"""The rules that surfaces, and the boards, are held to all together."""


def check_layout(job: Job, layout: Layout, standing: Standing = NOTHING_DONE) -> tuple[Finding, ...]:
    """Judge a layout by every rule, from the job and the layout alone.

    Parameters
    ----------
    job, layout
        The job, and any layout: one that makes no sense is found out, not choked on.
    standing
        How far the job has come: what hangs is a fact, and only what is left of the boards can be cut.

    Returns
    -------
    tuple[Finding, ...]
        What was found: first of the layout as a whole, then surface by surface, last of corners and the pile.
    """
    surfaces = tuple(open_surface(job, surface, standing) for surface in judged(job, layout))
    case = Case(job=job, layout=layout, surfaces=surfaces, standing=standing)
    return (
        *check_document(job, layout),
        *(finding for surface in surfaces for check in SURFACE_CHECKS for finding in check(surface)),
        *(finding for check in LAYOUT_CHECKS for finding in check(case)),
    )
