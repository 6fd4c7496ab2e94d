"""What is done to each board before it is cut, in the order of work, tool by tool."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from plankwright.draw.subject import Subject, subject
from plankwright.layout.joints import Joint
from plankwright.layout.sawing import saw_boards
from plankwright.measure import Nm, write_inches
from plankwright.model import (
    NOTHING_DONE,
    Board,
    BoardCuts,
    CutKind,
    EdgeTreatment,
    Job,
    Layout,
    NailsLeft,
    Paint,
    Piece,
    Severity,
    Standing,
    Treatment,
)
from plankwright.paper.leaf import DONE, Grid, Leaf, Part
from plankwright.trade.moisture.facts import NEAR_ENOUGH_PCT, NO_FORMULA
from plankwright.trade.readying.facts import (
    BEETLE_MOISTURE_PCT,
    CORE_C,
    CORE_MINUTES,
    HEAT,
    LARGE_PORED,
    LARVAE,
    MOULD,
    NAILS_FIRST,
    PLANE_UP_TO_NM,
    POWDERPOST,
    SHIM_OR_PLANE,
    SOLID_PILE_TIMES,
)
from plankwright.trade.readying.signs import shows_insects, shows_mould, shows_rot
from plankwright.trade.source import Said
from plankwright.workshop.advice.woods import middle_pct, wood_of
from plankwright.workshop.wording import capital, counted


class Station(StrEnum):
    """Where something is done to a board, in the order of work."""

    LOOK = "look"
    NAILS = "nails"
    METAL = "detector"
    HEAT = "heat, dry"
    ENDS = "ends"
    EDGES = "edges"
    THICKNESS = "thickness"


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Something to do to a board.

    Parameters
    ----------
    station
        Where.
    what
        In a few words.
    done
        Whether the tally says that it is done.
    """

    station: Station
    what: str
    done: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardWork:
    """What is done to a board before it is cut.

    Parameters
    ----------
    board_id
        The board.
    tasks
        In the order of work.
    """

    board_id: str
    tasks: tuple[Task, ...]

    def at(self, station: Station) -> tuple[Task, ...]:
        """Give what is done to it at a station."""
        return tuple(task for task in self.tasks if task.station is station)


@dataclass(frozen=True, slots=True, kw_only=True)
class Readying:
    """What is done to the boards of a job before they are cut.

    Parameters
    ----------
    boards
        Those that a layout needs, in the order in which they are cut; without one every board, as tallied.
    insects, mould
        Boards with signs of them, whether needed or not.
    refused
        Treated boards, which are kept out.
    """

    boards: tuple[BoardWork, ...]
    insects: tuple[str, ...]
    mould: tuple[str, ...]
    refused: tuple[str, ...]


def ready_boards(job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE) -> Readying:
    """List what is done to each board before it is cut.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it, which says which boards are needed and which of them meet.
    standing
        How far the job has come: what was sawn already is ready.
    """
    usable = [board for board in job.boards if board.treatment is Treatment.NONE]
    insects = tuple(board.id for board in usable if shows_insects(_words(board)))
    cuts = () if layout is None else saw_boards(job, layout)
    order = [board.id for board in usable] if layout is None else [one.board_id for one in cuts]
    needed = [job.board(name) for name in dict.fromkeys(order) if name not in standing.sawn]
    work = _ToDo(
        job=job,
        rips=_rips(cuts),
        tongues_off=frozenset() if layout is None else _tongues_off(layout),
        thickness={} if layout is None else _thickness_work(job, layout),
        infested=frozenset(job.board(name).lot for name in insects),
    )
    return Readying(
        boards=tuple(BoardWork(board_id=board.id, tasks=tuple(work.of(board))) for board in needed),
        insects=insects,
        mould=tuple(board.id for board in usable if shows_mould(_words(board))),
        refused=tuple(board.id for board in job.boards if board.treatment is not Treatment.NONE),
    )


def _words(board: Board) -> str:
    return " ".join((*(flaw.what for flaw in board.flaws), board.note))


def _rips(cuts: Sequence[BoardCuts]) -> Counter[str]:
    """Count the rips of each board."""
    return Counter(
        board.board_id for board in cuts for cut in board.cuts if cut.kind in {CutKind.RIP, CutKind.TAPER_RIP}
    )


def _tongues_off(layout: Layout) -> frozenset[str]:
    """Give the boards of which a tongue is ripped off."""
    return frozenset(
        piece.board_id for piece in layout.pieces if EdgeTreatment.TONGUE_OFF in {piece.near, piece.far}
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _ToDo:
    """Says what is done to a board, with what a layout tells of all of them at hand."""

    job: Job
    rips: Counter[str]
    tongues_off: frozenset[str]
    thickness: dict[str, list[Task]]
    infested: frozenset[str]

    def of(self, board: Board) -> Iterator[Task]:
        nails = board.nails
        pulled = nails in {NailsLeft.PULLED, NailsLeft.NIPPED, NailsLeft.CHECKED}
        yield self._look(board)
        yield Task(station=Station.NAILS, what="nipped" if nails is NailsLeft.NIPPED else "pull", done=pulled)
        yield Task(station=Station.METAL, what="pass over", done=nails is NailsLeft.CHECKED)
        yield from self._heat(board)
        yield from self._ends(board)
        yield from self._edges(board)
        yield from self.thickness.get(board.id, ())

    def _look(self, board: Board) -> Task:
        words = _words(board)
        known = self.job.lot_of(board)
        signs = [
            told
            for told, met in (
                ("insects", shows_insects(words)),
                ("mould", shows_mould(words)),
                ("rot", shows_rot(words)),
                ("paint: lead", known is not None and known.paint is Paint.LEAD),
                ("test paint", known is None or known.paint is Paint.UNKNOWN),
            )
            if met
        ]
        return Task(station=Station.LOOK, what=", ".join(signs) or "splits, holes")

    def _heat(self, board: Board) -> Iterator[Task]:
        if shows_insects(_words(board)):
            yield Task(station=Station.HEAT, what="heat: insects")
        elif board.lot in self.infested:
            yield Task(station=Station.HEAT, what="heat with its lot")
        read = board.moisture_pct
        if read is not None and read - middle_pct(self.job) > NEAR_ENOUGH_PCT.value:
            yield Task(station=Station.HEAT, what=f"dry from {read:g} %")

    def _ends(self, board: Board) -> Iterator[Task]:
        trim, tape = self.job.rules.end_trim_nm, self.job.tape
        lost = [
            f"{write_inches(flaw.start_nm, tape)}–{write_inches(flaw.end_nm, tape)}"
            for flaw in board.flaws
            if flaw.severity is Severity.LOST
        ]
        told = [f"trim {write_inches(trim, tape)}"] if trim else []
        if lost:
            told.append(f"out {', '.join(lost)}")
        if told:
            yield Task(station=Station.ENDS, what="; ".join(told))

    def _edges(self, board: Board) -> Iterator[Task]:
        loss, rips = self.job.rules.straight_edge_loss_nm, self.rips[board.id]
        if board.profile.milled:
            off = board.id in self.tongues_off
            yield Task(
                station=Station.EDGES, what="clean; a tongue comes off" if off else "clean tongue, groove"
            )
        elif loss:
            more = f", {rips} rip{'' if rips == 1 else 's'}" if rips else ""
            told = f"{write_inches(loss, self.job.tape)} off a side{more}"
            yield Task(station=Station.EDGES, what=told)


def _thickness_work(job: Job, layout: Layout) -> dict[str, list[Task]]:
    """Say what is done where boards of unlike thickness butt."""
    work: dict[str, list[Task]] = {}
    for part in layout.surfaces:
        what = subject(job, part)
        by_label = {row.piece.label: row.piece for row in what.rows}
        for piece in by_label.values():
            if piece.shim_nm:
                shim = write_inches(piece.shim_nm, job.tape)
                _note(work, piece.board_id, f"shim {piece.label} by {shim}")
        for joint in what.joints:
            if joint.in_sight:
                _ease(job, what, joint, by_label, work)
    return work


def _ease(
    job: Job, what: Subject, joint: Joint, by_label: dict[str, Piece], work: dict[str, list[Task]]
) -> None:
    """Say what is done with a step at a joint, on the thicker of both boards."""
    pair = (by_label[joint.before], by_label[joint.after])
    thinner, thicker = sorted(pair, key=lambda piece: _front_nm(what, piece))
    step: Nm = _front_nm(what, thicker) - _front_nm(what, thinner)
    if not step:
        return
    told = write_inches(step, job.tape)
    where = f"{joint.before} | {joint.after}"
    if step <= job.rules.thickness_tolerance_nm:
        _note(work, thicker.board_id, f"ease {told} at {where}")
    elif step <= PLANE_UP_TO_NM.value:
        _note(work, thicker.board_id, f"plane {told} off the back of {thicker.label}")
    else:
        _note(work, thicker.board_id, f"{told} thicker at {where}: swap")


def _front_nm(what: Subject, piece: Piece) -> Nm:
    """Give how far the face of a piece stands out. [nm]"""
    return what.job.board(piece.board_id).thickness_nm + piece.shim_nm


def _note(work: dict[str, list[Task]], board_id: str, what: str) -> None:
    work.setdefault(board_id, []).append(Task(station=Station.THICKNESS, what=what))


def readying_leaf(job: Job, readying: Readying) -> Leaf:
    """Tell what is done to each board before it is cut.

    Parameters
    ----------
    job
        The job.
    readying
        What was listed for it.
    """
    left = sum(not task.done for work in readying.boards for task in work.tasks)
    return Leaf(
        title="Getting boards ready",
        headline=Said(
            f"{capital(counted(len(readying.boards), 'board'))}, {left} things to do. Take all boards "
            "through a column before the next: no saw and no planer before the detector was over the "
            "board.",
            (NAILS_FIRST,),
        ),
        parts=(
            Part(title="Insects and mould", said=tuple(_tell_signs(job, readying))),
            Part(title="Thickness", said=tuple(_tell_thickness(job))),
            Part(title="Board by board", grid=_grid(readying)),
        ),
    )


def _tell_signs(job: Job, readying: Readying) -> Iterator[Said]:
    if readying.refused:
        yield Said(f"Treated, kept out: {', '.join(readying.refused)}.")
    low, high = SOLID_PILE_TIMES.value
    if readying.insects:
        yield Said(
            f"Signs of insects: {', '.join(readying.insects)}. Keep their lots outside until their core was "
            f"at {CORE_C.value:.0f} °C (133 °F) for {CORE_MINUTES.value} minutes; piled without stickers "
            f"that takes {low} to {high} times as long. It kills what is in them and keeps nothing out "
            "later.",
            (HEAT, LARVAE),
        )
        pored = [name for name in readying.insects if _large_pored(job.board(name))]
        if pored:
            yield Said(
                f"Of large-pored hardwood, in which powderpost beetles live dry: {', '.join(pored)}. A "
                "finish on every face keeps them from laying eggs.",
                (POWDERPOST,),
            )
    else:
        yield Said(
            "No signs of insects were tallied. Reused wood often has larvae all the same: look for fresh "
            f"fine dust below holes, most of all in boards of {BEETLE_MOISTURE_PCT.value:.0f} % moisture or "
            "more.",
            (LARVAE,),
        )
    if readying.mould:
        yield Said(
            f"Mould: {', '.join(readying.mould)}. Brush it off outside, with a mask, and dry the board: it "
            "comes back on wood that stays damp.",
            (MOULD,),
        )
    yield Said(
        f"Boards more than {NEAR_ENOUGH_PCT.value:g} points over the room's {middle_pct(job):.1f} % are "
        "dried first.",
        (NO_FORMULA,),
    )


def _large_pored(board: Board) -> bool:
    return (
        any(not LARGE_PORED.isdisjoint(one.words) for one in wood_of(board).species)
        and wood_of(board).name != "wood of unknown species"
    )


def _tell_thickness(job: Job) -> Iterator[Said]:
    tolerance = write_inches(job.rules.thickness_tolerance_nm, job.tape)
    yield Said(
        f"A step of up to {tolerance} at a joint in sight is eased with sandpaper once both hang; a thinner "
        "board is shimmed, a thicker one planed on its back up to "
        f"{write_inches(PLANE_UP_TO_NM.value, job.tape)}, else swapped.",
        (SHIM_OR_PLANE,),
    )


def _grid(readying: Readying) -> Grid | None:
    """Give a row a board, and a column for each station that has anything to do."""
    stations = [station for station in Station if any(work.at(station) for work in readying.boards)]
    rows = tuple(
        (work.board_id, *(_cell(work.at(station)) for station in stations)) for work in readying.boards
    )
    columns = ("board", *(station.value for station in stations))
    return Grid(columns=columns, rows=rows, ticks=tuple(range(1, len(columns)))) if rows else None


def _cell(tasks: tuple[Task, ...]) -> str:
    return "; ".join(f"{task.what}{DONE}" if task.done else task.what for task in tasks)
