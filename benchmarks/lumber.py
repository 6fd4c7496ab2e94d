"""Saw pieces back together into the boards that they came from, with what sawing and flaws take."""

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from plankwright.layout.plan import Stick
from plankwright.measure import INCH, Nm, round_up
from plankwright.model import Board, EdgeProfile, Face, Flaw, Rules, Severity

_STEP: Nm = INCH // 8
"""A board is as long and as wide as an eighth of an inch tells."""


@dataclass(frozen=True, slots=True)
class Lane:
    """A piece that lies on a board beside others, or alone.

    Parameters
    ----------
    key
        Names the piece.
    length
        Along the board. [nm]
    width
        Of the wood that it takes up, no narrower than the piece. [nm]
    """

    key: Hashable
    length: Nm
    width: Nm


@dataclass(frozen=True, slots=True)
class Clear:
    """A stretch of a board that gives pieces.

    Parameters
    ----------
    lanes
        Side by side from the reference edge.
    stained
        The one face that a blemish shows on, if any: the other face shows on the wall.
    """

    lanes: tuple[Lane, ...]
    stained: Face | None = None


@dataclass(frozen=True, slots=True)
class Spoilt:
    """A stretch of a board that gives nothing.

    Parameters
    ----------
    length
        Along the board. [nm]
    what
        What is wrong with it.
    severity
        Whether it is lost, or only ugly on both faces.
    """

    length: Nm
    what: str
    severity: Severity


@dataclass(frozen=True, slots=True)
class Sort:
    """What boards of one lot have in common. Thickness in nm."""

    lot: str
    thickness: Nm


@dataclass(frozen=True, slots=True)
class SawnBoard:
    """A board, and where on it its pieces lie.

    Parameters
    ----------
    board
        Its id is empty: a pile gives it one.
    places
        For each piece (start, width of the lane from, face): along and across the board. [nm]
    """

    board: Board
    places: Mapping[Hashable, tuple[Nm, Nm, Face]]

    def stick(self, key: Hashable, place: int, size: tuple[Nm, Nm], widest_rip: Nm | None = None) -> Stick:
        """Give the rectangle that a piece of some length and width is cut to, the board being at a place."""
        along, across, face = self.places[key]
        length, width = size
        return Stick(
            board=place,
            along_from=along,
            along_to=along + length,
            across_from=across,
            across_to=across + width,
            face=face,
            hidden_only=False,
            thickness=self.board.thickness_nm,
            profile=EdgeProfile(),
            widest_rip=widest_rip,
        )


def saw_together(parts: Sequence[Clear | Spoilt], sort: Sort, rules: Rules) -> SawnBoard:
    """Make the smallest board that gives the pieces of its parts.

    Parameters
    ----------
    parts
        In order from the marked end. Between two clear ones lies a kerf.
    sort
        Its lot.
    rules
        For end trim, straight-edge loss and kerfs.

    Returns
    -------
    SawnBoard
        As long and as wide as must be, in whole eighths of an inch.
    """
    places: dict[Hashable, tuple[Nm, Nm, Face]] = {}
    flaws: list[Flaw] = []
    along = 0 if isinstance(parts[0], Spoilt) else rules.end_trim_nm
    width: Nm = 0
    for number, part in enumerate(parts):
        if isinstance(part, Spoilt):
            end = round_up(along + part.length, _STEP)
            flaws.append(Flaw(start_nm=along, end_nm=end, what=part.what, severity=part.severity))
            along = end
            continue
        if number and isinstance(parts[number - 1], Clear):
            along += rules.crosscut_kerf_nm
        face = Face.FRONT if part.stained is not Face.FRONT else Face.BACK
        across = rules.straight_edge_loss_nm
        for lane in part.lanes:
            places[lane.key] = along, across, face
            across += lane.width + rules.rip_kerf_nm
        width = max(width, across - rules.rip_kerf_nm + rules.straight_edge_loss_nm)
        end = along + max(lane.length for lane in part.lanes)
        flaws += _stains(part, along, end)
        along = end
    last_trim = 0 if isinstance(parts[-1], Spoilt) else rules.end_trim_nm
    length = round_up(along + last_trim, _STEP)
    if isinstance(parts[-1], Spoilt):
        flaws[-1] = replace(flaws[-1], end_nm=length)
    board = Board(
        id="?",
        lot=sort.lot,
        length_nm=length,
        width_start_nm=round_up(width, _STEP),
        width_end_nm=round_up(width, _STEP),
        thickness_nm=sort.thickness,
        flaws=tuple(flaws),
    )
    return SawnBoard(board, places)


def _stains(part: Clear, start: Nm, end: Nm) -> Iterator[Flaw]:
    """Stain the middle third of a stretch on one face."""
    if part.stained is not None:
        third = (end - start) // 3
        yield Flaw(
            start_nm=start + third,
            end_nm=end - third,
            what="stain",
            severity=Severity.BLEMISH,
            face=part.stained,
        )
