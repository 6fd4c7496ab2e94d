"""The drawing of a board as it lies in the pile."""

import pytest

from builders import TAPE, board, flaw, nm
from plankwright.draw import Scene, write_svg
from plankwright.draw.plain_board import plain_board
from plankwright.draw.scene import Polygon, Text
from plankwright.draw.styles import Style
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import Severity

METRIC = TapeStyle(system=System.METRIC)


def _shapes(scene: Scene, style: Style) -> list[Polygon]:
    return [item for item in scene.items if isinstance(item, Polygon) and item.style is style]


def _said(scene: Scene) -> list[str]:
    return [item.said for item in scene.items if isinstance(item, Text)]


def _across(shape: Polygon) -> tuple[float, float]:
    places = [x for x, _ in shape.rings[0]]
    return min(places), max(places)


def test_a_flaw_stands_where_it_is_along_the_board() -> None:
    """As the same share of its length, since a tap there means a place."""
    scene = plain_board(board("F1", 100, 6, flaws=(flaw(25, 50),)), TAPE)
    left, right = _across(_shapes(scene, Style.BOARD)[0])
    start, end = _across(_shapes(scene, Style.FLAW_LOST)[0])
    assert (start - left) / (right - left) == pytest.approx(0.25)
    assert (end - left) / (right - left) == pytest.approx(0.5)


def test_lost_wood_looks_otherwise_than_a_blemish() -> None:
    """And each has its number."""
    flaws = (flaw(5, 10), flaw(50, 60, Severity.BLEMISH))
    scene = plain_board(board("F1", 100, 6, flaws=flaws), TAPE)
    assert len(_shapes(scene, Style.FLAW_LOST)) == len(_shapes(scene, Style.FLAW_BLEMISH)) == 1
    assert {"1", "2"} <= set(_said(scene))


def test_a_tape_lies_beside_the_board() -> None:
    """With its last mark at the end of the board."""
    assert {"0", "2'", "4'", "6'", "8' 1\""} <= set(_said(plain_board(board("F1", 97, 6), TAPE)))


def test_a_metric_tape_is_lettered_in_millimetres() -> None:
    """Only the end says so."""
    long = board("F1", 97, 6, length_nm=2_600 * MILLIMETRE)
    assert {"0", "500", "1000", "2600 mm"} <= set(_said(plain_board(long, METRIC)))


@pytest.mark.parametrize("length", [0.5, 3, 44, 97, 240, 1200])
def test_a_board_of_any_length_stays_on_the_sheet(length: float) -> None:
    """Its outline and its marks."""
    scene = plain_board(board("F1", length, 0.5), TAPE)
    left, right = _across(_shapes(scene, Style.BOARD)[0])
    assert 0 < left < right < scene.width
    assert all(0 <= item.y <= scene.height for item in scene.items if isinstance(item, Text))


def test_a_tapered_board_is_drawn_tapered() -> None:
    """Its narrow end is lower than its wide one."""
    scene = plain_board(board("F1", 97, 6, width_end_nm=nm(4)), TAPE)
    (outline,) = _shapes(scene, Style.BOARD)[0].rings
    (_, low), _, (_, far), (_, near) = outline
    assert low - far == pytest.approx((low - near) * 4 / 6)


def test_whoever_hears_the_drawing_hears_the_flaws() -> None:
    """And that there are none."""
    told = plain_board(board("F1", 97, 6, flaws=(flaw(31, 33),)), TAPE).description
    assert told == "From the marked end, at the left: 1 rot (lost), 2' 7\" to 2' 9\"."
    assert "no flaws" in plain_board(board("F1", 97, 6), TAPE).description


def test_it_is_written_as_svg_with_the_board_as_one_shape() -> None:
    """Which is what taps are measured on."""
    assert write_svg(plain_board(board("F1", 97, 6), TAPE)).count('class="pw-board"') == 1
