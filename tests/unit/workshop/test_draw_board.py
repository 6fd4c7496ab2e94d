"""The drawing of a board for a page, and what a tap on it means."""

from builders import TAPE, board, nm
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.workshop.draw_board import draw_board, tap_scale


def test_a_board_is_drawn_as_svg() -> None:
    """With its name for those who hear it."""
    assert '<title>Board F1, 8\' 1" × 6"</title>' in draw_board(board("F1", 97, 6), TAPE)


def test_a_tap_means_inches_on_an_inch_tape() -> None:
    """As many as the board is long, to the half inch that a thumb finds."""
    scale = tap_scale(nm(87.625), TAPE)
    assert (float(scale.length), scale.unit, scale.step) == (87.625, "in", "0.5")


def test_a_tap_means_millimetres_on_a_metric_tape() -> None:
    """To the centimetre."""
    scale = tap_scale(2_226 * MILLIMETRE, TapeStyle(system=System.METRIC))
    assert (float(scale.length), scale.unit, scale.step) == (2226, "mm", "10")
