"""Which straight cuts, from edge to edge, free rectangles from a board, and in how few passes.

Positions lie along the board from its marked end and across it from its reference edge. A cut stands at its
mark and the blade goes beyond it, so the kerf comes out of what lies farther on.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from typing import NamedTuple, TypeAlias

from plankwright.layout.offcuts import width_at_nm
from plankwright.measure import Nm
from plankwright.model import Board, CutKind


class Patch(NamedTuple):
    """A rectangle on a board. [nm]"""

    along_from: Nm
    along_to: Nm
    across_from: Nm
    across_to: Nm

    @property
    def area(self) -> int:
        """[nm²]."""
        return (self.along_to - self.along_from) * (self.across_to - self.across_from)

    def holds(self, other: "Patch") -> bool:
        """Whether another rectangle lies inside this one."""
        return (
            self.along_from <= other.along_from
            and other.along_to <= self.along_to
            and self.across_from <= other.across_from
            and other.across_to <= self.across_to
        )

    def common(self, other: "Patch") -> "Patch | None":
        """Give what this rectangle has in common with another, if it is more than a line."""
        both = Patch(
            max(self.along_from, other.along_from),
            min(self.along_to, other.along_to),
            max(self.across_from, other.across_from),
            min(self.across_to, other.across_to),
        )
        return both if both.along_from < both.along_to and both.across_from < both.across_to else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pass:
    """One straight pass of a saw.

    Parameters
    ----------
    kind
        Crosscut or rip.
    at_nm
        The mark. [nm]
    through
        The part of the board that is cut.
    near, far
        What lies before the kerf and beyond it; nothing where the blade takes it all.
    """

    kind: CutKind
    at_nm: Nm
    through: Patch
    near: Patch | None
    far: Patch | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sawing:
    """What the saws take and what they can do.

    Parameters
    ----------
    crosscut_kerf_nm, rip_kerf_nm
        Width that the blade takes. [nm]
    crosscut_nm, rip_nm
        Widest board that is crosscut, and widest strip that is ripped; nothing when that is not judged. [nm]
    """

    crosscut_kerf_nm: Nm
    rip_kerf_nm: Nm
    crosscut_nm: Nm | None = None
    rip_nm: Nm | None = None


def whole_board(board: Board) -> Patch:
    """Give the rectangle that a board, taper and all, just fits into."""
    return Patch(0, board.length_nm, 0, max(board.width_start_nm, board.width_end_nm))


def fewest_passes(
    board: Board,
    pieces: Sequence[Patch],
    keep: Sequence[Patch],
    sawing: Sawing,
    *,
    rip_first: bool,
    part: Patch | None = None,
) -> tuple[Pass, ...] | None:
    """Find the fewest passes that free all pieces and go through nothing that is to be kept.

    Parameters
    ----------
    board
        The board as it lies in the pile.
    pieces
        What is to be freed.
    keep
        What must stay whole besides.
    sawing
        The saws.
    rip_first
        Whether to rip first where crosscutting first would take as many passes.
    part
        What there is of the board; all of it when left out.

    Returns
    -------
    tuple[Pass, ...] | None
        In the order of work: a saw that is in hand goes on as long as there is something for it, from the
        marked end and from the reference edge on. Nothing when no straight cuts of these saws will do.
    """
    kinds = (CutKind.RIP, CutKind.CROSSCUT) if rip_first else (CutKind.CROSSCUT, CutKind.RIP)

    @cache
    def fewest(part: Patch) -> tuple[Pass, ...] | None:
        inside = [piece for piece in pieces if part.holds(piece)]
        if not inside or inside == [part]:
            return ()
        in_the_way = [*inside, *(patch for patch in keep if part.holds(patch))]
        best: tuple[Pass, ...] | None = None
        for one in _passes(part, inside, sawing, kinds):
            if not _goes_clear(one, in_the_way, sawing) or not _can_be_made(one, board, sawing, inside):
                continue
            near = fewest(one.near) if one.near else ()
            far = fewest(one.far) if one.far else ()
            if near is None or far is None:
                continue
            if best is None or 1 + len(near) + len(far) < len(best):
                best = (one, *near, *far)
        return best

    found = fewest(part or whole_board(board))
    return None if found is None else _in_order_of_work(found)


def parts_without(
    whole: Patch,
    taken: Sequence[Patch],
    spared: Sequence[Patch],
    sawing: Sawing,
    of_use: Callable[[Patch], bool],
) -> list[Patch]:
    """Cut a part up until what is taken is out of it, setting free as much as can be with each pass.

    Parameters
    ----------
    whole
        A part that the saws can crosscut.
    taken
        What is cut out of it.
    spared
        What is not, but must not be cut through either.
    sawing
        The saws.
    of_use
        Whether a part is worth keeping.

    Returns
    -------
    list of Patch
        What is left and of use, whatever lies before a cut before what lies beyond it.
    """
    if not taken:
        return [whole] if of_use(whole) else []
    best: tuple[int, list[Patch]] | None = None
    for one in _passes(whole, [*taken, *spared], sawing, (CutKind.CROSSCUT, CutKind.RIP)):
        if not (_goes_clear(one, [*taken, *spared], sawing) and _is_in_reach(one, sawing)):
            continue
        sides = [side for side in (one.near, one.far) if side]
        free = sum(side.area for side in sides if of_use(side) and not any(map(side.common, taken)))
        if best is None or free > best[0]:
            best = free, sides
    if best is None:
        return []
    return [
        part
        for side in best[1]
        for part in parts_without(
            side, list(filter(side.holds, taken)), list(filter(side.holds, spared)), sawing, of_use
        )
    ]


def leftovers(whole: Patch, passes: Sequence[Pass], pieces: Sequence[Patch]) -> tuple[Patch, ...]:
    """Give every part that the passes leave of a whole besides the pieces, edges as found and all."""
    cut_up = {one.through for one in passes}
    parts = {whole, *(side for one in passes for side in (one.near, one.far) if side)}
    return tuple(sorted(parts - cut_up - set(pieces)))


_Kinds: TypeAlias = tuple[CutKind, CutKind]


def _passes(part: Patch, pieces: list[Patch], sawing: Sawing, kinds: _Kinds) -> Iterator[Pass]:
    """Give the passes along the sides of the pieces: the kind to be preferred first, then by their marks."""
    for kind in kinds:
        if kind is CutKind.CROSSCUT:
            kerf, start, end = sawing.crosscut_kerf_nm, part.along_from, part.along_to
            sides = [(piece.along_from, piece.along_to) for piece in pieces]
        else:
            kerf, start, end = sawing.rip_kerf_nm, part.across_from, part.across_to
            sides = [(piece.across_from, piece.across_to) for piece in pieces]
        marks = {first - kerf for first, _ in sides if first > start}
        marks |= {last for _, last in sides if last < end}
        for mark in sorted(marks):
            yield _pass(kind, mark, part, kerf)


def _pass(kind: CutKind, mark: Nm, part: Patch, kerf: Nm) -> Pass:
    beyond = mark + kerf
    if kind is CutKind.CROSSCUT:
        near, far = part._replace(along_to=mark), part._replace(along_from=beyond)
        start, end = part.along_from, part.along_to
    else:
        near, far = part._replace(across_to=mark), part._replace(across_from=beyond)
        start, end = part.across_from, part.across_to
    return Pass(
        kind=kind,
        at_nm=mark,
        through=part,
        near=near if mark > start else None,
        far=far if beyond < end else None,
    )


def _goes_clear(one: Pass, patches: list[Patch], sawing: Sawing) -> bool:
    if one.kind is CutKind.CROSSCUT:
        beyond = one.at_nm + sawing.crosscut_kerf_nm
        return all(patch.along_to <= one.at_nm or patch.along_from >= beyond for patch in patches)
    beyond = one.at_nm + sawing.rip_kerf_nm
    return all(patch.across_to <= one.at_nm or patch.across_from >= beyond for patch in patches)


def _can_be_made(one: Pass, board: Board, sawing: Sawing, pieces: list[Patch]) -> bool:
    """Whether a saw is big enough: the whole width is crosscut, the narrower side is ripped off.

    A rip with no piece on one side takes off waste only, which any rip saw does strip by strip.
    """
    part = one.through
    if one.kind is CutKind.CROSSCUT:
        capacity = sawing.crosscut_nm
        needed = min(part.across_to, width_at_nm(board, one.at_nm)) - part.across_from
    else:
        capacity = sawing.rip_nm
        beyond = [piece.across_from > one.at_nm for piece in pieces]
        needed = (
            0
            if all(beyond) or not any(beyond)
            else min(one.at_nm - part.across_from, part.across_to - one.at_nm - sawing.rip_kerf_nm)
        )
    return capacity is None or (capacity > 0 and needed <= capacity)


def _is_in_reach(one: Pass, sawing: Sawing) -> bool:
    """Whether a rip saw reaches the narrower side of a pass, whatever is cut from either."""
    if one.kind is CutKind.CROSSCUT or sawing.rip_nm is None:
        return True
    part = one.through
    far = part.across_to - one.at_nm - sawing.rip_kerf_nm
    return sawing.rip_nm > 0 and min(one.at_nm - part.across_from, far) <= sawing.rip_nm


def _in_order_of_work(passes: tuple[Pass, ...]) -> tuple[Pass, ...]:
    waiting, order = list(passes), list[Pass]()
    while waiting:
        not_yet = {side for one in waiting for side in (one.near, one.far)}
        ready = [one for one in waiting if one.through not in not_yet]
        in_hand = order[-1].kind if order else None
        order.append(min(ready, key=lambda one: (one.kind is not in_hand, one.through, one.at_nm)))
        waiting.remove(order[-1])
    return tuple(order)
