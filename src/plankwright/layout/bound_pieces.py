"""What no layout gets round: whole boards for pieces that cannot be jointed.

Lines along the courses that lie farther apart than any piece is wide are covered by different pieces, and
where a run of theirs has no place for a joint, by one piece of its length. How many boards these take is a
question of whole pieces and whole boards, which heights of lines and of wood are not. The argument is written
out in docs/how-it-works.md.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from plankwright.layout.bound_lines import ROUNDING, Level, LineRun, apart, gap_allowed, levels_of
from plankwright.layout.bound_wood import narrowest_piece, widths
from plankwright.layout.offcuts import clear_runs
from plankwright.layout.packing import LengthPrices
from plankwright.layout.packing.columns import SCALE
from plankwright.layout.packing.kinds import Assortment, NeedKind, StickKind
from plankwright.layout.packing.patterns import charged, free, worthiest
from plankwright.layout.packing.sums import Supplies, least_sum, supplies_by_size
from plankwright.layout.strips import Strips
from plankwright.measure import Nm
from plankwright.model import Board, Bound, Rules


def bound_on_pieces(
    strips: Strips, boards: Sequence[Board], rules: Rules, prices: Sequence[LengthPrices]
) -> Bound:
    """Give what no layout of a surface can beat, whatever the prices; good ones make it high.

    Parameters
    ----------
    strips
        The surface.
    boards
        Those that may be used.
    rules
        What a layout must respect.
    prices
        Each set is tried.

    Returns
    -------
    Bound
        More than nothing bare when the pieces cannot all be had; else the wood that all of them take.
    """
    if narrowest_piece(rules) <= gap_allowed(rules):
        return Bound()
    widest = max((width for board in boards for _, width in _clear(board, rules)), default=0)
    levels = levels_of(strips)
    lengths = [
        run.nominal(rules)
        for line in _lines(levels, widest + gap_allowed(rules) + 4 * ROUNDING)
        for run in line
        if not run.cells
    ]
    if not lengths or not boards:
        return Bound()
    between = apart(levels)
    kerf = max(0, rules.crosscut_kerf_nm - ROUNDING)
    question = _Question(
        Counter(lengths), boards, rules, kerf if between is None else max(0, min(kerf, between))
    )
    return question.bound(prices)


def _clear(board: Board, rules: Rules) -> Iterator[tuple[Nm, Nm]]:
    """Give the clear runs that can give a piece: how long each is, and how wide. [nm]"""
    for run in clear_runs(board, rules):
        width = widths(board, run, rules)[1]
        if width >= narrowest_piece(rules):
            yield run[1] - run[0], width


def _lines(levels: Sequence[Level], spacing: Nm) -> list[tuple[LineRun, ...]]:
    """Choose lines so far apart: from the one side or the other, whichever way they are longer together."""
    last = max((level.high for level in levels), default=0)
    turned = [Level(last - level.high, last - level.low, level.runs) for level in reversed(levels)]
    ways = [list(_upwards(some, spacing)) for some in (levels, turned)]
    return max(ways, key=lambda lines: sum(run.length for line in lines for run in line))


def _upwards(levels: Sequence[Level], spacing: Nm) -> Iterator[tuple[LineRun, ...]]:
    free_from: Nm | None = None
    for level in levels:
        at = level.low if free_from is None else max(level.low, free_from)
        while level.runs and at <= level.high:
            yield level.runs
            at += spacing
            free_from = at


class _Question:
    """Which boards can give such pieces.

    Parameters
    ----------
    lengths
        How many pieces of each length; a piece may lack four of the gaps that count as none. [nm]
    boards, rules
        What there is.
    kerf
        Between two pieces of a board. [nm]
    """

    def __init__(self, lengths: Counter[Nm], boards: Sequence[Board], rules: Rules, kerf: Nm) -> None:
        self._rules, self._kerf = rules, kerf
        self._shortest = min(lengths)
        self._single = True
        kinds: Counter[StickKind] = Counter()
        for board in boards:
            for stick, lanes in self._sticks(board):
                kinds[stick] += lanes
                self._single &= lanes == 1
        self._assortment = Assortment(
            [NeedKind(length, 1, hidden=False, count=count) for length, count in sorted(lengths.items())],
            [replace(kind, count=count) for kind, count in kinds.items()],
            kerf=kerf,
            tolerance=0,
        )

    def _sticks(self, board: Board) -> Iterator[tuple[StickKind, int]]:
        """Give the clear runs of a board, longer by what pieces may lack, and how many pieces lie abreast."""
        rules, runs = self._rules, list(_clear(board, self._rules))
        rip = max(0, rules.rip_kerf_nm - ROUNDING)
        kept = [length * width for length, width in runs]
        lost = board.face_area_nm2 - sum(kept)
        for (length, width), area in zip(runs, kept, strict=True):
            lanes = (width + rip) // (narrowest_piece(rules) + rip)
            short = 4 * gap_allowed(rules) + 3 * ROUNDING
            most = (length + self._kerf + 4 * ROUNDING) // max(1, self._shortest - short + self._kerf)
            longer = length + most * short + 4 * ROUNDING
            cost = area + (lost // len(runs) if lost > 0 else lost)
            yield (
                StickKind(
                    longer,
                    width,
                    hidden_only=False,
                    count=0,
                    lost=cost - longer * width,
                    kept_from=max(1, rules.shortest_piece_nm - 4 * ROUNDING)
                    if width >= rules.narrowest_course_nm
                    else None,
                ),
                lanes,
            )

    def bound(self, prices: Sequence[LengthPrices]) -> Bound:
        """Give the best bound that any of the prices proves."""
        sets = [[need.length for need in self._assortment.needs], *(self._rounded(each) for each in prices)]
        if any(self._too_little(each) for each in sets):
            return Bound(bare_nm2=1)
        if not self._single:
            return Bound()
        return Bound(wood_spent_nm2=max(self._least_by_size(), *(self._least(each) for each in sets[1:]), 0))

    def _rounded(self, prices: LengthPrices) -> list[int]:
        """Give each piece the price of the length nearest to its own, in whole numbers."""
        return [
            int(min(prices, key=lambda each: abs(each[0] - need.length))[1] * SCALE / self._unit)
            for need in self._assortment.needs
        ]

    @property
    def _unit(self) -> int:
        return max(wood.cost for wood in self._assortment.sticks)

    def _asked(self, prices: Sequence[int]) -> int:
        return sum(need.count * price for need, price in zip(self._assortment.needs, prices, strict=True))

    def _counts(self) -> list[int]:
        return [need.count for need in self._assortment.needs]

    def _too_little(self, prices: Sequence[int]) -> bool:
        """Whether all boards together can give no pieces of such worth."""
        worths = worthiest(self._assortment, prices, self._counts(), free(self._assortment)).gains
        given = sum(wood.count * worth for wood, worth in zip(self._assortment.sticks, worths, strict=True))
        return given < self._asked(prices)

    def _least(self, prices: Sequence[int]) -> int:
        """Give the wood that all pieces take, as far as these prices prove it. [nm²]"""
        charges = charged(self._assortment, SCALE, self._unit)
        gains = worthiest(self._assortment, prices, self._counts(), charges).gains
        rents = [max(0, gain) for gain in gains]
        paid = sum(wood.count * rent for wood, rent in zip(self._assortment.sticks, rents, strict=True))
        least = max(0, -((paid - self._asked(prices)) * self._unit // SCALE))
        if not self._assortment.keeps_nothing():
            return least
        worths = [charge + rent for charge, rent in zip(charges.whole, rents, strict=True)]
        cheapest = Supplies(self._assortment, worths, self._asked(prices)).least
        costs = [(wood.cost, wood.count) for wood in self._assortment.sticks]
        return least_sum(costs, max(least, cheapest.cost if cheapest else 0))

    def _least_by_size(self) -> int:
        supplies = supplies_by_size(self._assortment)
        return supplies.least.cost if supplies and supplies.least else 0
