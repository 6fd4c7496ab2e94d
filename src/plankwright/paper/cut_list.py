"""The cut list in words: board by board in the order of hanging, cut by cut in the order of work."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from plankwright.draw.boards import board_drawing
from plankwright.draw.svg import write_svg
from plankwright.layout.at_saw import at_saw
from plankwright.layout.hanging import hung_pieces
from plankwright.layout.sawing import piece_name, saw_boards
from plankwright.measure import Nm, TapeStyle, write_fine, write_inches, write_length
from plankwright.model import (
    NOTHING_DONE,
    Board,
    BoardCuts,
    Cut,
    CutKind,
    EdgeTreatment,
    Face,
    Job,
    Layout,
    Offcut,
    Paint,
    Point,
    Rectangle,
    Standing,
)
from plankwright.paper.as_hung import FIRM, AsHung
from plankwright.paper.hanging_sheet import closing_course
from plankwright.trade.readying.telltale import paint_of, tells_of_paint

_DEGREE = 1000
_STEEP = 50.0
"""Mitre saws seldom swing farther from square. Common practice, no source. [degrees]"""

_LEAST_SHARE = 0.55
"""Of the width that even a short board is drawn in, so that it can be lettered."""

_KINDS = {
    CutKind.CROSSCUT: "Crosscut",
    CutKind.RIP: "Rip",
    CutKind.ANGLED: "Angled",
    CutKind.TAPER_RIP: "Taper rip",
    CutKind.NOTCH: "Notch",
}


LAY_AND_MARK = (
    "Lay a board front up, its marked end to the left: the edge towards you is its reference edge, "
    "of a milled board the groove. A piece of which it is told that its back shows is turned over "
    "once it is free. Measure along from the marked end and across from the reference edge, and "
    "make all marks before the first cut. In the drawings the arrow is at the marked end, the "
    "heavy line is the reference edge, and thick outlines are finished pieces."
)
"""How a board lies, and where its marks are measured from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Freed:
    """A piece that comes free: its label, its size, and how it hangs where that is not plain."""

    label: str
    size: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One thing to do: with which cut, at which mark, what for or what comes free.

    Of a rip along a fence, the text ends with where that is set, which stands on its own besides.
    """

    kind: str
    mark: str
    text: str
    frees: tuple[Freed, ...] = ()
    fence: str = ""

    @property
    def besides_fence(self) -> str:
        """The text without where the fence is set."""
        return self.text.removesuffix(self.fence).removesuffix("; ")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What is done to a piece once it is free, told as it hangs."""

    label: str
    how: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardBlock:
    """Everything that is done to one board."""

    id: str
    size: str
    about: str
    paint: str
    flaws: str
    drawing: str
    steps: tuple[Step, ...]
    bench: tuple[Bench, ...]
    offcuts: tuple[str, ...]
    notes: tuple[str, ...]


def beyond_the_mark(job: Job) -> str:
    """Say on which side of a mark the blade goes, and how much it takes."""
    crosscut, rip = (
        write_inches(kerf, job.tape) for kerf in (job.rules.crosscut_kerf_nm, job.rules.rip_kerf_nm)
    )
    return (
        f"The blade goes beyond the mark: its kerf ({crosscut} crosscut, {rip} rip) comes out of what "
        "lies farther on. On sloping lines and notches it goes on the side of the waste."
    )


def cut_list(
    job: Job, layout: Layout, width: float, standing: Standing = NOTHING_DONE
) -> tuple[BoardBlock, ...]:
    """Put the cut list of a job into words and pictures.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it.
    width
        Of the drawings of the boards. [mm]
    standing
        How far the job has come: only what is still to be sawn is told, and what is left of a board is told
        of like a board.

    Returns
    -------
    tuple[BoardBlock, ...]
        A block for each board that is cut into or hung whole, in the order in which they are needed.

    Raises
    ------
    NoOrderOfCutsError
        If the pieces of a board cannot be freed by straight cuts.
    """
    here = at_saw(job, layout, standing)
    job, layout = here.job, here.layout
    closing = {
        piece_name(job, part.surface_id, piece)
        for part in layout.surfaces
        if (last := closing_course(job.surface(part.surface_id), part)) is not None
        for piece in last.pieces
    }
    pieces = {
        piece_name(job, part.surface_id, piece): AsHung(
            surface=job.surface(part.surface_id),
            piece=piece,
            board=job.board(piece.board_id),
            hung=hung,
            tape=job.tape,
        )
        for part in layout.surfaces
        for piece, hung in zip(part.pieces, hung_pieces(job, part), strict=True)
    }
    all_cuts = saw_boards(job, layout)
    longest = max((job.board(cuts.board_id).length_nm for cuts in all_cuts), default=0)
    return tuple(_block(job, cuts, pieces, closing, (width, longest)) for cuts in all_cuts)


def _block(
    job: Job, cuts: BoardCuts, pieces: dict[str, AsHung], closing: set[str], full: tuple[float, Nm]
) -> BoardBlock:
    board = job.board(cuts.board_id)
    named = {label: pieces[label] for label in cuts.piece_labels}
    at_saw = max((number for number, cut in enumerate(cuts.cuts, start=1) if cut.yields), default=0)
    straight = cuts.cuts[:at_saw]
    steps = [_saw_step(job, cut, straight[:number], named) for number, cut in enumerate(straight)]
    if not straight:
        whole = tuple(Freed(label=label, size=one.size) for label, one in named.items())
        steps = [Step(kind="", mark="", text="Hang it as found: no cut frees it.", frees=whole)]
    return BoardBlock(
        id=board.id,
        size=_board_size(board, job.tape),
        about=_about(board, job.tape),
        paint=_paint(job, board),
        flaws="; ".join(_flaws(board, job.tape)),
        drawing=_draw(job, cuts, named, full),
        steps=tuple(steps),
        bench=tuple(
            Bench(
                label=label,
                how=one.how,
                steps=tuple(_bench_steps(own, one)),
            )
            for label, one in named.items()
            if (own := [cut for cut in cuts.cuts[at_saw:] if cut.label == label])
        ),
        offcuts=tuple(_offcut(offcut, board, job.tape) for offcut in cuts.offcuts),
        notes=tuple(note for label, one in named.items() for note in _notes(label, one, closing)),
    )


def _draw(job: Job, cuts: BoardCuts, pieces: dict[str, AsHung], full: tuple[float, Nm]) -> str:
    """Draw a board; the longest one takes the whole width, and a shorter one the less of it."""
    width, longest = full
    share = max(_LEAST_SHARE, job.board(cuts.board_id).length_nm / longest)
    scene = board_drawing(
        job,
        cuts,
        {label: one.piece for label, one in pieces.items()},
        {label: one.finished() for label, one in pieces.items()},
        width * share,
    )
    return write_svg(scene)


def _notes(label: str, one: AsHung, closing: set[str]) -> Iterator[str]:
    if label in closing:
        yield f"{label} is in the closing course: measure the room that is left before you rip it."
    if one.piece.face is Face.BACK:
        yield f"{label}: its back shows."
    for treatment in one.treatments(EdgeTreatment.SPLINE, EdgeTreatment.FACE_NAIL):
        yield f"{label}: {treatment}."
    if one.piece.shim_nm:
        yield f"{label}: a shim of {write_fine(one.piece.shim_nm, one.tape)} goes behind it."


def _saw_step(job: Job, cut: Cut, earlier: Sequence[Cut], pieces: dict[str, AsHung]) -> Step:
    frees = tuple(Freed(label=label, size=pieces[label].size) for label in cut.yields)
    if cut.kind is CutKind.ANGLED:
        return _angled_step(cut, frees, pieces[cut.label])
    kerf = job.rules.rip_kerf_nm if cut.kind is CutKind.RIP else job.rules.crosscut_kerf_nm
    # Less waste than the blade is wide leaves no mark to saw to, only a width that it takes off.
    if cut.at_nm > kerf:
        mark = f"at {write_inches(cut.at_nm, job.tape)}"
    else:
        mark = f"take off {write_inches(cut.at_nm + kerf, job.tape)}"
    text = cut.what[:1].upper() + cut.what[1:]
    fence = ""
    if cut.kind is CutKind.RIP and cut.at_nm > kerf:
        strip = write_inches(cut.at_nm - _straight_from(cut, earlier, kerf), job.tape)
        fence = f"{'f' if text else 'F'}ence at {strip}"
        text = f"{text}; {fence}" if text else fence
    return Step(kind=_KINDS[cut.kind], mark=mark, text=text, frees=frees, fence=fence)


def _straight_from(cut: Cut, earlier: Sequence[Cut], kerf: Nm) -> Nm:
    """Give where the edge lies that runs along the fence: behind an earlier rip, or the board's own. [nm]"""
    behind = [
        rip.at_nm + kerf
        for rip in earlier
        if rip.kind is CutKind.RIP
        and rip.at_nm < cut.at_nm
        and rip.from_nm < cut.to_nm
        and cut.from_nm < rip.to_nm
    ]
    return max(behind, default=0)


def _angled_step(cut: Cut, frees: tuple[Freed, ...], piece: AsHung) -> Step:
    """Tell an angled crosscut by its marks on both long edges of the strip, and how the piece hangs."""
    edge, _ = piece.board_edges
    angle, lean = _angle(cut)
    text = f"{angle} {lean}; {cut.label}: {piece.how}, near edge {edge}"
    mark = f"near {piece.firm(cut.at_nm)},\nfar {piece.firm(cut.other_at_nm)}"
    return Step(kind=_KINDS[cut.kind], mark=mark, text=text, frees=frees)


def _angle(cut: Cut) -> tuple[str, str]:
    """Say how far a cut leans, and from what: from the edge as well where no mitre saw swings so far."""
    degrees = cut.angle_mdeg / _DEGREE
    besides = f" ({90 - degrees:.1f}° off the edge)" if degrees > _STEEP else ""
    return f"{degrees:.1f}°", f"from square{besides}"


def _bench_steps(cuts: Sequence[Cut], piece: AsHung) -> Iterator[Step]:
    for cut in cuts:
        if cut.notch is not None:
            mark, text = _notch(cut.notch, cut.what, piece)
        elif cut.kind is CutKind.RIP:
            mark, text = "", _tongue(cut, piece)
        else:
            mark, text = _line(cut, piece)
        yield Step(kind=_KINDS[cut.kind], mark=mark, text=text)


def _notch(notch: Rectangle, what: str, piece: AsHung) -> tuple[str, str]:
    mark = f"{piece.firm(notch.width_nm)} wide,\n{piece.firm(notch.height_nm)} high"
    right, up = piece.firm(notch.left), piece.firm(notch.bottom)
    return mark, f"{right} from its left, {up} from below, for {what}"


def _tongue(cut: Cut, piece: AsHung) -> str:
    edge, other = piece.board_edges
    off = edge if cut.at_nm < piece.piece.across_from_nm else other
    return f"{cut.what.removesuffix(' off')} off the {off} edge".capitalize()


def _line(cut: Cut, piece: AsHung) -> tuple[str, str]:
    """Say where a sloping line runs: from mark to mark, with its angle or with both widths."""
    blank = piece.piece
    if cut.kind is CutKind.ANGLED:
        start, end = (cut.at_nm, cut.from_nm), (cut.other_at_nm, cut.to_nm)
    else:
        start, end = (cut.from_nm, cut.at_nm), (cut.to_nm, cut.other_at_nm)
    first, last = sorted(piece.from_corner(*point) for point in (start, end))
    marks = f"line from {_corner(piece, first)} to {_corner(piece, last)}"
    if cut.kind is CutKind.ANGLED:
        angle, lean = _angle(cut)
        return angle, f"{lean}: {marks}"
    if (cut.from_nm, cut.to_nm) == (blank.along_from_nm, blank.along_to_nm):
        left, right = (piece.inches(width) for width in (piece.hung.width_left_nm, piece.hung.width_right_nm))
        return f"{left} to {right}", f"wide, {piece.ends[0]} end to {piece.ends[1]} end: {marks}"
    return "", marks.capitalize()


def _corner(piece: AsHung, point: Point) -> str:
    """Tell a mark on a piece; a hair outside it, since blanks are rounded up, is on its side."""
    right, up = (piece.firm(max(0, place)) for place in point)
    return f"{right}{FIRM}right and {up}{FIRM}up"


def _board_size(board: Board, tape: TapeStyle) -> str:
    width = write_inches(board.width_start_nm, tape)
    if board.tapered:
        width = f"{width} to {write_inches(board.width_end_nm, tape)}"
    return f"{write_length(board.length_nm, tape)} × {width}"


def _about(board: Board, tape: TapeStyle) -> str:
    said = (
        f"{write_inches(board.thickness_nm, tape)} thick",
        board.profile.kind.value,
        board.species,
        f"lot {board.lot}" if board.lot else "",
        board.tone,
        board.note,
    )
    return ", ".join(part for part in said if part)


def _paint(job: Job, board: Board) -> str:
    """Say at the head of a board what its paint asks for before the saw; nothing where none is told of."""
    paint = paint_of(job, board)
    if paint is Paint.LEAD:
        return "lead paint: see What can hurt you"
    return "test its paint first" if paint is Paint.UNKNOWN and tells_of_paint(job, board) else ""


def _flaws(board: Board, tape: TapeStyle) -> Iterator[str]:
    for number, flaw in enumerate(board.flaws, start=1):
        counted = f"{number} " if len(board.flaws) > 1 else ""
        face = f", {flaw.face} face" if flaw.face else ""
        stretch = f"{write_inches(flaw.start_nm, tape)} to {write_inches(flaw.end_nm, tape)}"
        yield f"{counted}{flaw.what} {stretch} ({flaw.severity}{face})"


def _offcut(offcut: Offcut, board: Board, tape: TapeStyle) -> str:
    size = f"{write_inches(offcut.length_nm, tape)} × {write_inches(offcut.width_nm, tape)}"
    start, end = (write_inches(mark, tape) for mark in (offcut.along_from_nm, offcut.along_to_nm))
    near, far = (write_inches(mark, tape) for mark in (offcut.across_from_nm, offcut.across_to_nm))
    return f"{size}: along {start} to {end}, across {near} to {far}; write {board.id} on it"
