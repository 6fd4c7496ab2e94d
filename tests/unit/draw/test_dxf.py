"""The map at full size as DXF, read back as a drawing program reads it."""

import io
from typing import Any, cast

import ezdxf
import pytest
from ezdxf import bbox, filemanagement
from ezdxf.document import Drawing

from builders import TAPE, board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.draw.dxf import layer_of, write_dxf
from plankwright.draw.full_size import wall_at_full_size
from plankwright.draw.scene import Circle, Line, Polygon, Rect, Scene, Span, Text
from plankwright.draw.styles import Style
from plankwright.measure import System
from porch import porch_job, porch_layout

PORCH = wall_at_full_size(porch_job(), porch_layout().surfaces[0])


def read(text: str) -> Drawing:
    """Read a file back; a drawing program finds nothing to mend in it."""
    document = filemanagement.read(io.StringIO(text))
    audit = document.audit()
    assert (audit.errors, audit.fixes) == ([], [])
    assert isinstance(document, Drawing)
    return document


@pytest.mark.parametrize(("system", "unit", "size"), [(System.IMPERIAL, 1, 1.0), (System.METRIC, 4, 25.4)])
def test_it_is_as_large_as_the_wall(system: System, unit: int, size: float) -> None:
    """Eight feet by three, in inches or in millimetres, and the file says in which."""
    document = read(write_dxf(PORCH, system))
    assert document.header["$INSUNITS"] == unit
    outline = document.modelspace().query(f'LWPOLYLINE[layer=="{layer_of(Style.OUTLINE)}"]')
    extent = bbox.extents(outline)
    assert (extent.extmin.x, extent.extmin.y) == (0.0, 0.0)
    assert extent.extmax.x == pytest.approx(96 * size, abs=1e-5)
    assert extent.extmax.y == pytest.approx(36 * size, abs=1e-5)


def test_every_piece_stands_where_it_hangs() -> None:
    """Closed outlines on a layer of their own, as many as pieces, within the wall; each with its name."""
    space = read(write_dxf(PORCH, System.IMPERIAL)).modelspace()
    pieces = list(space.query('LWPOLYLINE[layer=="PIECE"]'))
    laid = porch_layout().pieces
    assert len(pieces) == len(laid)
    assert all(outline.closed for outline in pieces)
    for outline, piece_laid in zip(pieces, laid, strict=True):
        xs = [x for x, *_ in outline.get_points()]
        assert min(xs) >= piece_laid.place.left / nm(1) - 1e-5
        assert max(xs) <= piece_laid.place.right / nm(1) + 1e-5
    texts = [text.dxf.text for text in space.query('TEXT[layer=="TEXT"]')]
    assert texts == [f"{one.label} {one.board_id}" for one in laid]


def test_what_is_behind_and_in_the_wall_has_its_layers() -> None:
    """Framing, keep-outs, boxes, what a fixture hides, nails, joints."""
    document = read(write_dxf(PORCH, System.IMPERIAL))
    used = {entity.dxf.layer for entity in document.modelspace()}
    assert {
        "FRAMING",
        "FRAMING-CENTRE",
        "KEEP-OUT",
        "CUT-OUT",
        "CONCEALED",
        "NAIL",
        "PIECE",
        "OUTLINE",
    } <= used
    assert all(name in document.layers for name in used)
    nails = document.modelspace().query('CIRCLE[layer=="NAIL"]')
    assert len(nails) == sum(len(one.nails) for one in porch_layout().pieces)


def test_the_same_scene_gives_the_same_file() -> None:
    """No date and no new id in it."""
    assert write_dxf(PORCH, System.IMPERIAL) == write_dxf(PORCH, System.IMPERIAL)


def test_each_shape_by_itself() -> None:
    """Heights run up, and what would be a control code is none."""
    scene = Scene(
        width=100.0,
        height=50.0,
        title="",
        description="",
        items=(
            Rect(x=10.0, y=10.0, width=20.0, height=5.0, style=Style.CUT_OUT),
            Polygon(rings=(((0.0, 0.0), (1.0, 0.0), (1.0, 1.0)),), style=Style.PIECE),
            Line(places=((0.0, 50.0), (100.0, 0.0)), style=Style.OPENING_CROSS),
            Circle(x=50.0, y=25.0, radius=2.0, style=Style.NAIL),
            Text(x=5.0, y=45.0, spans=(Span(text="50 %%d %%% ½″"),), size=4.0, turned=True),
        ),
    )
    space = read(write_dxf(scene, System.METRIC)).modelspace()
    rect, triangle, line, circle, text = (cast("Any", entity) for entity in space)
    assert [tuple(point[:2]) for point in rect.get_points()] == [(10, 35), (30, 35), (30, 40), (10, 40)]
    assert triangle.closed
    assert [tuple(point[:2]) for point in line.get_points()] == [(0, 0), (100, 50)]
    assert not line.closed
    assert (circle.dxf.center.x, circle.dxf.center.y, circle.dxf.radius) == (50, 25, 2)
    assert (text.dxf.text, text.dxf.rotation) == ("50 % %d % % % ½″", 90)


def test_the_library_is_left_as_it_was() -> None:
    """Other users of it in the same process get their dates and ids."""
    write_dxf(PORCH, System.METRIC)
    options = cast("Any", ezdxf).options
    assert not options.write_fixed_meta_data_for_testing


def test_a_plain_wall_has_a_piece_too() -> None:
    """With nothing in it or behind it but studs."""
    surface = wall(60, 12)
    whole = job(surface, [board("A", 60, 6)])
    laid = layout(surface_layout(surface, course(1, (0, 6), piece(surface, "1a A", (0, 59), (0, 5)))))
    assert whole.tape is TAPE
    space = read(write_dxf(wall_at_full_size(whole, laid.surfaces[0]), System.IMPERIAL)).modelspace()
    assert len(space.query('LWPOLYLINE[layer=="PIECE"]')) == 1
