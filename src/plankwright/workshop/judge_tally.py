"""Judge a tally: what the pile holds, and how much of it is of use.

Everything here is a sum over boards, and no sum can say whether the pile is enough: it knows nothing of
joints, of courses or of lengths. That question is `ask_enough`'s.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from plankwright.layout.offcuts import clear_runs, usable_across
from plankwright.layout.regions import must_region
from plankwright.measure import INCH, MILLIMETRE, SIXTY_FOURTH, Nm, System, TapeStyle, round_down
from plankwright.model import Board, Rules, Surface

LONGEST_TOLD = 5
"""How many of the longest clear runs are told: what the longest course may ask for."""

_CLASS_STEPS = {System.IMPERIAL: INCH, System.METRIC: 25 * MILLIMETRE}


@dataclass(frozen=True, slots=True, kw_only=True)
class ClearRun:
    """A stretch of a board with no lost flaw in it, as wide as it can be used.

    Parameters
    ----------
    board_id
        The board.
    from_nm, to_nm
        From where to where along it. [nm]
    width_nm
        Face width of the piece that it would give, straightened where the board is square-edged. [nm]
    """

    board_id: str
    from_nm: Nm
    to_nm: Nm
    width_nm: Nm

    @property
    def length_nm(self) -> Nm:
        """[nm]."""
        return self.to_nm - self.from_nm

    @property
    def area_nm2(self) -> int:
        """[nm²]."""
        return self.length_nm * self.width_nm


@dataclass(frozen=True, slots=True, kw_only=True)
class LotTotals:
    """What a lot, or the whole pile, comes to.

    Parameters
    ----------
    lot
        Its name; empty for boards without one, and for the whole pile.
    boards
        How many. [boards]
    length_nm
        End to end. [nm]
    face_nm2
        Face area as pulled. [nm²]
    usable_nm2
        Face area of the clear runs that are long and wide enough to be hung. [nm²]
    """

    lot: str
    boards: int
    length_nm: Nm
    face_nm2: int
    usable_nm2: int

    @property
    def recovery(self) -> float:
        """Usable as a share of pulled, from 0 to 1."""
        return self.usable_nm2 / self.face_nm2 if self.face_nm2 else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WidthClass:
    """Boards of about one width.

    Parameters
    ----------
    from_nm, below_nm
        Face width at the narrower end as found: from this one, and below that one. [nm]
    boards
        How many. [boards]
    clear_nm
        Length of their usable clear runs together. [nm]
    longest_nm
        The longest of those; zero when there is none. [nm]
    """

    from_nm: Nm
    below_nm: Nm
    boards: int
    clear_nm: Nm
    longest_nm: Nm


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyJudgement:
    """What a tally comes to.

    Parameters
    ----------
    pile
        The whole pile.
    lots
        In the order in which they first come up in the tally.
    longest
        The longest usable clear runs, longest first.
    widths
        Narrowest first.
    useless
        Boards that give nothing long and wide enough.
    to_cover_nm2
        Area of the surfaces that must be covered; nothing when there is no job beside the tally. [nm²]
    """

    pile: LotTotals
    lots: tuple[LotTotals, ...]
    longest: tuple[ClearRun, ...]
    widths: tuple[WidthClass, ...]
    useless: tuple[str, ...]
    to_cover_nm2: int | None


def judge_tally(
    boards: Sequence[Board], rules: Rules, tape: TapeStyle, surfaces: Sequence[Surface] = ()
) -> TallyJudgement:
    """Judge a tally under the rules of a job.

    Parameters
    ----------
    boards
        The tally.
    rules
        What is lost to end trims and straightening, and what is too short or too narrow to be hung.
    tape
        How widths are put into classes: whole inches, or steps of 25 mm.
    surfaces
        What is to be covered, if that is known.

    Returns
    -------
    TallyJudgement
        Sums, widths and the longest runs.
    """
    runs = {board.id: usable_runs(board, rules) for board in boards}
    every_run = [run for of_board in runs.values() for run in of_board]
    by_lot: defaultdict[str, list[Board]] = defaultdict(list)
    for board in boards:
        by_lot[board.lot_key].append(board)
    return TallyJudgement(
        pile=_totals("", boards, runs),
        lots=tuple(_totals(of_lot[0].lot, of_lot, runs) for of_lot in by_lot.values()),
        longest=tuple(sorted(every_run, key=lambda run: -run.length_nm)[:LONGEST_TOLD]),
        widths=_width_classes(boards, runs, _CLASS_STEPS[tape.system]),
        useless=tuple(board.id for board in boards if not runs[board.id]),
        to_cover_nm2=sum(to_cover_nm2(surface, rules) for surface in surfaces) if surfaces else None,
    )


def usable_runs(board: Board, rules: Rules) -> tuple[ClearRun, ...]:
    """Give the clear runs of a board that are long and wide enough to be hung, in order along it.

    Parameters
    ----------
    board
        The board.
    rules
        The rules of the job.

    Returns
    -------
    tuple of ClearRun
        Inside the end trims.
    """
    runs = (
        ClearRun(board_id=board.id, from_nm=stretch[0], to_nm=stretch[1], width_nm=far - near)
        for stretch in clear_runs(board, rules)
        for near, far in (usable_across(board, rules, stretch),)
    )
    return tuple(
        run
        for run in runs
        if run.length_nm >= rules.shortest_piece_nm and run.width_nm >= rules.narrowest_course_nm
    )


def to_cover_nm2(surface: Surface, rules: Rules) -> int:
    """Give the area of a surface that must be covered: without openings and what trim hides. [nm²]

    Parameters
    ----------
    surface
        The surface.
    rules
        For the expansion gap.
    """
    return round(must_region(surface, rules).area)


def _totals(lot: str, boards: Sequence[Board], runs: dict[str, tuple[ClearRun, ...]]) -> LotTotals:
    return LotTotals(
        lot=lot,
        boards=len(boards),
        length_nm=sum(board.length_nm for board in boards),
        face_nm2=sum(board.face_area_nm2 for board in boards),
        usable_nm2=sum(run.area_nm2 for board in boards for run in runs[board.id]),
    )


def _width_classes(
    boards: Iterable[Board], runs: dict[str, tuple[ClearRun, ...]], step: Nm
) -> tuple[WidthClass, ...]:
    classes: defaultdict[Nm, list[Board]] = defaultdict(list)
    for board in boards:
        classes[round_down(board.narrowest_width_nm, step)].append(board)
    lengths = {
        start: [run.length_nm for board in of_class for run in runs[board.id]]
        for start, of_class in classes.items()
    }
    return tuple(
        WidthClass(
            from_nm=start,
            below_nm=start + step,
            boards=len(classes[start]),
            clear_nm=sum(lengths[start]),
            longest_nm=max(lengths[start], default=0),
        )
        for start in sorted(classes)
    )


def tape_of(boards: Sequence[Board]) -> TapeStyle:
    """Guess which tape a pile was measured with, where no job says so.

    Parameters
    ----------
    boards
        The tally.

    Returns
    -------
    TapeStyle
        A metric one when more lengths are no whole number of 64ths of an inch than are one.
    """
    sizes = [size for board in boards for size in (board.length_nm, board.width_start_nm, board.thickness_nm)]
    off_the_inch = sum(size % SIXTY_FOURTH != 0 for size in sizes)
    return TapeStyle(system=System.METRIC if 2 * off_the_inch > len(sizes) else System.IMPERIAL)
