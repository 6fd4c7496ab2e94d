"""What may be tried to make a plan look better: each move changes a few courses and is judged elsewhere."""

import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import accumulate, pairwise

from plankwright.layout.look.eye import Eye
from plankwright.layout.look.places import Changes
from plankwright.layout.look.wood import Wood
from plankwright.layout.plan import PlannedCourse, PlannedPiece, Stick
from plankwright.layout.strips import Strips
from plankwright.measure import Nm

_Spot = tuple[int, int]
"""Number of a course, and place of a piece in it."""


class Moves:
    """Draws moves by chance.

    Parameters
    ----------
    strips
        The surface.
    eye
        Tells which boards it sees apart.
    wood
        The boards.
    chance
        The only source of chance.
    """

    def __init__(self, strips: Strips, eye: Eye, wood: Wood, chance: random.Random) -> None:
        self._strips, self._eye, self._wood, self._chance = strips, eye, wood, chance
        boards = wood.boards
        apart = any(eye.sees_apart(one, other) for one, other in pairwise(boards))
        # Where all boards look alike it makes no difference which hangs where.
        self._weights = {
            self._exchange_boards: 10 * apart,
            self._take_another_board: 2 * apart,
            self._exchange_courses: 4,
            self._reorder_courses: 2,
            self._exchange_in_run: 3,
            self._turn_run_round: 1,
            self._shift_joint: 2,
        }

    def draw(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Draw a move.

        Returns
        -------
        Changes or None
            Nothing when what was drawn cannot be done.
        """
        kinds: list[Callable[[Sequence[PlannedCourse]], Changes | None]] = list(self._weights)
        (kind,) = self._chance.choices(kinds, list(self._weights.values()))
        return kind(plan)

    def _exchange_boards(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Let two pieces change places, or be cut each from the board of the other.

        What is scrap beside them is shorter than the shortest piece or narrower than the narrowest course, so
        pieces whose sizes differ by more could hardly change boards at no cost.
        """
        spot = self._piece(plan)
        if spot is None:
            return None
        one, rules = _at(plan, spot).stick, self._strips.rules
        near = [
            (number, place)
            for number, course in enumerate(plan)
            for place, piece in enumerate(course.pieces)
            if abs(piece.stick.length - one.length) < rules.shortest_piece_nm
            and abs(piece.stick.width - one.width) < rules.narrowest_course_nm
            and self._eye.sees_apart(piece.stick.board, one.board)
        ]
        if not near:
            return None
        there = self._chance.choice(near)
        other = _at(plan, there).stick
        if (one.length, one.width) == (other.length, other.width):
            return _with_sticks(plan, {spot: other, there: one})
        if one.board == other.board:
            return None
        here_cut = self._wood.another(other.board, one.length, plan[spot[0]].height, [other])
        there_cut = self._wood.another(one.board, other.length, plan[there[0]].height, [one])
        if here_cut is None or there_cut is None:
            return None
        return _with_sticks(plan, {spot: here_cut, there: there_cut})

    def _take_another_board(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Cut a piece from another board."""
        spot = self._piece(plan)
        board = self._chance.choice(self._wood.boards)
        if spot is None or not self._eye.sees_apart(board, _at(plan, spot).stick.board):
            return None
        stick = self._wood.another(board, _at(plan, spot).stick.length, plan[spot[0]].height)
        return None if stick is None else _with_sticks(plan, {spot: stick})

    def _exchange_courses(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Let two courses of one height change places."""
        first = self._chance.randrange(len(plan))
        equals = [
            number
            for number, course in enumerate(plan)
            if number != first and course.height == plan[first].height
        ]
        if not equals:
            return None
        second = self._chance.choice(equals)
        return {
            first: replace(plan[second], low=plan[first].low, high=plan[first].high),
            second: replace(plan[first], low=plan[second].low, high=plan[second].high),
        }

    def _reorder_courses(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Take a course out and put it in elsewhere; those between move up or down.

        The starter and the closing course, which are often ripped to fit, stay where they are.
        """
        inner = range(1, len(plan) - 1)
        if not inner:
            return None
        first, second = sorted(self._chance.choices(inner, k=2))
        row = list(plan[first : second + 1])
        row = [*row[1:], row[0]] if self._chance.randrange(2) else [row[-1], *row[:-1]]
        edges = list(accumulate((course.height for course in row), initial=plan[first].low))
        return {
            first + place: replace(course, low=low, high=high)
            for place, (course, (low, high)) in enumerate(zip(row, pairwise(edges), strict=True))
        }

    def _exchange_in_run(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Let two pieces of one run change places, which moves the joints between them."""
        row = self._row(plan)
        if row is None:
            return None
        number, places = row
        first, second = sorted(self._chance.sample(places, 2))
        order = list(places)
        order[first - places[0]], order[second - places[0]] = second, first
        return self._in_order(plan[number], number, order)

    def _turn_run_round(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Hang the pieces of a run from end to end."""
        row = self._row(plan)
        return None if row is None else self._in_order(plan[row[0]], row[0], list(reversed(row[1])))

    def _shift_joint(self, plan: Sequence[PlannedCourse]) -> Changes | None:
        """Shift a joint to another place."""
        row = self._row(plan)
        if row is None:
            return None
        number, places = row
        pieces = plan[number].pieces
        place = self._chance.choice(places[:-1])
        left, right = pieces[place], pieces[place + 1]
        sites = [at for at in self._sites(plan[number]) if left.start < at < right.end and at != left.end]
        if not sites:
            return None
        at = self._chance.choice(sites)
        return self._cut_anew(plan[number], number, [(place, left.start, at), (place + 1, at, right.end)])

    def _in_order(self, course: PlannedCourse, number: int, order: Sequence[int]) -> Changes | None:
        """Give a course with the pieces of a run in another order, joints where they may fall nearest by."""
        start, end = course.pieces[min(order)].start, course.pieces[max(order)].end
        sites = [at for at in self._sites(course) if start < at < end]
        if not sites:
            return None
        ends = accumulate((course.pieces[place].stick.length for place in order[:-1]), initial=start)
        edges = [start, *(min(sites, key=lambda at: abs(at - there)) for there in list(ends)[1:]), end]
        if any(one >= other for one, other in pairwise(edges)):
            return None
        return self._cut_anew(
            course, number, [(place, *edge) for place, edge in zip(order, pairwise(edges), strict=True)]
        )

    def _sites(self, course: PlannedCourse) -> list[Nm]:
        """Give the places in a course where joints may fall. [nm]"""
        return [joint.at for run in self._strips.runs(course.low, course.high) for joint in run.joints]

    def _cut_anew(
        self, course: PlannedCourse, number: int, seats: Sequence[tuple[int, Nm, Nm]]
    ) -> Changes | None:
        """Give a course with some pieces elsewhere, cut longer or shorter if need be."""
        moved = {place for place, _, _ in seats}
        pieces = [piece for place, piece in enumerate(course.pieces) if place not in moved]
        old = [(course.pieces[place].stick, start, end) for place, start, end in seats]
        gone = [stick for stick, start, end in old if stick.length != end - start]
        come: list[Stick] = []
        for stick, start, end in old:
            part: Stick | None = stick
            if stick in gone:
                beside = [each for each in come if each.board == stick.board]
                part = self._wood.another(stick.board, end - start, course.height, gone, beside)
                if part is None:
                    return None
                come.append(part)
            pieces.append(PlannedPiece(part or stick, start, end))
        return {number: replace(course, pieces=tuple(sorted(pieces, key=lambda piece: piece.start)))}

    def _piece(self, plan: Sequence[PlannedCourse]) -> _Spot | None:
        """Draw a piece."""
        number = self._chance.randrange(len(plan))
        count = len(plan[number].pieces)
        return (number, self._chance.randrange(count)) if count else None

    def _row(self, plan: Sequence[PlannedCourse]) -> tuple[int, range] | None:
        """Draw a whole row of pieces that butt each other."""
        number = self._chance.randrange(len(plan))
        pieces = plan[number].pieces
        begins = [
            place for place, piece in enumerate(pieces) if not place or pieces[place - 1].end != piece.start
        ]
        rows = [range(start, end) for start, end in pairwise((*begins, len(pieces))) if end - start > 1]
        return (number, self._chance.choice(rows)) if rows else None


def _at(plan: Sequence[PlannedCourse], spot: _Spot) -> PlannedPiece:
    return plan[spot[0]].pieces[spot[1]]


def _with_sticks(plan: Sequence[PlannedCourse], sticks: dict[_Spot, Stick]) -> Changes:
    """Give courses some of whose pieces are cut from other wood."""
    return {
        number: replace(
            plan[number],
            pieces=tuple(
                replace(piece, stick=sticks[number, place]) if (number, place) in sticks else piece
                for place, piece in enumerate(plan[number].pieces)
            ),
        )
        for number in sorted({number for number, _ in sticks})
    }
