"""A board as it lies on the saw bench: its flaws, the pieces to cut from it, and where to mark them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import shapely

from plankwright.draw.labels import Block, Room
from plankwright.draw.rulers import Mark, level_ruler, level_ruler_depth
from plankwright.draw.scene import Anchor, Group, Item, Line, Place, Polygon, Rect, Scene, Span, Text, slug
from plankwright.draw.styles import Style
from plankwright.measure import MILLIMETRE, Nm, write_inches
from plankwright.model import BoardCuts, CutKind, Face, Flaw, Job, Offcut, Piece, Point, Severity

_SIZES = (3.2, 2.9, 2.6, 2.4)
_SMALL_SIZES = (*_SIZES, 2.1, 1.8)
"""Font sizes, best first, and those of a label that stands alone for want of room. [mm]"""

_ASIDE = 2.8
"""Font size of the widths beside the board. [mm]"""

_SIDE = 17.0
"""Room beside the board, at either end, for its width there. [mm]"""

_LEAST_HEIGHT, _LEAST_PIECE, _MOST_HEIGHT = 9.0, 3.2, 24.0
"""How high a board and its narrowest piece are drawn; they are drawn wider than to scale, to have room for
lettering. [mm]"""

_GAP = 1.0
"""Below the drawing. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finished:
    """What a piece looks like on its board once every cut is made.

    Parameters
    ----------
    corners
        Of the piece: along the board from its marked end, and across from its reference edge. [nm]
    notches
        Two opposite corners of each, in the same way. [nm]
    """

    corners: tuple[Point, ...]
    notches: tuple[tuple[Point, Point], ...] = ()


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

    def place(self, point: Point) -> Place:
        return self.x(point[0]), self.y(point[1])

    def rect(self, along: tuple[Nm, Nm], across: tuple[Nm, Nm], style: Style) -> Rect:
        left, top = self.x(along[0]), self.y(across[1])
        return Rect(x=left, y=top, width=self.x(along[1]) - left, height=self.y(across[0]) - top, style=style)


def board_drawing(
    job: Job,
    cuts: BoardCuts,
    pieces: Mapping[str, Piece],
    finished: Mapping[str, Finished],
    width: float = 180.0,
) -> Scene:
    """Draw a board with what is cut from it.

    Parameters
    ----------
    job
        For the board, and the way that lengths are written.
    cuts
        What is done to the board, and what is left of it.
    pieces
        The pieces that come out of it, by what to letter on each.
    finished
        By the same names, what is made of the blanks.
    width
        Of the drawing. [mm]

    Returns
    -------
    Scene
        The board, to scale along but not always across, its marked end at the left and its reference edge, a
        heavy line, below; above it the marks of the crosscuts from the marked end, below it the numbers of
        flaws where it has several.
    """
    return _Drawer(job, cuts, pieces, finished, width).scene()


class _Drawer:
    def __init__(
        self,
        job: Job,
        cuts: BoardCuts,
        pieces: Mapping[str, Piece],
        finished: Mapping[str, Finished],
        width: float,
    ) -> None:
        board = job.board(cuts.board_id)
        self.job, self.board, self.cuts, self.width = job, board, cuts, width
        self.pieces = dict(
            sorted(pieces.items(), key=lambda item: (item[1].along_from_nm, item[1].across_from_nm))
        )
        self.finished = finished
        widest = max(board.width_start_nm, board.width_end_nm) / MILLIMETRE
        scale = max(board.length_nm / MILLIMETRE / (width - 2 * _SIDE), widest / _MOST_HEIGHT)
        narrowest = min(
            (piece.across_to_nm - piece.across_from_nm for piece in pieces.values()),
            default=board.width_start_nm,
        )
        lettered = _LEAST_PIECE * widest / (narrowest / MILLIMETRE)
        height = max(_LEAST_HEIGHT, widest / scale, min(lettered, _MOST_HEIGHT))
        depth = level_ruler_depth(self._mark_texts(), width)
        self.bench = _Bench(
            left=_SIDE, bottom=depth + height, scale_along=scale, scale_across=widest / height
        )
        self.height = depth + height + level_ruler_depth(self._flaw_numbers(), width)

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
        for offcut in self.cuts.offcuts:
            yield bench.rect(*_extent(offcut), Style.OFFCUT)
        for label in self.pieces:
            yield self._outline(self.finished[label], Style.WOOD)

    def _outline(self, finished: Finished, style: Style) -> Polygon:
        return Polygon(rings=(tuple(self.bench.place(corner) for corner in finished.corners),), style=style)

    def _notches(self, finished: Finished) -> Iterator[Rect]:
        for one, other in finished.notches:
            along, across = sorted((one[0], other[0])), sorted((one[1], other[1]))
            yield self.bench.rect((along[0], along[1]), (across[0], across[1]), Style.CUT_OUT)

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
            outline = self._outline(self.finished[label], Style.FINISHED)
            notches = tuple(self._notches(self.finished[label]))
            cell = shapely.Polygon(outline.rings[0]).difference(
                shapely.union_all([_box(notch) for notch in notches])
            )
            alone = _blocks([(head,)], _SMALL_SIZES)
            spot = room.inside([cell], [*_blocks(forms), *_blocks(forms, turned=True), *alone])
            words = () if spot is None else spot.block.drawn(spot.centre, ground=Style.WOOD)
            back = ", back face up" if piece.face is Face.BACK else ""
            yield Group(
                id=f"cut-{slug(self.board.id)}-{slug(label)}",
                title=f"{label}: {length} × {width}{back}",
                items=(rect, outline, *notches, *words),
            )
        for offcut in self.cuts.offcuts:
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
        """Give where the crosscuts are marked, as the cut list has them, and the length of the board."""
        marks = {
            at
            for cut in self.cuts.cuts
            if cut.kind in {CutKind.CROSSCUT, CutKind.ANGLED} and (cut.yields or cut.what)
            for at in (cut.at_nm, cut.other_at_nm)
        }
        return sorted({at for at in marks if at > 0} | {self.board.length_nm})

    def _mark_texts(self) -> list[tuple[Span, ...]]:
        return [(Span(text=write_inches(at, self.job.tape)),) for at in self._mark_places()]

    def _marks(self) -> tuple[Item, ...]:
        top = self.bench.y(max(self.board.width_start_nm, self.board.width_end_nm))
        marks = [
            Mark(at=self.bench.x(at), spans=spans)
            for at, spans in zip(self._mark_places(), self._mark_texts(), strict=True)
        ]
        numbers = [
            Mark(at=self.bench.x((flaw.start_nm + flaw.end_nm) // 2), spans=spans)
            for spans, flaw in zip(self._flaw_numbers(), self.board.flaws, strict=False)
        ]
        return (
            *level_ruler(top, marks, self.width, above=True),
            *level_ruler(self.bench.bottom, numbers, self.width, above=False),
        )

    def _flaw_numbers(self) -> list[tuple[Span, ...]]:
        """Give the numbers of the flaws, where there are several to be told apart."""
        flaws = len(self.board.flaws)
        return [(Span(text=str(number), bold=True),) for number in range(1, flaws + 1)] if flaws > 1 else []

    def _beside(self) -> Iterator[Item]:
        """Draw an arrow at the marked end and the reference edge heavy, and letter the widths."""
        board, bench = self.board, self.bench
        left, right = bench.x(0), bench.x(board.length_nm)
        yield Line(places=((left, bench.bottom), (right, bench.bottom)), style=Style.REFERENCE)
        middle = bench.y(board.width_start_nm // 2)
        tip = left - 0.6
        arrow = ((tip, middle), (tip - 2.4, middle - 1.4), (tip - 2.4, middle + 1.4))
        yield Polygon(rings=(arrow,), style=Style.SOLID)
        start, end = (write_inches(nm, self.job.tape) for nm in (board.width_start_nm, board.width_end_nm))
        if board.tapered:
            yield self._aside((tip - 3.0, middle), start, Anchor.END)
        yield self._aside((right + 1.2, bench.y(board.width_end_nm // 2)), end, Anchor.START)

    def _aside(self, place: Place, text: str, anchor: Anchor) -> Text:
        return Text(x=place[0], y=place[1], spans=(Span(text=text),), size=_ASIDE, anchor=anchor)

    def _flaw_rows(self) -> Sequence[str]:
        rows = []
        for number, flaw in enumerate(self.board.flaws, start=1):
            start, end = (write_inches(nm, self.job.tape) for nm in (flaw.start_nm, flaw.end_nm))
            face = f", {flaw.face} only" if flaw.face is not None else ""
            rows.append(f"{number} {flaw.what} ({flaw.severity}{face}), {start} to {end}")
        return rows

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


def _blocks(
    forms: Sequence[tuple[Span, ...]], sizes: Sequence[float] = _SIZES, *, turned: bool = False
) -> list[Block]:
    """Give the forms of a line of text, the fullest first even if it is small."""
    return [Block(lines=(form,), size=size, turned=turned) for form in forms for size in sizes]
