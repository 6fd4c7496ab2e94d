"""A board as it lies on the saw bench: its flaws, the pieces to cut from it, and where to mark them."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import shapely

from plankwright.draw.labels import Block, Room
from plankwright.draw.lettering import LINE, fitting_size, shortened, wrapped
from plankwright.draw.rulers import Mark, level_ruler, level_ruler_depth
from plankwright.draw.scene import Group, Item, Polygon, Rect, Scene, Span, Text, slug
from plankwright.draw.styles import Style
from plankwright.measure import MILLIMETRE, Nm, write_inches
from plankwright.model import Board, Face, Flaw, Job, Offcut, Piece, Severity

_SIZES = (2.6, 2.3, 2.0, 1.8)
_LIST_SIZE = 2.1
"""Font sizes, best first, and that of the list of flaws. [mm]"""

_LEFT, _RIGHT = 22.0, 15.0
"""Room beside the board for its id and its width. [mm]"""

_LEAST_HEIGHT, _MOST_HEIGHT = 9.0, 24.0
"""How high a board is drawn; a narrow one is drawn wider than to scale, to have room for lettering. [mm]"""

_GAP = 1.2
"""Between the parts of the drawing. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bench:
    """Where a board lies on the sheet: its marked end left, its reference edge below."""

    left: float
    bottom: float
    scale_along: float
    scale_across: float

    def x(self, along: Nm) -> float:
        return self.left + along / MILLIMETRE / self.scale_along

    def y(self, across: Nm) -> float:
        return self.bottom - across / MILLIMETRE / self.scale_across

    def rect(self, along: tuple[Nm, Nm], across: tuple[Nm, Nm], style: Style) -> Rect:
        left, top = self.x(along[0]), self.y(across[1])
        return Rect(x=left, y=top, width=self.x(along[1]) - left, height=self.y(across[0]) - top, style=style)


def board_drawing(
    job: Job, board: Board, pieces: Mapping[str, Piece], offcuts: Iterable[Offcut] = (), width: float = 180.0
) -> Scene:
    """Draw a board with what is cut from it.

    Parameters
    ----------
    job
        For the way that lengths are written.
    board
        The board.
    pieces
        The pieces that come out of it, by what to letter on each.
    offcuts
        What is left and worth keeping.
    width
        Of the drawing. [mm]

    Returns
    -------
    Scene
        The board, to scale along but not always across, its marked end at the left and its reference edge
        below; above it the marks of the crosscuts from the marked end, below it its flaws by number.
    """
    return _Drawer(job, board, pieces, tuple(offcuts), width).scene()


class _Drawer:
    def __init__(
        self, job: Job, board: Board, pieces: Mapping[str, Piece], offcuts: tuple[Offcut, ...], width: float
    ) -> None:
        self.job, self.board, self.width = job, board, width
        self.pieces = dict(
            sorted(pieces.items(), key=lambda item: (item[1].along_from_nm, item[1].across_from_nm))
        )
        self.offcuts = offcuts
        self.list = wrapped("; ".join(self._flaw_rows()), width, _LIST_SIZE)
        widest = max(board.width_start_nm, board.width_end_nm) / MILLIMETRE
        scale = max(board.length_nm / MILLIMETRE / (width - _LEFT - _RIGHT), widest / _MOST_HEIGHT)
        height = max(_LEAST_HEIGHT, widest / scale)
        depth = level_ruler_depth(self._mark_texts(), width)
        self.bench = _Bench(
            left=_LEFT, bottom=depth + height, scale_along=scale, scale_across=widest / height
        )
        self.height = depth + height
        if self.board.flaws:
            self.height += level_ruler_depth([str(len(self.board.flaws))], width)
            self.height += _GAP + LINE * _LIST_SIZE * len(self.list)

    def scene(self) -> Scene:
        board = self.board
        size = " × ".join(write_inches(nm, self.job.tape) for nm in (board.length_nm, board.width_start_nm))
        return Scene(
            width=self.width,
            height=self.height + _GAP,
            title=f"Board {board.id}, {size}",
            description=self._description(),
            items=(
                *self._ground(),
                *self._flaws(),
                *self._lettered(),
                *self._marks(),
                *self._beside(),
                *self._flaw_list(),
            ),
        )

    def _ground(self) -> Iterator[Item]:
        board, bench = self.board, self.bench
        corners = (
            (bench.x(0), bench.y(0)),
            (bench.x(board.length_nm), bench.y(0)),
            (bench.x(board.length_nm), bench.y(board.width_end_nm)),
            (bench.x(0), bench.y(board.width_start_nm)),
        )
        yield Polygon(rings=(corners,), style=Style.BOARD)
        for offcut in self.offcuts:
            yield bench.rect(*_extent(offcut), Style.OFFCUT)
        for piece in self.pieces.values():
            yield bench.rect(*_extent(piece), Style.WOOD)

    def _flaws(self) -> Iterator[Item]:
        for flaw in self.board.flaws:
            (low_1, low_2), (high_1, high_2) = (
                (self.bench.y(0), self.bench.y(self._width_at(at))) for at in (flaw.start_nm, flaw.end_nm)
            )
            left, right = self.bench.x(flaw.start_nm), self.bench.x(flaw.end_nm)
            style = Style.FLAW_LOST if flaw.severity is Severity.LOST else Style.FLAW_BLEMISH
            yield Polygon(
                rings=(((left, low_1), (right, high_1), (right, high_2), (left, low_2)),), style=style
            )

    def _width_at(self, along: Nm) -> Nm:
        board = self.board
        return board.width_start_nm + (board.width_end_nm - board.width_start_nm) * along // board.length_nm

    def _lettered(self) -> Iterator[Item]:
        room = Room(shapely.union_all([self._hatched(flaw) for flaw in self.board.flaws]))
        for label, piece in self.pieces.items():
            rect = self.bench.rect(*_extent(piece), Style.PIECE)
            length, width = (write_inches(end - start, self.job.tape) for start, end in _extent(piece))
            head = Span(text=label, bold=True)
            forms = [(head, Span(text=rest)) for rest in (f" · {length} × {width}", f" · {length}", "")]
            spot = room.inside([_box(rect)], [*_blocks(forms), *_blocks(forms, turned=True)])
            words = () if spot is None else spot.block.drawn(spot.centre, ground=Style.WOOD)
            back = ", back face up" if piece.face is Face.BACK else ""
            yield Group(
                id=f"cut-{slug(self.board.id)}-{slug(label)}",
                title=f"{label}: {length} × {width}{back}",
                items=(rect, *words),
            )
        for offcut in self.offcuts:
            length, width = (write_inches(end - start, self.job.tape) for start, end in _extent(offcut))
            said = (f"keep {length} × {width}", f"keep {length}", "keep")
            box = _box(self.bench.rect(*_extent(offcut), Style.OFFCUT))
            spot = room.inside([box], _blocks([(Span(text=text),) for text in said]))
            if spot is not None:
                yield from spot.block.drawn(spot.centre, ground=Style.PAPER, style=Style.NOTE)

    def _hatched(self, flaw: Flaw) -> shapely.Polygon:
        return _box(
            self.bench.rect((flaw.start_nm, flaw.end_nm), (0, self._width_at(flaw.start_nm)), Style.BOARD)
        )

    def _mark_places(self) -> list[Nm]:
        ends = {at for piece in self.pieces.values() for at in (piece.along_from_nm, piece.along_to_nm)}
        return sorted(ends | {self.board.length_nm})

    def _mark_texts(self) -> list[str]:
        return [write_inches(at, self.job.tape) for at in self._mark_places()]

    def _marks(self) -> tuple[Item, ...]:
        top = self.bench.y(max(self.board.width_start_nm, self.board.width_end_nm))
        marks = [
            Mark(at=self.bench.x(at), spans=(Span(text=text),))
            for at, text in zip(self._mark_places(), self._mark_texts(), strict=True)
        ]
        numbers = [
            Mark(
                at=self.bench.x((flaw.start_nm + flaw.end_nm) // 2),
                spans=(Span(text=str(number), bold=True),),
            )
            for number, flaw in enumerate(self.board.flaws, start=1)
        ]
        return (
            *level_ruler(top, marks, self.width, above=True),
            *level_ruler(self.bench.bottom, numbers, self.width, above=False),
        )

    def _beside(self) -> Iterator[Item]:
        """Letter the id and an arrow at the marked end, the widths at both."""
        board, bench = self.board, self.bench
        middle = bench.y(board.width_start_nm // 2)
        room = _LEFT - 4.0
        size = fitting_size(board.id, room / 1.1, (3.2, 2.8, 2.4, 2.0, 1.8))
        said = board.id if size else shortened(board.id, room, _SIZES[-1], bold=True)
        tip = bench.left - 0.6
        arrow = ((tip, middle), (tip - 2.0, middle - 1.2), (tip - 2.0, middle + 1.2))
        yield Polygon(rings=(arrow,), style=Style.SOLID)
        yield self._aside(0.0, middle - 1.6, (Span(text=said, bold=True),), size or _SIZES[-1])
        start, end = (write_inches(nm, self.job.tape) for nm in (board.width_start_nm, board.width_end_nm))
        if board.tapered:
            yield self._aside(0.0, middle + 1.6, (Span(text=start),), 2.0)
        right = bench.x(board.length_nm) + 1.2
        yield self._aside(right, bench.y(board.width_end_nm // 2), (Span(text=end),), 2.0)

    def _aside(self, x: float, y: float, spans: tuple[Span, ...], size: float) -> Text:
        return Text(x=x, y=y, spans=spans, size=size)

    def _flaw_rows(self) -> Sequence[str]:
        rows = []
        for number, flaw in enumerate(self.board.flaws, start=1):
            start, end = (write_inches(nm, self.job.tape) for nm in (flaw.start_nm, flaw.end_nm))
            face = f", {flaw.face} only" if flaw.face is not None else ""
            rows.append(f"{number} {flaw.what} ({flaw.severity}{face}), {start} to {end}")
        return rows

    def _flaw_list(self) -> Iterator[Item]:
        top = self.height - LINE * _LIST_SIZE * len(self.list)
        for index, line in enumerate(self.list):
            y = top + (index + 0.5) * LINE * _LIST_SIZE
            yield Text(x=0.0, y=y, spans=(Span(text=line),), size=_LIST_SIZE, style=Style.NOTE)

    def _description(self) -> str:
        cuts = ", ".join(
            f"{label} at {write_inches(piece.along_from_nm, self.job.tape)}"
            for label, piece in self.pieces.items()
        )
        return f"From the marked end: {cuts or 'nothing is cut'}. " + "; ".join(self._flaw_rows())


def _extent(part: Piece | Offcut) -> tuple[tuple[Nm, Nm], tuple[Nm, Nm]]:
    return (part.along_from_nm, part.along_to_nm), (part.across_from_nm, part.across_to_nm)


def _box(rect: Rect) -> shapely.Polygon:
    return shapely.box(rect.x, rect.y, rect.x + rect.width, rect.y + rect.height)


def _blocks(forms: Sequence[tuple[Span, ...]], *, turned: bool = False) -> list[Block]:
    """Give the forms of a line of text, the fullest first even if it is small."""
    return [Block(lines=(form,), size=size, turned=turned) for form in forms for size in _SIZES]
