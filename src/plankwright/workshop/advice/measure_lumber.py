"""What the pile and the wall come to: board measure, recovery, weight, money, hours, carbon."""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

import shapely

from plankwright.draw.subject import subject
from plankwright.layout.regions import must_region
from plankwright.layout.sawing import count_cuts, piece_name, saw_boards
from plankwright.measure import FOOT, INCH, METRE, Nm
from plankwright.model import WOOD_UNITS, Board, Job, Layout, Per, Price, Task, Treatment
from plankwright.trade.lumber.board_measure import board_feet, cubic_metres, to_hundredth
from plankwright.trade.lumber.facts import LEAST_THICKNESS_IN, NEW_EXTRA_SHARE
from plankwright.trade.lumber.surface_measure import surface_measures
from plankwright.trade.lumber.waste import to_buy
from plankwright.trade.lumber.weight import density_kg_m3, stored_carbon_dioxide_kg
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.woods import gravity_of, moisture_of
from plankwright.workshop.judge_tally import judge_tally


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """What something weighs, by the lightest and the heaviest wood that it may be. [kg]"""

    least_kg: float
    most_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoughtInstead:
    """What it would cost to cover the same with wood that is bought.

    Parameters
    ----------
    price
        The wood.
    amount
        How much would be bought, in what it is sold by, with its waste.
    cost
        In the user's money.
    extra
        What of the area is bought beyond it where no waste was given, as a share.
    """

    price: Price
    amount: Fraction
    cost: Fraction
    extra: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskTime:
    """How long a task takes.

    Parameters
    ----------
    task
        The task.
    count
        How often, in what it is reckoned by; nothing where that takes a layout and there is none.
    of_all
        Whether that is for the whole job; of a layout that leaves something bare it is for what hangs.
    """

    task: Task
    count: Fraction | None
    of_all: bool = True

    @property
    def hours(self) -> Fraction | None:
        """[h]."""
        return None if self.count is None else self.task.minutes * self.count / 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Lumber:
    """What the pile and the wall come to.

    Parameters
    ----------
    boards
        How many, treated ones apart.
    board_feet
        To the hundredth each, added up. [board feet]
    surface_measure
        By the rule for random widths, in the order of the tally. [square feet]
    board_feet_by_surface
        Surface measure by thickness, which is what random widths are sold by. [board feet]
    face_nm2, usable_nm2
        Of the boards that are counted: all of it, and what can be hung. [nm²]
    to_cover_nm2
        Of all surfaces, less what trim hides. [nm²]
    lineal_nm
        The same boards end to end. [nm]
    volume_m3
        Theirs, with their true thickness. [m³]
    pile, wall
        Their weights; of the wall only with a layout.
    heaviest
        The heaviest piece by its name, and its weight at most; nothing where no layout hangs any. [kg]
    instead
        Wood that is bought, price by price.
    tasks
        Task by task.
    carbon_dioxide_kg
        That the carbon in the wood that goes on the wall would make; of the usable wood without a layout:
        least and most. [kg]
    """

    boards: int
    board_feet: Fraction
    surface_measure: int
    board_feet_by_surface: Fraction
    face_nm2: int
    usable_nm2: int
    to_cover_nm2: int
    lineal_nm: Nm
    volume_m3: float
    pile: Weight
    wall: Weight | None
    heaviest: tuple[str, float] | None
    instead: tuple[BoughtInstead, ...]
    tasks: tuple[TaskTime, ...]
    carbon_dioxide_kg: tuple[float, float]

    @property
    def recovery(self) -> Fraction:
        """Usable of what lies in the pile, treated boards apart."""
        return Fraction(self.usable_nm2, self.face_nm2) if self.face_nm2 else Fraction(0)

    @property
    def kept(self) -> Weight:
        """What the usable share of the pile weighs."""
        share = float(self.recovery)
        return Weight(least_kg=share * self.pile.least_kg, most_kg=share * self.pile.most_kg)

    @property
    def hours(self) -> Fraction:
        """Of all tasks that could be reckoned. [h]"""
        return sum((time.hours for time in self.tasks if time.hours is not None), Fraction(0))


def measure_lumber(job: Job, layout: Layout | None = None) -> Lumber:
    """Measure the pile and the wall of a job.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it, for what is cut and hung.

    Returns
    -------
    Lumber
        Sums, with least and most where the wood is not known.
    """
    boards = [board for board in job.boards if board.treatment is Treatment.NONE]
    sizes = [(board.narrowest_width_nm, board.length_nm) for board in boards]
    measures = surface_measures(sizes)
    pile = judge_tally(boards, job.rules, job.tape).pile
    covered = sum(round(must_region(surface, job.rules).area) for surface in job.surfaces)
    hung = () if layout is None else _hung(job, layout)
    volumes = [(board, _volume_m3(board.face_area_nm2, board)) for board in boards]
    on_wall = [(job.board(board_id), volume) for _, board_id, volume in hung]
    kept = [(board, volume * pile.recovery) for board, volume in volumes]
    stored = kept if layout is None else on_wall
    return Lumber(
        boards=len(boards),
        board_feet=sum((_feet(board) for board in boards), Fraction(0)),
        surface_measure=sum(measures),
        board_feet_by_surface=sum(
            (
                measure * max(Fraction(board.thickness_nm, INCH), LEAST_THICKNESS_IN.value)
                for measure, board in zip(measures, boards, strict=True)
            ),
            Fraction(0),
        ),
        face_nm2=pile.face_nm2,
        usable_nm2=pile.usable_nm2,
        to_cover_nm2=covered,
        lineal_nm=pile.length_nm,
        volume_m3=sum(volume for _, volume in volumes),
        pile=_weight(job, volumes),
        wall=None if layout is None else _weight(job, on_wall),
        heaviest=max(
            ((name, _most_kg(job, job.board(board_id), volume)) for name, board_id, volume in hung),
            key=lambda one: one[1],
            default=None,
        ),
        instead=tuple(_instead(price, covered, boards) for price in job.prices),
        tasks=tuple(
            TaskTime(
                task=task,
                count=_count(task.per, job, boards, layout, covered - _bare_nm2(layout)),
                of_all=layout is None or layout.covers_everything,
            )
            for task in job.tasks
        ),
        carbon_dioxide_kg=(
            sum(stored_carbon_dioxide_kg(gravity_of(board)[0], volume) for board, volume in stored),
            sum(stored_carbon_dioxide_kg(gravity_of(board)[1], volume) for board, volume in stored),
        ),
    )


def _feet(board: Board) -> Fraction:
    width = Fraction(board.width_start_nm + board.width_end_nm, 2)
    return to_hundredth(board_feet(board.thickness_nm, round(width), board.length_nm))


def _volume_m3(face_nm2: float, board: Board) -> float:
    return face_nm2 * board.thickness_nm / METRE**3


def _hung(job: Job, layout: Layout) -> tuple[tuple[str, str, float], ...]:
    """Give the name, the board and the volume of every piece on the walls. [m³]"""
    return tuple(
        (
            piece_name(job, part.surface_id, row.piece),
            row.piece.board_id,
            _volume_m3(shapely.Polygon(row.hung.shape).area, job.board(row.piece.board_id)),
        )
        for part in layout.surfaces
        for row in subject(job, part).rows
    )


def _bare_nm2(layout: Layout | None) -> int:
    """Give the area that a layout leaves bare: gaps within the tolerance are none. [nm²]"""
    return 0 if layout is None else sum(part.score.bare_nm2 for part in layout.surfaces if part.bare)


def _weight(job: Job, volumes: list[tuple[Board, float]]) -> Weight:
    return Weight(
        least_kg=sum(
            volume * density_kg_m3(gravity_of(board)[0], moisture_of(board, job)) for board, volume in volumes
        ),
        most_kg=sum(_most_kg(job, board, volume) for board, volume in volumes),
    )


def _most_kg(job: Job, board: Board, volume_m3: float) -> float:
    return volume_m3 * density_kg_m3(gravity_of(board)[1], moisture_of(board, job))


def _instead(price: Price, covered_nm2: int, boards: list[Board]) -> BoughtInstead:
    needed = _area_as(price.per, covered_nm2, boards)
    extra = NEW_EXTRA_SHARE.value if price.waste is None else Fraction(0)
    amount = to_buy(needed, price.waste or Fraction(0)) * (1 + extra)
    return BoughtInstead(price=price, amount=amount, cost=amount * price.cost, extra=extra)


def _area_as(per: Per, area_nm2: int, boards: list[Board]) -> Fraction:
    """Turn an area into what wood is sold or a task is reckoned by."""
    match per:
        case Per.SQUARE_FOOT:
            return Fraction(area_nm2, FOOT**2)
        case Per.SQUARE_METRE:
            return Fraction(area_nm2, METRE**2)
        case Per.BOARD_FOOT:
            thick = max(_middle([board.thickness_nm for board in boards], INCH), INCH)
            return Fraction(area_nm2, FOOT**2) * Fraction(thick, INCH)
        case _:
            width = _middle([board.narrowest_width_nm for board in boards], 6 * INCH)
            return Fraction(area_nm2, width) / (FOOT if per is Per.FOOT else METRE)


def _middle(sizes: list[Nm], default: Nm) -> Nm:
    """Give the middle one of several sizes. [nm]"""
    return sorted(sizes)[len(sizes) // 2] if sizes else default


def _count(
    per: Per, job: Job, boards: list[Board], layout: Layout | None, covered_nm2: int
) -> Fraction | None:
    """Count what a task is reckoned by; nothing where it takes a layout and there is none."""
    if per is Per.BOARD:
        if layout is None:
            return Fraction(len(boards))
        return Fraction(len({piece.board_id for piece in layout.pieces}))
    if per in WOOD_UNITS:
        return _area_as(per, covered_nm2, boards)
    counts: dict[Per, Callable[[Layout], int]] = {
        Per.JOB: lambda _: 1,
        Per.PIECE: lambda laid: len(laid.pieces),
        Per.COURSE: lambda laid: sum(len(part.courses) for part in laid.surfaces),
        Per.CUT: lambda laid: count_cuts(saw_boards(job, laid)),
        Per.NAIL: lambda laid: sum(one.driven for one in plan_nails(job, laid).to_buy),
    }
    if layout is None:
        return Fraction(1) if per is Per.JOB else None
    return Fraction(counts[per](layout))


def pile_cubic_metres(lumber: Lumber) -> Fraction:
    """Give the board feet of a pile as cubic metres, for those who reckon so. [m³]"""
    return cubic_metres(lumber.board_feet)
