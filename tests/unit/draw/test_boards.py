"""The drawing of a board on the saw bench."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import pytest
import shapely

from builders import TAPE, board, flaw, job, nm, rectangle, wall
from plankwright.draw import Scene, board_drawing, write_svg
from plankwright.draw.boards import Finished
from plankwright.draw.lettering import text_width
from plankwright.draw.scene import Anchor, Group, Item, Polygon, Rect, Text
from plankwright.draw.styles import Style
from plankwright.measure import MILLIMETRE, System, TapeStyle
from plankwright.model import Board, BoardCuts, Cut, CutKind, Face, Offcut, Piece, Severity

LONG = board(
    "B17",
    144,
    7.5,
    flaws=(flaw(0, 3), flaw(60, 66), flaw(100, 104, Severity.BLEMISH, face=Face.FRONT)),
)


def _piece(along: tuple[float, float], across: tuple[float, float], face: Face = Face.FRONT) -> Piece:
    return Piece(
        label="as hung",
        board_id="B17",
        place=rectangle(0, 0, 10, 5),
        along_from_nm=nm(along[0]),
        along_to_nm=nm(along[1]),
        across_from_nm=nm(across[0]),
        across_to_nm=nm(across[1]),
        face=face,
    )


PIECES = {
    "9a": _piece((66.5, 139), (0.125, 3.5)),
    "4b": _piece((3.5, 59), (0.125, 5.5)),
    "11c": _piece((66.5, 99), (3.625, 7), Face.BACK),
}
OFFCUT = Offcut(
    board_id="B17",
    along_from_nm=nm(99.125),
    along_to_nm=nm(143.5),
    across_from_nm=nm(3.625),
    across_to_nm=nm(7.375),
)


def _crosscut(at: float, other: float | None = None) -> Cut:
    kind = CutKind.CROSSCUT if other is None else CutKind.ANGLED
    return Cut(
        kind=kind,
        at_nm=nm(at),
        other_at_nm=nm(at if other is None else other),
        from_nm=0,
        to_nm=nm(7.5),
        what="cut",
    )


CUTS = (
    *(_crosscut(at) for at in (3.375, 59, 66.375, 99)),
    Cut(kind=CutKind.RIP, at_nm=nm(5.5), other_at_nm=nm(5.5), from_nm=0, to_nm=nm(60)),
    _crosscut(139, 136.5),
)


def _blank(piece: Piece) -> Finished:
    """Give a piece that hangs as it is cut."""
    left, right = piece.along_from_nm, piece.along_to_nm
    low, high = piece.across_from_nm, piece.across_to_nm
    return Finished(corners=((left, low), (right, low), (right, high), (left, high)))


def _board_cuts(of: Board, pieces: Mapping[str, Piece], *offcuts: Offcut) -> BoardCuts:
    cuts = CUTS if pieces else ()
    return BoardCuts(board_id=of.id, cuts=cuts, piece_labels=tuple(pieces), offcuts=offcuts)


def _drawn(of: Board = LONG, tape: TapeStyle = TAPE) -> Scene:
    pieces = PIECES if of is LONG else {}
    whole = replace(job(wall(96, 48), [of]), tape=tape)
    cuts = _board_cuts(of, pieces, *((OFFCUT,) if pieces else ()))
    return board_drawing(whole, cuts, pieces, {label: _blank(piece) for label, piece in pieces.items()})


def _all(items: tuple[Item, ...]) -> Iterator[Item]:
    for item in items:
        yield item
        if isinstance(item, Group):
            yield from _all(item.items)


def _styled(scene: Scene, style: Style) -> list[Item]:
    return [item for item in _all(scene.items) if not isinstance(item, Group) and item.style is style]


def _said(scene: Scene) -> list[str]:
    return [item.said for item in _all(scene.items) if isinstance(item, Text)]


def _scale(scene: Scene, of: Board) -> float:
    """Give millimetres of board to a millimetre of drawing, along."""
    (outline,) = [item for item in _styled(scene, Style.BOARD) if isinstance(item, Polygon)]
    left, _, right, _ = shapely.Polygon(outline.rings[0]).bounds
    return float(of.length_nm / MILLIMETRE / (right - left))


def test_each_piece_lies_where_it_is_cut() -> None:
    """From the marked end at the left, to one scale along the board, the reference edge below."""
    scene = _drawn()
    scale = _scale(scene, LONG)
    (outline,) = [item for item in _styled(scene, Style.BOARD) if isinstance(item, Polygon)]
    left, top, _, bottom = shapely.Polygon(outline.rings[0]).bounds
    groups = {item.id: item for item in scene.items if isinstance(item, Group)}
    for label, piece in PIECES.items():
        (rect,) = [
            item
            for item in groups[f"cut-B17-{label}"].items
            if isinstance(item, Rect) and item.style is Style.PIECE
        ]
        assert (rect.x - left) * scale * MILLIMETRE == pytest.approx(piece.along_from_nm, abs=1000)
        assert rect.width * scale * MILLIMETRE == pytest.approx(
            piece.along_to_nm - piece.along_from_nm, abs=1000
        )
        share = (bottom - rect.y) / (bottom - top)
        assert share == pytest.approx(piece.across_to_nm / LONG.width_start_nm)


def test_pieces_are_lettered_with_label_length_and_width() -> None:
    """The bench needs no other paper to tell them apart; one that shows its back says so."""
    scene = _drawn()
    said = _said(scene)
    assert '4b · 55-1/2" × 5-3/8"' in said
    assert '9a · 72-1/2" × 3-3/8"' in said
    titles = [item.title for item in scene.items if isinstance(item, Group)]
    assert titles == ['4b: 55-1/2" × 5-3/8"', '9a: 72-1/2" × 3-3/8"', '11c: 32-1/2" × 3-3/8", back face up']


def test_marks_are_those_of_the_crosscuts_from_the_marked_end() -> None:
    """What stands above the board is what the cut list says, both marks of an angled cut, and its length."""
    said = _said(_drawn())
    assert [text for text in said if text.endswith('"') and " " not in text] == [
        '3-3/8"', '59"', '66-3/8"', '99"', '136-1/2"', '139"', '144"', '7-1/2"',
    ]  # fmt: skip


def test_flaws_are_hatched_and_numbered() -> None:
    """Lost wood and blemishes differ by their hatch; numbers tell several apart."""
    scene = _drawn()
    assert len(_styled(scene, Style.FLAW_LOST)) == 2
    assert len(_styled(scene, Style.FLAW_BLEMISH)) == 1
    assert {"1", "2", "3"} <= set(_said(scene))
    assert (
        '1 rot (lost), 0" to 3"; 2 rot (lost), 60" to 66"; 3 stain (blemish, front only), 100" to 104"'
        in scene.description
    )


def test_a_single_flaw_needs_no_number() -> None:
    """There is nothing to take it for."""
    scene = _drawn(board("S1", 30, 5, flaws=(flaw(4, 9),)))
    assert len(_styled(scene, Style.FLAW_LOST)) == 1
    assert "1" not in _said(scene)


def test_a_finished_piece_is_outlined_with_its_slope_and_its_notch() -> None:
    """An angled end and a box are seen where they are cut, within the blank."""
    piece = PIECES["4b"]
    finished = Finished(
        corners=((nm(3.5), nm(0.125)), (nm(59), nm(0.125)), (nm(50), nm(5.5)), (nm(3.5), nm(5.5))),
        notches=(((nm(20), nm(4)), (nm(18), nm(2))),),
    )
    scene = board_drawing(
        job(wall(96, 48), [LONG]), _board_cuts(LONG, {"4b": piece}), {"4b": piece}, {"4b": finished}
    )
    (outline,) = [item for item in _styled(scene, Style.FINISHED) if isinstance(item, Polygon)]
    (blank,) = [item for item in _styled(scene, Style.PIECE) if isinstance(item, Rect)]
    (notch,) = [item for item in _styled(scene, Style.CUT_OUT) if isinstance(item, Rect)]
    slope = shapely.Polygon(outline.rings[0])
    assert slope.bounds == pytest.approx(
        (blank.x, blank.y, blank.x + blank.width, blank.y + blank.height), abs=0.01
    )
    assert slope.area / (blank.width * blank.height) == pytest.approx(1 - 9 / 55.5 / 2)
    assert (notch.x - blank.x) / blank.width == pytest.approx(14.5 / 55.5)
    assert notch.width / blank.width == pytest.approx(2 / 55.5)
    assert slope.contains(shapely.box(notch.x, notch.y, notch.x + notch.width, notch.y + notch.height))


def test_a_narrow_strip_keeps_its_label() -> None:
    """A strip of an inch has no room for its size, but nobody must guess which one it is."""
    strips = {
        "7a": _piece((3.5, 59), (0, 1)),
        "8a": _piece((3.5, 59), (1.125, 7)),
    }
    scene = board_drawing(
        job(wall(96, 48), [LONG]),
        _board_cuts(LONG, strips),
        strips,
        {label: _blank(piece) for label, piece in strips.items()},
    )
    said = _said(scene)
    assert any(text.startswith("8a · ") for text in said)
    assert any(text.startswith("7a") for text in said)


def test_what_is_kept_is_drawn_dashed_and_lettered() -> None:
    """An offcut worth keeping says how large it is."""
    scene = _drawn()
    assert len(_styled(scene, Style.OFFCUT)) == 1
    assert 'keep 44-3/8" × 3-3/4"' in _said(scene)


def test_a_sliver_worth_keeping_is_drawn_without_words() -> None:
    """What is too small to letter keeps its dashes; the cut list tells its size."""
    sliver = replace(OFFCUT, along_from_nm=nm(143), along_to_nm=nm(143.5))
    scene = board_drawing(
        job(wall(96, 48), [LONG]),
        _board_cuts(LONG, PIECES, sliver),
        PIECES,
        {label: _blank(piece) for label, piece in PIECES.items()},
    )
    assert len(_styled(scene, Style.OFFCUT)) == 1
    assert not any(text.startswith("keep") for text in _said(scene))


def test_a_tapered_board_shows_both_widths() -> None:
    """At each end the width that it has there."""
    tapered = board("T1", 96, 6, width_end_nm=nm(5))
    scene = _drawn(tapered)
    assert {'6"', '5"'} <= set(_said(scene))
    (outline,) = [item for item in _styled(scene, Style.BOARD) if isinstance(item, Polygon)]
    heights = [y for _, y in outline.rings[0]]
    assert heights[2] > heights[3], "the far end is narrower, and y runs down"


def test_a_metric_user_reads_millimetres() -> None:
    """No inch anywhere."""
    said = _said(_drawn(tape=TapeStyle(system=System.METRIC)))
    assert not any('"' in text for text in said)
    assert "4b · 1410 mm × 137 mm" in said


def test_a_board_with_nothing_cut_is_still_drawn() -> None:
    """Its length is marked, nothing else."""
    scene = _drawn(board("S1", 30, 5))
    assert '30"' in _said(scene)
    assert "nothing is cut" in scene.description


@pytest.mark.parametrize(
    "of",
    [
        LONG,
        board("S1", 12, 11),
        board("a-very-long-id-of-a-board-123456789", 96, 2.5),
        board("L16", 192, 5.5, flaws=tuple(flaw(at, at + 1.5) for at in range(4, 190, 6))),
    ],
    ids=lambda of: of.id,
)
def test_no_two_texts_touch_and_none_leaves_the_drawing(of: Board) -> None:
    """Long ids, wide short boards and thirty flaws all find room."""
    scene = _drawn(of)
    boxes = [_box(item) for item in _all(scene.items) if isinstance(item, Text)]
    sheet = shapely.box(0, 0, scene.width, scene.height)
    assert all(shapely.contains(sheet, boxes))
    first, second = shapely.STRtree(boxes).query(boxes, "overlaps")
    assert not [pair for pair in zip(first, second, strict=True) if pair[0] < pair[1]]


def test_it_is_written_alike_each_time() -> None:
    """Byte for byte, and whatever order the pieces came in."""
    blanks = {label: _blank(piece) for label, piece in PIECES.items()}
    again = board_drawing(
        job(wall(96, 48), [LONG]),
        _board_cuts(LONG, PIECES, OFFCUT),
        dict(reversed(PIECES.items())),
        dict(reversed(blanks.items())),
    )
    assert write_svg(_drawn()) == write_svg(again)


def _box(text: Text) -> shapely.Polygon:
    width, half = text_width(text.spans, text.size), text.size / 2
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    if text.turned:
        return shapely.box(text.x - half, text.y + before - width, text.x + half, text.y + before)
    return shapely.box(text.x - before, text.y - half, text.x - before + width, text.y + half)
