"""Layouts as JSON: written so that it reads back exactly and the same layout is always the same text."""

import json
from pathlib import Path
from typing import Any, NoReturn

from pydantic import ValidationError

from plankwright.errors import BadInputError
from plankwright.files.disk import read_bytes
from plankwright.files.job_document import Units
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
from plankwright.files.notation import Notation
from plankwright.files.report import Report, Where
from plankwright.files.sentences import tell
from plankwright.files.sound_part import Raw
from plankwright.measure import Nm, System, TapeStyle, write_exact
from plankwright.model import Bound, Course, Layout, Piece, Rectangle, Score, SurfaceLayout

_WIDTH = 110
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
    return _laid_out(written) + "\n"


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
    try:
        text = read_bytes(file).decode("utf-8-sig")
    except UnicodeDecodeError:
        report = Report(file.name, _place)
        report.refuse((), "the file is not UTF-8 text: save it as JSON in UTF-8")
        raise BadInputError(report.problems) from None
    return layout_from_json(text, file.name)


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
    report = Report(file, _place)
    try:
        raw = json.loads(text, object_pairs_hook=_each_key_once, parse_constant=_no_number)
        document = LayoutDocument.model_validate(raw, context=_notation(raw))
    except ValidationError as trouble:
        tell(trouble, LayoutDocument, report)
    except json.JSONDecodeError as trouble:
        report.refuse((trouble.lineno,), f"cannot be read as JSON from here on: {trouble.msg.lower()}")
    except RecursionError:
        report.refuse((), "brackets are nested too deeply to be read")
    except ValueError as trouble:
        report.refuse((), f"cannot be read as JSON: {trouble}")
    else:
        return _layout(document)
    raise BadInputError(report.problems)


def _place(where: Where) -> tuple[str, int | None]:
    """Write a path as JSON tools do; a number alone is a line."""
    if where and isinstance(where[0], int):
        return f"line {where[0]}", where[0]
    return "".join(f"[{part}]" if isinstance(part, int) else f".{part}" for part in where).removeprefix(
        "."
    ), None


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    given = dict(pairs)
    if len(given) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise ValueError(f"the key {twice} stands twice in one object")
    return given


def _no_number(text: str) -> NoReturn:
    raise ValueError(f"{text} is not a number")


def _notation(raw: object) -> Notation:
    written = raw.get("units") if isinstance(raw, dict) else None
    return Notation(unit=next((units.unit for units in Units if units.value == written), None))


def _surface_written(surface: SurfaceLayout) -> Raw:
    score, bound = surface.score, surface.bound
    return {
        "surface": surface.surface_id,
        "courses": list(map(_course_written, surface.courses)),
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


def _course_written(course: Course) -> Raw:
    return {
        "number": course.number,
        "from": _mm(course.from_nm),
        "to": _mm(course.to_nm),
        "pieces": list(map(_piece_written, course.pieces)),
    }


def _piece_written(piece: Piece) -> Raw:
    return {
        "label": piece.label,
        "board": piece.board_id,
        "place": _box_written(piece.place),
        "along": [_mm(piece.along_from_nm), _mm(piece.along_to_nm)],
        "across": [_mm(piece.across_from_nm), _mm(piece.across_to_nm)],
        "face": piece.face.value,
        "turned": piece.turned,
        "near": piece.near.value,
        "far": piece.far.value,
        "shim": _mm(piece.shim_nm),
        "nails": [[_mm(x), _mm(y)] for x, y in piece.nails],
    }


def _box_written(box: Rectangle) -> Raw:
    return {"left": _mm(box.left), "bottom": _mm(box.bottom), "right": _mm(box.right), "top": _mm(box.top)}


def _mm(nm: Nm) -> str:
    return write_exact(nm, _METRIC)


def _laid_out(value: object, indent: int = 0) -> str:
    """Write a value on one line where it fits, else an entry a line."""
    line = json.dumps(value, ensure_ascii=False)
    if not isinstance(value, dict | list) or len(line) + indent <= _WIDTH:
        return line
    step = indent + 2
    if isinstance(value, dict):
        entries = [f"{json.dumps(key)}: {_laid_out(inner, step)}" for key, inner in value.items()]
    else:
        entries = [_laid_out(inner, step) for inner in value]
    begin, end = "{}" if isinstance(value, dict) else "[]"
    lines = ",\n".join(" " * step + entry for entry in entries)
    return f"{begin}\n{lines}\n{' ' * indent}{end}"


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
        courses=tuple(map(_course, document.courses)),
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


def _course(document: CourseDocument) -> Course:
    return Course(
        number=document.number,
        from_nm=document.from_nm,
        to_nm=document.to_nm,
        pieces=tuple(map(_piece, document.pieces)),
    )


def _piece(document: PieceDocument) -> Piece:
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
