"""A pile of boards for given pieces: most give one, some two, and a third have flaws."""

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass, replace
from random import Random

from benchmarks.lumber import Clear, Lane, SawnBoard, Sort, Spoilt, saw_together
from benchmarks.usable import usable_area
from plankwright.measure import FOOT, INCH, Nm, round_nearest
from plankwright.model import Face, Rules, Severity

FLAWED = 1 / 3
"""How many boards have a flaw."""

LOST = ("rot", "split", "broken", "eaten")

_BEYOND, _BESIDE = 0.2, 0.25
"""How many pieces are offered a board with one that lies beyond them, and with one beside them."""

_LONGEST: Nm = 14 * FOOT
_WIDEST: Nm = 12 * INCH
"""No board for two pieces is larger, trims and edges aside."""

_ALIKE: Nm = 3 * INCH
"""Pieces that lie side by side differ in length by no more."""

_EIGHTH: Nm = INCH // 8


@dataclass(frozen=True, slots=True)
class Wood:
    """What a piece is cut from.

    Parameters
    ----------
    key
        Names the piece.
    length, width
        [nm]
    sort
        Of its board.
    """

    key: Hashable
    length: Nm
    width: Nm
    sort: Sort

    @property
    def lane(self) -> Lane:
        """It as a part of a board."""
        return Lane(self.key, self.length, self.width)


class Pile:
    """Boards put together from the pieces that they give, and more of the kind.

    Parameters
    ----------
    rules
        For what sawing takes.
    chance
        The same state gives the same boards.
    """

    def __init__(self, rules: Rules, chance: Random) -> None:
        self.rules, self.chance = rules, chance
        self._seen: list[tuple[Wood, ...]] = []
        self._beside: list[bool] = []

    def saw(self, wood: Iterable[Wood]) -> list[SawnBoard]:
        """Give boards that give just these pieces."""
        left = list(wood)
        self.chance.shuffle(left)
        boards = []
        while left:
            first = left.pop()
            draw = self.chance.random()
            beside = _BEYOND <= draw < _BEYOND + _BESIDE
            fits = self._fits_beside if beside else self._fits_beyond
            mate = next((other for other in left if draw < _BEYOND + _BESIDE and fits(first, other)), None)
            group = (first,) if mate is None else (first, mate)
            left = [other for other in left if other is not mate]
            self._seen.append(group)
            self._beside.append(beside)
            boards.append(self._board(group, beside=beside))
        return boards

    def spare(self, area: int) -> list[SawnBoard]:
        """Give boards like those sawn before, with no piece in them, of so much usable area. [nm²]

        Each is like one of them but for its length and its flaws. The last is as long as is still wanted.
        """
        least = max(self.rules.shortest_piece_nm, _WIDEST)
        boards: list[SawnBoard] = []
        while area > 0:
            place = self.chance.randrange(len(self._seen))
            factor = self.chance.uniform(0.75, 1.25)
            like = tuple(
                replace(wood, length=max(least, round_nearest(round(wood.length * factor), _EIGHTH)))
                for wood in self._seen[place]
            )
            sawn = self._board(like, beside=self._beside[place])
            gives = usable_area(sawn.board, self.rules)
            if gives > area:
                wood = like[0]
                length = round_nearest(area // wood.width, _EIGHTH)
                if length < least:
                    break
                sawn = saw_together([Clear((replace(wood, length=length).lane,))], wood.sort, self.rules)
                gives = area
            area -= gives
            boards.append(SawnBoard(sawn.board, {}))
        return boards

    def _fits_beyond(self, one: Wood, other: Wood) -> bool:
        return (other.sort, other.width) == (one.sort, one.width) and one.length + other.length <= _LONGEST

    def _fits_beside(self, one: Wood, other: Wood) -> bool:
        return (
            other.sort == one.sort
            and abs(one.length - other.length) <= _ALIKE
            and one.width + other.width <= _WIDEST
        )

    def _board(self, group: Sequence[Wood], *, beside: bool) -> SawnBoard:
        """Saw a group together, a third of the times with a flaw."""
        flaw = self.chance.choice(("end", "end", "between", "ugly end", "stain"))
        if self.chance.random() >= FLAWED:
            flaw = ""
        stained = self.chance.choice(tuple(Face)) if flaw == "stain" else None
        if beside:
            parts: list[Clear | Spoilt] = [Clear(tuple(wood.lane for wood in group), stained)]
        else:
            parts = [Clear((wood.lane,), stained) for wood in group]
        if flaw == "between" and len(parts) > 1:
            parts.insert(1, self._spoilt(ugly=False))
        elif flaw in {"end", "between", "ugly end"}:
            parts.insert(self.chance.choice((0, len(parts))), self._spoilt(ugly=flaw == "ugly end"))
        return saw_together(parts, group[0].sort, self.rules)

    def _spoilt(self, *, ugly: bool) -> Spoilt:
        length = self.chance.randint(8, 80) * _EIGHTH
        if ugly:
            return Spoilt(length + 16 * INCH, "paint", Severity.BLEMISH)
        return Spoilt(length, self.chance.choice(LOST), Severity.LOST)
