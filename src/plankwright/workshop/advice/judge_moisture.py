"""Are the boards ready to be hung: their moisture against the room's, and how far they will move there."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from plankwright.layout.regions import extent_in_course
from plankwright.measure import Nm
from plankwright.model import Board, Job, Layout, Rectangle, Surface, Treatment
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.trade.moisture.facts import (
    LEAST_DAYS_FAR_OFF,
    LEAST_DAYS_STACKED,
    LEAST_READABLE_PCT,
    MOST_READABLE_PCT,
    NEAR_ENOUGH_PCT,
    TONGUE_SHARE,
)
from plankwright.trade.moisture.movement import change_along, width_change
from plankwright.trade.wood.species import Species, Wood
from plankwright.workshop.advice.woods import middle_pct, moisture_of, service_pct, wood_of

_FAR_OFF_PCT = 2 * NEAR_ENOUGH_PCT.value
"""From here on boards are given longer. [points]"""


class Verdict(StrEnum):
    """Whether boards may be hung."""

    GO = "go"
    WAIT = "wait"
    MEASURE = "measure"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """The moisture of a board against the room's, or one end of the spread of a lot.

    Parameters
    ----------
    of
        The board, or the end and the lot.
    moisture_pct
        As the meter read it. [% of dry mass]
    off_pct
        How much more than the middle of the room's seasons; less than nothing where it is drier. [points]
    readable
        Whether a meter can be trusted there.
    near
        Whether it is near enough.
    """

    of: str
    moisture_pct: float
    off_pct: float
    readable: bool
    near: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """How far the boards of a surface move between the seasons, once they hang.

    Parameters
    ----------
    surface_id
        The surface.
    widest_nm
        Width of the course, or of the board, that moves farthest. [nm]
    opens_nm, closes_nm
        How much narrower it gets in the driest season and wider in the dampest: least and most. [nm]
    all_swell_nm
        How much all courses together swell, at most. [nm]
    gap_nm
        Left open along every side. [nm]
    end_opens_nm, end_closes_nm
        How much shorter the longest run gets along the grain in the driest season and longer in the dampest,
        at most. [nm]
    tongue_nm
        The shortest tongue or lap that is to stay covered; nothing where no edge is milled. [nm]
    """

    surface_id: str
    widest_nm: Nm
    opens_nm: tuple[float, float]
    closes_nm: tuple[float, float]
    all_swell_nm: float
    gap_nm: Nm
    end_opens_nm: float
    end_closes_nm: float
    tongue_nm: Nm | None

    @property
    def room(self) -> bool:
        """Whether half of all that swells finds room at either side."""
        return self.all_swell_nm / 2 <= self.gap_nm

    @property
    def tongue_covered(self) -> bool:
        """Whether enough of every tongue stays in its groove."""
        return (
            self.tongue_nm is None or self.tongue_nm - self.opens_nm[1] >= TONGUE_SHARE.value * self.tongue_nm
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Moisture:
    """Whether the boards are ready.

    Parameters
    ----------
    dry_pct, damp_pct, middle_pct
        What wood comes to in the room: in the driest season, in the dampest, and between. [% of dry mass]
    now_pct
        What it comes to in the air as it is now, where that was measured. [% of dry mass]
    readings
        Of every board that was measured and of the spreads of lots, the farthest off first.
    unmeasured
        Boards that were not and whose lot has no spread, treated ones apart.
    movements
        Surface by surface.
    woods
        Every wood of the pile.
    """

    dry_pct: float
    damp_pct: float
    middle_pct: float
    now_pct: float | None
    readings: tuple[Reading, ...]
    unmeasured: tuple[str, ...]
    movements: tuple[Movement, ...]
    woods: tuple[Wood, ...]

    @property
    def far(self) -> tuple[Reading, ...]:
        """The readings that are not near enough, or that no meter can be trusted with."""
        return tuple(reading for reading in self.readings if not (reading.near and reading.readable))

    @property
    def verdict(self) -> Verdict:
        """Go once every board that was measured is near enough, and some were."""
        if self.far:
            return Verdict.WAIT
        return Verdict.GO if self.readings else Verdict.MEASURE

    @property
    def least_days(self) -> int:
        """How long boards that are not ready are left in the room at least. [days]"""
        farthest = max((abs(reading.off_pct) for reading in self.far), default=0.0)
        return LEAST_DAYS_FAR_OFF.value if farthest > _FAR_OFF_PCT else LEAST_DAYS_STACKED.value

    @property
    def room_itself_off(self) -> bool:
        """Whether the air as it is now leads away from where the boards should be."""
        return self.now_pct is not None and abs(self.now_pct - self.middle_pct) > NEAR_ENOUGH_PCT.value


def judge_moisture(job: Job, layout: Layout | None = None) -> Moisture:
    """Judge whether the boards of a job are ready to be hung.

    Parameters
    ----------
    job
        With readings in its tally and the air of its room, as far as they were measured.
    layout
        A layout of it; without one, the widest board stands for the widest course.

    Returns
    -------
    Moisture
        The verdict and the numbers behind it.
    """
    dry, damp = service_pct(job)
    boards = [board for board in job.boards if board.treatment is Treatment.NONE]
    now = job.room.now if job.room else None
    return Moisture(
        dry_pct=dry,
        damp_pct=damp,
        middle_pct=middle_pct(job),
        now_pct=None if now is None else equilibrium_pct(now.temperature_c, now.humidity_pct),
        readings=tuple(sorted(_readings(job, boards), key=lambda reading: -abs(reading.off_pct))),
        unmeasured=tuple(
            board.id for board in boards if board.moisture_pct is None and _spread(job, board) is None
        ),
        movements=tuple(_movement(job, surface, boards, layout) for surface in job.surfaces),
        woods=tuple({wood.name: wood for wood in map(wood_of, boards)}.values()),
    )


def _readings(job: Job, boards: Sequence[Board]) -> Iterator[Reading]:
    """Give every board's reading, and both ends of the spread of each lot that has boards without one."""
    for board in boards:
        if board.moisture_pct is not None:
            yield _reading(board.id, board.moisture_pct, job)
    spreads = {board.lot: _spread(job, board) for board in boards if board.moisture_pct is None}
    for lot, spread in spreads.items():
        if spread is not None:
            for end, moisture in zip(("driest of", "dampest of"), spread, strict=True):
                yield _reading(f"{end} {lot}", moisture, job)


def _spread(job: Job, board: Board) -> tuple[float, float] | None:
    lot = job.lot_of(board) if board.lot else None
    return None if lot is None else lot.moisture_pct


def _reading(of: str, moisture_pct: float, job: Job) -> Reading:
    off = moisture_pct - middle_pct(job)
    return Reading(
        of=of,
        moisture_pct=moisture_pct,
        off_pct=off,
        readable=LEAST_READABLE_PCT.value <= moisture_pct <= MOST_READABLE_PCT.value,
        near=abs(off) <= NEAR_ENOUGH_PCT.value,
    )


def _movement(job: Job, surface: Surface, boards: Iterable[Board], layout: Layout | None) -> Movement:
    laid = [part for part in layout.surfaces if part.surface_id == surface.id] if layout else []
    hung = {piece.board_id for part in laid for piece in part.pieces}
    used = [board for board in boards if not hung or board.id in hung]
    widths = [
        (course.height_nm, job.board(piece.board_id))
        for part in laid
        for course in part.courses
        for piece in course.pieces
    ] or [(max(board.width_start_nm, board.width_end_nm), board) for board in used]
    dry, damp = service_pct(job)
    changes = [
        (width, _change(width, board, job, dry), _change(width, board, job, damp)) for width, board in widths
    ]
    still = (0.0, 0.0)
    widest, to_dry, to_damp = max(
        changes, key=lambda change: max(change[2]) - min(change[1]), default=(0, still, still)
    )
    outer = Rectangle(left=0, bottom=0, right=surface.width_nm, top=surface.height_nm)
    along_from, along_to, across_from, across_to = extent_in_course(surface, outer)
    swell_share = max((max(*damped, 0.0) / width for width, _, damped in changes), default=0.0)
    tongues = [board.profile.reach_nm for board in used if board.profile.milled]
    starts = [moisture_of(board, job) for board in used] or [middle_pct(job)]
    longest = float(along_to - along_from)
    return Movement(
        surface_id=surface.id,
        widest_nm=widest,
        opens_nm=(max(0.0, -max(to_dry)), max(0.0, -min(to_dry))),
        closes_nm=(max(0.0, min(to_damp)), max(0.0, *to_damp)),
        all_swell_nm=swell_share * (across_to - across_from),
        gap_nm=job.rules.expansion_gap_nm,
        end_opens_nm=max(0.0, -change_along(longest, max(starts), dry)),
        end_closes_nm=max(0.0, change_along(longest, min(starts), damp)),
        tongue_nm=min(tongues, default=None),
    )


def _change(width_nm: Nm, board: Board, job: Job, to_pct: float) -> tuple[float, float]:
    """Give how much a width changes from where its board is now: by the least and by the most of its wood."""
    wood, start = wood_of(board), moisture_of(board, job)
    changes = [_of_species(width_nm, one, start, to_pct) for one in _ends(wood)]
    return min(changes), max(changes)


def _ends(wood: Wood) -> tuple[Species, ...]:
    """Give the species that move least and most of those that a wood may be."""
    ordered = sorted(wood.species, key=lambda one: one.tangential)
    return ordered[0], ordered[-1]


def _of_species(width_nm: Nm, species: Species, from_pct: float, to_pct: float) -> float:
    return width_change(
        float(width_nm),
        species.tangential,
        from_pct,
        to_pct,
        total_pct=species.tangential_total_pct,
        saturation_pct=species.saturation_pct,
    )
