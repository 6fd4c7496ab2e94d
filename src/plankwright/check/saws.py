"""Rule 9: every cut is one that the listed saws can make.

The pieces of a board are freed by cuts that each go right through the part that is left, from edge to edge:
across it (crosscut) or along it (rip). Any cut that can be made may be made first: the parts that it leaves
are no wider than before, so whatever could be cut still can, and within the same capacities. So the cuts are
taken as they come.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot

from plankwright.check.boards import clashes, width_at
from plankwright.check.case import Case, Hung, SurfaceCase
from plankwright.check.done import hangs_as_cut
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.shapes import polygons
from plankwright.check.slack import exceeds
from plankwright.check.wording import tell
from plankwright.measure import Nm
from plankwright.model import Board, Job, SawKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What a cut has left of a board, and the pieces still in it. [nm]"""

    along_from: Nm
    along_to: Nm
    across_from: Nm
    across_to: Nm
    pieces: tuple[Hung, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One way to saw through a part.

    Parameters
    ----------
    kind
        Across or along.
    needs_nm
        The capacity that it needs. [nm]
    parts
        What it leaves, so far as pieces are in it.
    """

    kind: SawKind
    needs_nm: Nm
    parts: tuple[Part, ...]


def check_cuts(case: Case) -> Iterator[Finding]:
    """Find boards that no straight cuts from edge to edge, within the saws' capacity, free the pieces of."""
    if not case.job.saws:
        return
    for board, part, pieces in case.by_part:
        if any(clashes(case.job.rules, pieces)):
            continue  # Pieces that overlap cannot be cut apart; that is told already.
        widest = max(board.width_start_nm, board.width_end_nm)
        whole = Part(
            along_from=0 if part is None else part.along_from_nm,
            along_to=board.length_nm if part is None else part.along_to_nm,
            across_from=0 if part is None else part.across_from_nm,
            across_to=widest if part is None else part.across_to_nm,
            pieces=pieces,
        )
        for stuck, passes in _stuck_parts(case.job, board, whole):
            yield from _tell_stuck(case.job, board, stuck, passes)


def check_angled_cuts(case: SurfaceCase) -> Iterator[Finding]:
    """Find angled ends that are longer along the cut than the crosscut saws reach.

    A slope through the whole width of a piece is cut across, and so is one through a corner that is steeper
    than 45 degrees to the course; a flatter one is ripped to a taper or sawn by hand, and is not judged.
    """
    capacity = case.job.saw_capacity_nm(SawKind.CROSSCUT)
    if capacity is None:
        return
    for hung in case.judged:
        if hangs_as_cut(case, hung):
            continue
        cut = max(_angled_cuts(case, hung), default=0.0)
        if exceeds(cut, capacity):
            long, reach = tell(case.job.tape, cut, capacity)
            message = f"Its angled end is {long} long along the cut; the saws crosscut up to {reach}."
            yield found(
                FindingCode.ANGLED_CUT_TOO_LONG,
                hung.place,
                message,
                measured=cut,
                allowed=capacity,
            )


def _angled_cuts(case: SurfaceCase, hung: Hung) -> Iterator[float]:
    for shape in polygons(hung.within):
        corners = [case.frame.point(x, y) for x, y in shape.exterior.coords]
        for (u_from, v_from), (u_to, v_to) in pairwise(corners):
            along, across = abs(u_to - u_from), abs(v_to - v_from)
            through = not exceeds(hung.v_to - hung.v_from, across)
            if exceeds(along, 0) and exceeds(across, 0) and (through or across >= along):
                yield hypot(along, across)


def _stuck_parts(job: Job, board: Board, whole: Part) -> Iterator[tuple[Part, tuple[Pass, ...]]]:
    """Saw a board up and give the parts that no saw can go on with, with the passes that it would take."""
    parts = [whole]
    while parts:
        part = parts.pop()
        beyond_reach = []
        for each in _passes(job, board, part):
            if (capacity := _capacity(job, each.kind)) > 0 and not exceeds(each.needs_nm, capacity):
                parts.extend(each.parts)
                break
            beyond_reach.append(each)
        else:
            if beyond_reach or len(part.pieces) > 1:
                yield part, tuple(beyond_reach)


def _passes(job: Job, board: Board, part: Part) -> Iterator[Pass]:
    """Give every pass along the end or the edge of a piece that goes through no piece.

    A pass between pieces can be moved until it touches one without needing more capacity, so no other need be
    tried. A rip with no piece on one side only takes waste off, which any rip saw does strip by strip.
    """
    kerf = job.rules.crosscut_kerf_nm
    extents = [(hung.piece.along_from_nm, hung.piece.along_to_nm) for hung in part.pieces]
    for mark, sides in _marks(extents, (part.along_from, part.along_to), kerf):
        before, beyond = _sorted_out(part.pieces, sides)
        yield Pass(
            kind=SawKind.CROSSCUT,
            needs_nm=min(part.across_to, width_at(board, mark)) - part.across_from,
            parts=_with_pieces(
                board,
                replace(part, along_to=mark, pieces=before),
                replace(part, along_from=mark + kerf, pieces=beyond),
            ),
        )
    kerf = job.rules.rip_kerf_nm
    extents = [(hung.piece.across_from_nm, hung.piece.across_to_nm) for hung in part.pieces]
    for mark, sides in _marks(extents, (part.across_from, part.across_to), kerf):
        before, beyond = _sorted_out(part.pieces, sides)
        yield Pass(
            kind=SawKind.RIP,
            needs_nm=min(mark - part.across_from, part.across_to - mark - kerf) if before and beyond else 0,
            parts=_with_pieces(
                board,
                replace(part, across_to=mark, pieces=before),
                replace(part, across_from=mark + kerf, pieces=beyond),
            ),
        )


def _marks(
    pieces: list[tuple[Nm, Nm]], part: tuple[Nm, Nm], kerf: Nm
) -> Iterator[tuple[Nm, tuple[bool, ...]]]:
    """Give where a blade can pass, and of each piece whether it lies beyond; in one direction."""
    for mark in sorted({edge for start, end in pieces for edge in (start - kerf, end)}):
        takes_wood = exceeds(mark + kerf, part[0]) and exceeds(part[1], mark)
        beyond = tuple(not exceeds(mark + kerf, start) for start, _ in pieces)
        if takes_wood and all(
            far or not exceeds(end, mark) for far, (_, end) in zip(beyond, pieces, strict=True)
        ):
            yield mark, beyond


def _sorted_out(
    pieces: tuple[Hung, ...], beyond: tuple[bool, ...]
) -> tuple[tuple[Hung, ...], tuple[Hung, ...]]:
    """Part the pieces into those before a cut and those beyond it."""
    sided = tuple(zip(pieces, beyond, strict=True))
    return tuple(hung for hung, far in sided if not far), tuple(hung for hung, far in sided if far)


def _with_pieces(board: Board, *parts: Part) -> tuple[Part, ...]:
    """Keep the parts with pieces in them, each no wider than its board is there."""
    return tuple(
        replace(
            part,
            across_to=min(
                part.across_to, max(width_at(board, part.along_from), width_at(board, part.along_to))
            ),
        )
        for part in parts
        if part.pieces
    )


def _capacity(job: Job, kind: SawKind) -> Nm:
    return job.saw_capacity_nm(kind) or 0


def _tell_stuck(job: Job, board: Board, stuck: Part, passes: tuple[Pass, ...]) -> Iterator[Finding]:
    names = ", ".join(hung.piece.label for hung in stuck.pieces)
    surface_id, where = stuck.pieces[0].surface_id, f"board {board.id}"
    if not passes:
        message = f"No straight cut from edge to edge parts pieces {names} without going through one of them."
        yield found(FindingCode.NO_STRAIGHT_CUT, (surface_id, where), message)
    for code, kind, cut in (
        (FindingCode.CROSSCUT_TOO_WIDE, SawKind.CROSSCUT, "a crosscut {} wide"),
        (FindingCode.RIP_TOO_WIDE, SawKind.RIP, "a rip with {} on the narrower side of the blade"),
    ):
        needs = min((each.needs_nm for each in passes if each.kind is kind), default=None)
        if needs is not None:
            capacity = _capacity(job, kind)
            wide, reach = tell(job.tape, needs, capacity)
            have = f"the saws reach {reach}" if capacity else f"no saw is listed to {kind} with"
            message = f"To free {names} takes {cut.format(wide)}; {have}."
            yield found(code, (surface_id, where), message, measured=needs, allowed=capacity)
