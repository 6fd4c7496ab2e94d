"""Are the boards ready to be hung: their moisture against the room's."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from plankwright.layout.done import to_hang
from plankwright.model import NOTHING_DONE, Board, Job, Layout, Standing, Treatment
from plankwright.trade.moisture.equilibrium import equilibrium_pct
from plankwright.trade.moisture.facts import (
    LEAST_DAYS_FAR_OFF,
    LEAST_DAYS_STACKED,
    LEAST_READABLE_PCT,
    MOST_READABLE_PCT,
    NEAR_ENOUGH_PCT,
)
from plankwright.trade.wood.species import Wood
from plankwright.workshop.advice.judge_movement import Movement, judge_movement
from plankwright.workshop.advice.woods import middle_pct, service_pct, wood_of

_FAR_OFF_PCT = 2 * NEAR_ENOUGH_PCT.value
"""From here on boards are given longer. [points]"""


class Verdict(StrEnum):
    """Whether boards may be hung."""

    GO = "go"
    WAIT = "wait"
    MEASURE = "measure"
    DONE = "done"
    BARRED = "barred"


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

    @property
    def waits(self) -> bool:
        """Whether what was read so has to wait."""
        return not (self.near and self.readable)


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
    spares
        Boards that were not judged since the layout hangs nothing of them, treated ones apart.
    hung
        Boards that were not judged since all that is hung of them hangs already.
    movements
        Surface by surface, where anything hangs.
    woods
        Every wood of the boards that move.
    """

    dry_pct: float
    damp_pct: float
    middle_pct: float
    now_pct: float | None
    readings: tuple[Reading, ...]
    unmeasured: tuple[str, ...]
    spares: tuple[str, ...]
    hung: tuple[str, ...]
    movements: tuple[Movement, ...]
    woods: tuple[Wood, ...]

    @property
    def far(self) -> tuple[Reading, ...]:
        """The readings that are not near enough, or that no meter can be trusted with."""
        return tuple(reading for reading in self.readings if reading.waits)

    @property
    def verdict(self) -> Verdict:
        """Go once every board that was measured is near enough, and some were.

        Where no board was to be judged it is done if boards hang; else none may be hung.
        """
        if self.far:
            return Verdict.WAIT
        if self.readings:
            return Verdict.GO
        if self.unmeasured:
            return Verdict.MEASURE
        return Verdict.DONE if self.hung else Verdict.BARRED

    @property
    def least_days(self) -> int:
        """How long boards that are not ready are left in the room at least. [days]"""
        farthest = max((abs(reading.off_pct) for reading in self.far), default=0.0)
        return LEAST_DAYS_FAR_OFF.value if farthest > _FAR_OFF_PCT else LEAST_DAYS_STACKED.value

    @property
    def room_itself_off(self) -> bool:
        """Whether the air as it is now leads away from where the boards should be."""
        return self.now_pct is not None and abs(self.now_pct - self.middle_pct) > NEAR_ENOUGH_PCT.value


def judge_moisture(job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE) -> Moisture:
    """Judge whether the boards of a job are ready to be hung.

    Parameters
    ----------
    job
        With readings in its tally and the air of its room, as far as they were measured.
    layout
        A layout of it: only the boards that it hangs are judged. Without one, or with one that hangs
        nothing, all are, and each stands for a course.
    standing
        How far the job has come: boards are not judged any more once all that is hung of them hangs. They
        move all the same.

    Returns
    -------
    Moisture
        The verdict and the numbers behind it.
    """
    laid = layout if layout is not None and layout.pieces else None
    untreated = [board for board in job.boards if board.treatment is Treatment.NONE]
    needed, hanging = _needed(job, laid, standing), _hanging(standing)
    boards = [board for board in untreated if board.id in needed]
    hung = [board for board in untreated if board.id in hanging - needed]
    moving = boards if laid is None else [*boards, *hung]
    dry, damp = service_pct(job)
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
        spares=tuple(board.id for board in untreated if laid is not None and board not in moving),
        hung=tuple(board.id for board in hung),
        movements=judge_movement(
            job, boards, laid, standing, {board.id for board in boards if _waits(job, board)}
        ),
        woods=tuple({wood.name: wood for wood in map(wood_of, moving)}.values()),
    )


def _needed(job: Job, layout: Layout | None, standing: Standing) -> set[str]:
    """Give the names of the boards of which a layout still hangs something, or any that are left."""
    if layout is None:
        return {
            board.id for board in job.boards if board.id not in standing.sawn or standing.parts_of(board.id)
        }
    return {piece.board_id for _, piece in to_hang(layout, standing)}


def _hanging(standing: Standing) -> set[str]:
    return {piece.board_id for row in standing.hung for piece in row.course.pieces}


def _waits(job: Job, board: Board) -> bool:
    """Whether a board has to come nearer to the room's moisture: by its reading, or by its lot's spread."""
    read = (_spread(job, board) or ()) if board.moisture_pct is None else (board.moisture_pct,)
    return any(_reading(board.id, moisture, job).waits for moisture in read)


def _readings(job: Job, boards: Sequence[Board]) -> Iterator[Reading]:
    """Give every board's reading, and both ends of the spread of each lot that has boards without one."""
    for board in boards:
        if board.moisture_pct is not None:
            yield _reading(board.id, board.moisture_pct, job)
    lots = [job.lot_of(board) for board in boards if board.moisture_pct is None]
    for lot in dict.fromkeys(lots):
        if lot is not None and lot.moisture_pct is not None:
            for end, moisture in zip(("driest of", "dampest of"), lot.moisture_pct, strict=True):
                yield _reading(f"{end} {lot.name}", moisture, job)


def _spread(job: Job, board: Board) -> tuple[float, float] | None:
    lot = job.lot_of(board)
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
