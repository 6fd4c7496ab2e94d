"""Layouts as JSON: written so that it reads back exactly and the same layout is always the same text."""

from pathlib import Path

from plankwright.files.json_text import document_from, document_in, laid_out
from plankwright.files.layout_document import (
    FORMAT,
    VERSION,
    BoxDocument,
    CourseDocument,
    LayoutDocument,
    PieceDocument,
    SurfaceLayoutDocument,
    write_area_exact,
)
from plankwright.files.sound_part import Raw
from plankwright.measure import Nm, System, TapeStyle, write_exact
from plankwright.model import Bound, Course, Layout, Piece, Rectangle, Score, SurfaceLayout

_METRIC = TapeStyle(system=System.METRIC)


def layout_to_json(layout: Layout) -> str:
    """Write a layout as JSON.

    Parameters
    ----------
    layout
        The layout.

    Returns
    -------
    str
        The same text for the same layout; every length in millimetres, exact to the nanometre.
    """
    written = {
        "format": FORMAT,
        "version": VERSION,
        "job": layout.job_name,
        "seed": layout.seed,
        "effort": layout.effort,
        "surfaces": list(map(_surface_written, layout.surfaces)),
    }
    return laid_out(written)


def read_layout(file: Path) -> Layout:
    """Read a layout file, whoever made it.

    Parameters
    ----------
    file
        The file.

    Returns
    -------
    Layout
        What it says; whether that is right is for the checker to judge.

    Raises
    ------
    BadInputError
        With every problem of the file.
    FileTroubleError
        If it is missing or cannot be read.
    """
    return _layout(document_in(file, LayoutDocument))


def layout_from_json(text: str, file: str = "layout") -> Layout:
    """Read a layout from JSON.

    Parameters
    ----------
    text
        The JSON.
    file
        Name of the file as the user knows it.

    Returns
    -------
    Layout
        What it says; whether that is right is for the checker to judge.

    Raises
    ------
    BadInputError
        With every problem of the text.
    """
    return _layout(document_from(text, file, LayoutDocument))


def _surface_written(surface: SurfaceLayout) -> Raw:
    score, bound = surface.score, surface.bound
    return {
        "surface": surface.surface_id,
        "courses": list(map(course_written, surface.courses)),
        "bare": list(map(_box_written, surface.bare)),
        "score": {
            "bare": write_area_exact(score.bare_nm2),
            "joints_in_sight": score.joints_in_sight,
            "wood_spent": write_area_exact(score.wood_spent_nm2),
            "cuts": score.cuts,
        },
        "bound": {
            "bare": write_area_exact(bound.bare_nm2),
            "joints_in_sight": bound.joints_in_sight,
            "wood_spent": write_area_exact(bound.wood_spent_nm2),
        },
    }


def course_written(course: Course) -> Raw:
    """Give a course as it is written."""
    return {
        "number": course.number,
        "from": exact_mm(course.from_nm),
        "to": exact_mm(course.to_nm),
        "pieces": list(map(piece_written, course.pieces)),
    }


def piece_written(piece: Piece) -> Raw:
    """Give a piece as it is written."""
    return {
        "label": piece.label,
        "board": piece.board_id,
        "place": _box_written(piece.place),
        "along": [exact_mm(piece.along_from_nm), exact_mm(piece.along_to_nm)],
        "across": [exact_mm(piece.across_from_nm), exact_mm(piece.across_to_nm)],
        "face": piece.face.value,
        "turned": piece.turned,
        "near": piece.near.value,
        "far": piece.far.value,
        "shim": exact_mm(piece.shim_nm),
        "nails": [[exact_mm(x), exact_mm(y)] for x, y in piece.nails],
    }


def _box_written(box: Rectangle) -> Raw:
    return {
        "left": exact_mm(box.left),
        "bottom": exact_mm(box.bottom),
        "right": exact_mm(box.right),
        "top": exact_mm(box.top),
    }


def exact_mm(nm: Nm) -> str:
    """Give a length as it is written: in millimetres, exact to the nanometre."""
    return write_exact(nm, _METRIC)


def _layout(document: LayoutDocument) -> Layout:
    return Layout(
        job_name=document.job,
        surfaces=tuple(map(_surface, document.surfaces)),
        seed=document.seed,
        effort=document.effort,
    )


def _surface(document: SurfaceLayoutDocument) -> SurfaceLayout:
    score, bound = document.score, document.bound
    return SurfaceLayout(
        surface_id=document.surface,
        courses=tuple(map(course_of, document.courses)),
        bare=tuple(map(_box, document.bare)),
        score=Score(
            bare_nm2=score.bare,
            joints_in_sight=score.joints_in_sight,
            wood_spent_nm2=score.wood_spent,
            cuts=score.cuts,
        ),
        bound=Bound(
            bare_nm2=bound.bare, joints_in_sight=bound.joints_in_sight, wood_spent_nm2=bound.wood_spent
        ),
    )


def course_of(document: CourseDocument) -> Course:
    """Give the course that a document describes."""
    return Course(
        number=document.number,
        from_nm=document.from_nm,
        to_nm=document.to_nm,
        pieces=tuple(map(piece_of, document.pieces)),
    )


def piece_of(document: PieceDocument) -> Piece:
    """Give the piece that a document describes."""
    return Piece(
        label=document.label,
        board_id=document.board,
        place=_box(document.place),
        along_from_nm=document.along[0],
        along_to_nm=document.along[1],
        across_from_nm=document.across[0],
        across_to_nm=document.across[1],
        face=document.face,
        turned=document.turned,
        near=document.near,
        far=document.far,
        shim_nm=document.shim,
        nails=document.nails,
    )


def _box(document: BoxDocument) -> Rectangle:
    return Rectangle(left=document.left, bottom=document.bottom, right=document.right, top=document.top)
