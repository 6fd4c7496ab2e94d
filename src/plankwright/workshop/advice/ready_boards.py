"""What is done to each board before it is cut, in the order of work, tool by tool.

Nothing here takes wood off: the tally measures boards as they lie, and so does the cut list.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from plankwright.layout.sawing import piece_name, saw_boards
from plankwright.measure import to_fahrenheit, write_fine, write_inches
from plankwright.model import (
    NOTHING_DONE,
    Board,
    BoardCuts,
    CutKind,
    EdgeKind,
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
from plankwright.trade.readying.signs import shows_insects, shows_mould, shows_rot, tells_heated
from plankwright.trade.readying.telltale import has_insects, paint_of, words_of
from plankwright.trade.source import Said
from plankwright.workshop.advice.level_joints import Step, Way, steps_at_joints
from plankwright.workshop.advice.woods import middle_pct, wood_of
from plankwright.workshop.wording import capital, counted


class Station(StrEnum):
    """Where something is done to a board, in the order of work."""

    LOOK = "look"
    NAILS = "nails"
    METAL = "detector"
    HEAT = "heat, dry"
    CHALK = "chalk as lost"
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
    at_saw
        What the cut list does to it afterwards, in a few words; nothing without a layout.
    """

    board_id: str
    tasks: tuple[Task, ...]
    at_saw: str = ""

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
        Boards with signs of them, whether needed or not; of insects those that were not heated since.
    refused
        Treated boards, which are kept out.
    steps
        Where boards of unlike thickness meet in sight.
    laid
        Whether there is a layout.
    """

    boards: tuple[BoardWork, ...]
    insects: tuple[str, ...]
    mould: tuple[str, ...]
    refused: tuple[str, ...]
    steps: tuple[Step, ...]
    laid: bool

    @property
    def late(self) -> tuple[Step, ...]:
        """Steps that are no task of a board in the list: the one that stands out is sawn, or hangs."""
        rows = {work.board_id for work in self.boards}
        return tuple(
            step
            for step in self.steps
            if step.way is Way.SHIM or (step.way is not Way.EASE and step.board_id not in rows)
        )


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
    insects = tuple(board.id for board in usable if has_insects(board))
    cuts = () if layout is None else saw_boards(job, layout)
    steps = () if layout is None else steps_at_joints(job, layout, standing)
    order = [board.id for board in usable] if layout is None else [one.board_id for one in cuts]
    needed = [job.board(name) for name in dict.fromkeys(order) if name not in standing.sawn]
    at_saw = {one.board_id: _at_saw(one) for one in cuts}
    work = _ToDo(
        job=job,
        pieces=None if layout is None else layout.pieces,
        thickness={} if layout is None else _thickness_work(job, layout, steps),
        # Boards without a lot have nothing in common that insects could have spread through.
        infested=frozenset(job.board(name).lot_key for name in insects) - {""},
    )
    return Readying(
        boards=tuple(
            BoardWork(board_id=board.id, tasks=tuple(work.of(board)), at_saw=at_saw.get(board.id, ""))
            for board in needed
        ),
        insects=insects,
        mould=tuple(board.id for board in usable if shows_mould(words_of(board))),
        refused=tuple(board.id for board in job.boards if board.treatment is not Treatment.NONE),
        steps=steps,
        laid=layout is not None,
    )


_KINDS = {
    CutKind.RIP: "rip",
    CutKind.TAPER_RIP: "rip",
    CutKind.CROSSCUT: "crosscut",
    CutKind.ANGLED: "crosscut",
    CutKind.NOTCH: "notch",
}


def _at_saw(cuts: BoardCuts) -> str:
    """Count the cuts of a board, as its block on the cut list has them."""
    count = Counter(_KINDS[cut.kind] for cut in cuts.cuts)
    told = [
        f"{count[one]} {many if count[one] > 1 else one}"
        for one, many in (("rip", "rips"), ("crosscut", "crosscuts"), ("notch", "notches"))
        if count[one]
    ]
    return ", ".join(told) or "hangs as found"


@dataclass(frozen=True, slots=True, kw_only=True)
class _ToDo:
    """Says what is done to a board, with what a layout tells of all of them at hand."""

    job: Job
    pieces: Sequence[Piece] | None
    thickness: Mapping[str, list[Task]]
    infested: frozenset[str]

    def of(self, board: Board) -> Iterator[Task]:
        nails = board.nails
        pulled = nails in {NailsLeft.PULLED, NailsLeft.NIPPED, NailsLeft.CHECKED}
        yield self._look(board)
        yield Task(station=Station.NAILS, what="nipped" if nails is NailsLeft.NIPPED else "pull", done=pulled)
        yield Task(station=Station.METAL, what="pass over", done=nails is NailsLeft.CHECKED)
        yield from self._heat(board)
        yield from self._chalk(board)
        yield from self._edges(board)
        yield from self.thickness.get(board.id, ())

    def _look(self, board: Board) -> Task:
        words, paint = words_of(board), paint_of(self.job, board)
        signs = [
            told
            for told, met in (
                ("insects", shows_insects(words)),
                ("mould", shows_mould(words)),
                ("rot", shows_rot(words)),
                ("paint: lead", paint is Paint.LEAD),
                ("test paint", paint is Paint.UNKNOWN),
            )
            if met
        ]
        return Task(station=Station.LOOK, what=", ".join(signs) or "splits, holes")

    def _heat(self, board: Board) -> Iterator[Task]:
        heated = tells_heated(words_of(board))
        insects, infested = shows_insects(words_of(board)), board.lot_key in self.infested
        if insects or infested:
            what = "heat: insects" if insects else "heat with its lot"
            yield Task(station=Station.HEAT, what=what, done=heated)
        read = board.moisture_pct
        if read is not None and read - middle_pct(self.job) > NEAR_ENOUGH_PCT.value:
            # It dries in the room, where nothing goes before the insects in it are dead.
            then = "then " if (insects or infested) and not heated else ""
            yield Task(station=Station.HEAT, what=f"{then}dry from {read:g} %")

    def _chalk(self, board: Board) -> Iterator[Task]:
        tape = self.job.tape
        lost = [
            f"{write_inches(flaw.start_nm, tape)}–{write_inches(flaw.end_nm, tape)}"
            for flaw in board.flaws
            if flaw.severity is Severity.LOST
        ]
        if lost:
            yield Task(station=Station.CHALK, what=", ".join(lost))

    def _edges(self, board: Board) -> Iterator[Task]:
        milled = [
            name
            for name, stays in zip(_EDGES[board.profile.kind], self._stay_milled(board), strict=True)
            if stays
        ]
        if milled:
            yield Task(station=Station.EDGES, what=f"clean {', '.join(milled)}")

    def _stay_milled(self, board: Board) -> tuple[bool, bool]:
        """Tell of both edges whether anything of them hangs as it is milled, the reference edge first."""
        if not board.profile.milled:
            return False, False
        if self.pieces is None:
            return True, True
        own = [piece for piece in self.pieces if piece.board_id == board.id]
        return (
            any((piece.far if piece.turned else piece.near) not in _TAKEN_OFF for piece in own),
            any((piece.near if piece.turned else piece.far) not in _TAKEN_OFF for piece in own),
        )


_EDGES = {
    EdgeKind.SQUARE: ("", ""),
    EdgeKind.TONGUE_AND_GROOVE: ("groove", "tongue"),
    EdgeKind.SHIPLAP: ("under-lap", "upper lap"),
}
"""What the reference edge of a board and the other one are called."""

_TAKEN_OFF = frozenset({EdgeTreatment.RIPPED, EdgeTreatment.TONGUE_OFF})


def _thickness_work(job: Job, layout: Layout, steps: Sequence[Step]) -> dict[str, list[Task]]:
    """Say which pieces are shimmed, and which boards are planed or swapped, where they meet others."""
    work: dict[str, list[Task]] = {}
    for part in layout.surfaces:
        for piece in part.pieces:
            if piece.shim_nm:
                label = piece_name(job, part.surface_id, piece)
                _note(work, piece.board_id, f"shim {label} by {write_fine(piece.shim_nm, job.tape)}")
    for step in steps:
        if step.way in {Way.PLANE, Way.SWAP}:
            _note(work, step.board_id, _level(job, step))
    return work


def _level(job: Job, step: Step) -> str:
    """Say in a few words how a step goes that nobody could ease."""
    told = write_fine(step.step_nm, job.tape)
    if step.way is Way.PLANE:
        wait = ", not before its paint is tested" if step.paint is Paint.UNKNOWN else ""
        return f"plane {told} off the back of {step.label}{wait}"
    if step.way is Way.SWAP:
        return f"{told} thicker at {step.where}: swap"
    return f"{step.label}, {told} thicker at {step.where}"


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
    return Leaf(
        title="Getting boards ready",
        headline=_headline(readying),
        parts=(
            Part(title="Insects and mould", said=tuple(_tell_signs(job, readying))),
            Part(title="Thickness", said=tuple(_tell_thickness(job, readying))),
            Part(title="Board by board", said=tuple(_tell_no_cut(job, readying)), grid=_grid(readying)),
        ),
    )


def _headline(readying: Readying) -> Said:
    if not readying.boards:
        more = " of this layout is still to be sawn" if readying.laid else " is left to be sawn"
        if readying.late:
            return Said(f"No board{more}, but a step is left where boards meet: see “Thickness”.")
        return Said(f"Nothing to get ready: no board{more}.")
    left = sum(not task.done for work in readying.boards for task in work.tasks)
    return Said(
        f"{capital(counted(len(readying.boards), 'board'))}, {left} thing{'' if left == 1 else 's'} to do. "
        "Take all boards through a column before the next: no saw and no planer before the detector was "
        "over the board.",
        (NAILS_FIRST,),
    )


def _tell_no_cut(job: Job, readying: Readying) -> Iterator[Said]:
    """Say that nothing is cut yet, and who reckons with what is taken off."""
    if not readying.boards:
        return
    if readying.laid:
        yield Said(
            "Nothing is trimmed or ripped here: the cut list does that, and measures each board as it lies, "
            "from its marked end and its reference edge. A cut before it would move every mark."
        )
        return
    trim, loss = job.rules.end_trim_nm, job.rules.straight_edge_loss_nm
    told = [f"{write_inches(trim, job.tape)} at each end"] if trim else []
    if loss and not all(board.profile.milled for board in job.boards):
        told.append(f"{write_inches(loss, job.tape)} along each long edge of a square-edged board")
    takes = f", and itself leaves {' and '.join(told)} to be cut off" if told else ""
    yield Said(f"Rip and trim nothing yet: a layout measures boards as they lie{takes}.")


def _tell_signs(job: Job, readying: Readying) -> Iterator[Said]:
    if readying.refused:
        yield Said(f"Treated, kept out: {', '.join(readying.refused)}.")
    low, high = SOLID_PILE_TIMES.value
    hot = f"{CORE_C.value:.0f} °C ({to_fahrenheit(CORE_C.value):.0f} °F)"
    if readying.insects:
        yield Said(
            f"Signs of insects: {', '.join(readying.insects)}. Keep them and their lots outside until their "
            f"core was at {hot} for {CORE_MINUTES.value} minutes; piled without stickers "
            f"that takes {low} to {high} times as long. It kills what is in them and keeps nothing "
            "out later. Then note “heated” for them in the tally, and only then have them in the room to "
            "dry.",
            (HEAT, LARVAE),
        )
        pored = [name for name in readying.insects if _large_pored(job.board(name))]
        if pored:
            yield Said(
                f"Of large-pored hardwood, in which powderpost beetles live dry: {', '.join(pored)}. A "
                "finish on every face keeps them from laying eggs.",
                (POWDERPOST,),
            )
    elif readying.boards:
        yield Said(
            "No signs of insects were tallied that still ask for heat. Reused wood often has larvae all the "
            "same: look for fresh fine dust below holes, most of all in boards of "
            f"{BEETLE_MOISTURE_PCT.value:.0f} % moisture or more.",
            (LARVAE,),
        )
    if readying.mould:
        yield Said(
            f"Mould: {', '.join(readying.mould)}. Brush it off outside, with a mask, and dry the board: it "
            "comes back on wood that stays damp.",
            (MOULD,),
        )
    if readying.boards:
        yield Said(
            f"Boards more than {NEAR_ENOUGH_PCT.value:g} points over the room's {middle_pct(job):.1f} % are "
            "dried first.",
            (NO_FORMULA,),
        )


def _large_pored(board: Board) -> bool:
    return (
        any(not LARGE_PORED.isdisjoint(one.words) for one in wood_of(board).species)
        and wood_of(board).understood
    )


def _tell_thickness(job: Job, readying: Readying) -> Iterator[Said]:
    if readying.boards or readying.steps:
        tolerance = write_fine(job.rules.thickness_tolerance_nm, job.tape)
        yield Said(
            f"A step of up to {tolerance} at a joint in sight is eased with sandpaper once both hang; a "
            "thinner board is shimmed, a thicker one planed on its back up to "
            f"{write_fine(PLANE_UP_TO_NM.value, job.tape)}, else swapped.",
            (SHIM_OR_PLANE,),
        )
    waiting = [step for step in readying.steps if step.way is Way.EASE]
    for begin, paints in _EASE:
        where: dict[str, list[str]] = {}
        for step in sorted(waiting, key=lambda one: one.step_nm):
            if step.paint in paints:
                where.setdefault(write_fine(step.step_nm, job.tape), []).append(step.where)
        if where:
            told = "; ".join(f"{size} at {', '.join(joints)}" for size, joints in where.items())
            yield Said(f"{begin}: {told}.")
    yield from _tell_late(job, readying)


def _tell_late(job: Job, readying: Readying) -> Iterator[Said]:
    """Tell of steps that were not seen to before the board that stands out was sawn or hung."""
    cut = [_level(job, step) for step in readying.late if step.way is not Way.SHIM]
    if cut:
        yield Said(f"Of boards that are sawn already, before their pieces hang: {'; '.join(cut)}.")
    hung = [_level(job, step) for step in readying.late if step.way is Way.SHIM]
    if hung:
        yield Said(f"Hanging already: {'; '.join(hung)}. Shim the thinner one, or take it down.")


_EASE = (
    ("To ease once both hang", {Paint.NONE, Paint.NO_LEAD_FOUND}),
    ("To ease once both hang, not before the paint of the thicker one is tested", {Paint.UNKNOWN}),
    ("To leave as they are, for the paint of the thicker one holds lead", {Paint.LEAD}),
)
"""What is done with steps, by what is on the board that sandpaper would touch."""


def _grid(readying: Readying) -> Grid | None:
    """Give a row a board, and a column for each station that has anything to do.

    What follows at the saw stands in the last one, without boxes: it is ticked on the cut list.
    """
    stations = [station for station in Station if any(work.at(station) for work in readying.boards)]
    rows = tuple(
        (
            work.board_id,
            *(_cell(work.at(station)) for station in stations),
            *((work.at_saw,) if readying.laid else ()),
        )
        for work in readying.boards
    )
    columns = ("board", *(station.value for station in stations))
    ticks = tuple(range(1, len(columns)))
    return (
        Grid(columns=(*columns, *(("cut list",) if readying.laid else ())), rows=rows, ticks=ticks)
        if rows
        else None
    )


def _cell(tasks: tuple[Task, ...]) -> str:
    return "; ".join(f"{task.what}{DONE}" if task.done else task.what for task in tasks)
