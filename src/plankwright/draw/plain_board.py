"""A board as it lies in the pile: its flaws and a tape beside it, nothing cut; to look at, and to tap on."""

from collections.abc import Iterator
from dataclasses import dataclass

from plankwright.draw.rulers import Mark, level_ruler, level_ruler_depth
from plankwright.draw.scene import Anchor, Item, Line, Place, Polygon, Scene, Span, Text
from plankwright.draw.styles import Style
from plankwright.measure import FOOT, INCH, MILLIMETRE, Nm, System, TapeStyle, write_length
from plankwright.model import Board, Severity

_START, _END = 5.0, 13.0
"""Room before the marked end, for the arrow, and behind the other one, for the width there. [mm]"""

_LEAST_HEIGHT, _MOST_HEIGHT = 14.0, 26.0
"""How high a board is drawn: wider than to scale, so that a thumb finds it. [mm]"""

_ASIDE = 3.0
"""Font size of the width. [mm]"""

_GAP = 1.0
_TICK = 1.4
"""How far the marks of the tape reach into the board. [mm]"""

_STEPS = {
    System.IMPERIAL: (3 * INCH, 6 * INCH, FOOT, 2 * FOOT, 4 * FOOT, 8 * FOOT, 16 * FOOT),
    System.METRIC: tuple(step * MILLIMETRE for step in (50, 100, 250, 500, 1_000, 2_000, 5_000, 10_000)),
}
"""Steps at which a tape can be lettered. [nm]"""

_MOST = 6
"""How many steps there is room for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bench:
    """Where a board lies on the sheet: its marked end left, its reference edge below."""

    bottom: float
    scale_along: float
    scale_across: float

    def x(self, along: Nm) -> float:
        return _START + along / MILLIMETRE / self.scale_along

    def y(self, across: Nm) -> float:
        return self.bottom - across / MILLIMETRE / self.scale_across

    def place(self, along: Nm, across: Nm) -> Place:
        return self.x(along), self.y(across)


def plain_board(board: Board, tape: TapeStyle, width: float = 90.0) -> Scene:
    """Draw a board with its flaws, and nothing cut from it.

    Parameters
    ----------
    board
        The board.
    tape
        How lengths are written.
    width
        Of the drawing. [mm]

    Returns
    -------
    Scene
        The board, to scale along but not across, its marked end at the left and its reference edge, a heavy
        line, below; above it the numbers of its flaws, below it a tape.
    """
    return _Drawer(board, tape, width).scene()


class _Drawer:
    def __init__(self, board: Board, tape: TapeStyle, width: float) -> None:
        self.board, self.tape, self.width = board, tape, width
        widest = max(board.width_start_nm, board.width_end_nm) / MILLIMETRE
        scale = board.length_nm / MILLIMETRE / (width - _START - _END)
        height = min(max(_LEAST_HEIGHT, widest / scale), _MOST_HEIGHT)
        above = level_ruler_depth(self._numbers(), width)
        self.bench = _Bench(bottom=above + height, scale_along=scale, scale_across=widest / height)
        self.height = above + height + level_ruler_depth([spans for _, spans in self._tape()], width) + _GAP

    def scene(self) -> Scene:
        board = self.board
        size = " × ".join(write_length(nm, self.tape) for nm in (board.length_nm, board.width_start_nm))
        return Scene(
            width=self.width,
            height=self.height,
            title=f"Board {board.id}, {size}",
            description=self._description(),
            items=(*self._ground(), *self._flaws(), *self._marks(), *self._beside()),
        )

    def _ground(self) -> Iterator[Item]:
        yield self._stretch(0, self.board.length_nm, Style.BOARD)

    def _stretch(self, start: Nm, end: Nm, style: Style) -> Polygon:
        place = self.bench.place
        corners = (
            place(start, 0),
            place(end, 0),
            place(end, self._width_at(end)),
            place(start, self._width_at(start)),
        )
        return Polygon(rings=(corners,), style=style)

    def _width_at(self, along: Nm) -> Nm:
        board = self.board
        return board.width_start_nm + (board.width_end_nm - board.width_start_nm) * along // board.length_nm

    def _flaws(self) -> Iterator[Item]:
        for flaw in self.board.flaws:
            style = Style.FLAW_LOST if flaw.severity is Severity.LOST else Style.FLAW_BLEMISH
            yield self._stretch(flaw.start_nm, flaw.end_nm, style)

    def _tape(self) -> list[tuple[Nm, tuple[Span, ...]]]:
        """Give the marks of the tape: as many as there is room for, and the end of the board."""
        length = self.board.length_nm
        steps = _STEPS[self.tape.system]
        step = next((step for step in steps if length <= _MOST * step), steps[-1])
        places = [*range(0, length - step // 2, step), length]
        return [(at, (Span(text=self._written(at)),)) for at in places]

    def _written(self, nm: Nm) -> str:
        """Write a mark of the tape, the shorter the better; the last one says the unit."""
        if nm == self.board.length_nm:
            return write_length(nm, self.tape)
        if self.tape.system is System.METRIC:
            return str(nm // MILLIMETRE)
        return write_length(nm, self.tape).removesuffix(' 0"') if nm else "0"

    def _numbers(self) -> list[tuple[Span, ...]]:
        return [(Span(text=str(number), bold=True),) for number in range(1, len(self.board.flaws) + 1)]

    def _marks(self) -> Iterator[Item]:
        bench = self.bench
        marks = [Mark(at=bench.x(at), spans=spans) for at, spans in self._tape()]
        for mark in marks[:-1]:
            yield Line(
                places=((mark.at, bench.bottom), (mark.at, bench.bottom - _TICK)), style=Style.DIMENSION
            )
        yield from level_ruler(bench.bottom, marks, self.width, above=False)
        numbers = [
            Mark(at=bench.x((flaw.start_nm + flaw.end_nm) // 2), spans=spans)
            for spans, flaw in zip(self._numbers(), self.board.flaws, strict=True)
        ]
        top = bench.y(max(self.board.width_start_nm, self.board.width_end_nm))
        yield from level_ruler(top, numbers, self.width, above=True)

    def _beside(self) -> Iterator[Item]:
        """Draw an arrow at the marked end and the reference edge heavy, and letter the width."""
        board, bench = self.board, self.bench
        left, right = bench.x(0), bench.x(board.length_nm)
        yield Line(places=((left, bench.bottom), (right, bench.bottom)), style=Style.REFERENCE)
        middle = bench.y(board.width_start_nm // 2)
        tip = left - 0.6
        yield Polygon(
            rings=(((tip, middle), (tip - 2.6, middle - 1.5), (tip - 2.6, middle + 1.5)),), style=Style.SOLID
        )
        yield Text(
            x=right + 1.2,
            y=bench.y(board.width_end_nm // 2),
            spans=(Span(text=write_length(board.width_end_nm, self.tape)),),
            size=_ASIDE,
            anchor=Anchor.START,
        )

    def _description(self) -> str:
        told = []
        for number, flaw in enumerate(self.board.flaws, start=1):
            start, end = (write_length(nm, self.tape) for nm in (flaw.start_nm, flaw.end_nm))
            face = f", {flaw.face} only" if flaw.face is not None else ""
            told.append(f"{number} {flaw.what} ({flaw.severity}{face}), {start} to {end}")
        return f"From the marked end, at the left: {'; '.join(told) or 'no flaws'}."
