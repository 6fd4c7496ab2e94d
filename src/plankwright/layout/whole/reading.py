"""What was chosen, as courses in their places with their pieces cut out of sticks."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ortools.graph.python import linear_sum_assignment  # type: ignore[import-untyped]  # The library's.

from plankwright.layout.plan import Plan, PlannedCourse, PlannedPiece, Stick
from plankwright.layout.sticks import cut_from
from plankwright.layout.whole.programme import Sawn, Track
from plankwright.layout.whole.question import Question, Sort
from plankwright.layout.whole.ways import sorts_of
from plankwright.measure import Nm

_NO_WOOD = 10**9
"""To give a piece no wood costs more than any wood does, and the more the larger the piece."""


@dataclass(frozen=True, slots=True)
class _Hung:
    """A piece of a course: the number of the course, its sort, and from where to where it hangs. [nm]"""

    course: int
    sort: Sort
    start: Nm
    end: Nm


@dataclass(frozen=True, slots=True)
class _Part:
    """A piece that a cut gives: the number of its wood, of its stick among all that are cut, of its lane."""

    wood: int
    stick: int
    lane: int
    sort: Sort


def read_plan(question: Question, ways: Mapping[Track, int], sawn: Mapping[Sawn, int]) -> Plan:
    """Give each piece of each way the wood that was cut for it, and cut it out.

    Parameters
    ----------
    question
        What was asked; each of its kinds is a course in its place.
    ways, sawn
        What was chosen.

    Returns
    -------
    tuple of PlannedCourse
        In order. What no wood was found for is bare.
    """
    hung, bare = _hung(question, ways)
    parts = _parts(sawn)
    given = _give(question, hung, parts)
    cut = _cut_out(question, hung, given, _sticks(question, sawn))
    pieces: dict[int, list[PlannedPiece]] = defaultdict(list)
    for number, piece in enumerate(hung):
        if number in cut:
            pieces[piece.course].append(PlannedPiece(cut[number], piece.start, piece.end))
        else:
            bare[piece.course].append((piece.start, piece.end))
    courses = []
    for kind in range(len(question.kinds)):
        strip = question.row_of(kind).strip
        if strip is not None:
            in_order = tuple(sorted(pieces[kind], key=lambda piece: piece.start))
            courses.append(PlannedCourse(*strip, in_order, _merged(bare[kind])))
    return tuple(sorted(courses, key=lambda course: course.low))


def _hung(
    question: Question, ways: Mapping[Track, int]
) -> tuple[list[_Hung], dict[int, list[tuple[Nm, Nm]]]]:
    along = {(kind, run): (mates, moves) for (kind, run, mates, moves), times in ways.items() if times}
    hung: list[_Hung] = []
    bare: dict[int, list[tuple[Nm, Nm]]] = defaultdict(list)
    for kind, at in enumerate(question.kinds):
        for run, graph in enumerate(question.graphs[at.row]):
            if (kind, run) not in along:
                bare[kind].append((graph.run.start, graph.run.end))
                continue
            mates, moves = along[kind, run]
            sorts = sorts_of(question, kind, run, mates, moves)
            for sort, (first, last) in zip(sorts, moves, strict=True):
                hung.append(_Hung(kind, sort, graph.places[first], graph.places[last]))
    return hung, bare


def _parts(sawn: Mapping[Sawn, int]) -> list[_Part]:
    parts, stick = [], 0
    for (wood, cut), times in sorted(sawn.items()):
        for _ in range(times):
            parts += [_Part(wood, stick, lane, sort) for lane, sorts in enumerate(cut) for sort in sorts]
            stick += 1
    return parts


def _sticks(question: Question, sawn: Mapping[Sawn, int]) -> list[Stick]:
    """Give a stick for each cut, each stick once."""
    left = [list(wood.sticks) for wood in question.wood]
    return [left[wood].pop() for (wood, _), times in sorted(sawn.items()) for _ in range(times)]


def _give(question: Question, hung: Sequence[_Hung], parts: Sequence[_Part]) -> dict[int, _Part]:
    """Give pieces the parts that waste least, with as little as can be left bare."""
    matching = linear_sum_assignment.SimpleLinearSumAssignment()
    for number, piece in enumerate(hung):
        area = question.area(piece.sort)
        for place, part in enumerate(parts):
            if _serves(question, part, piece.sort):
                matching.add_arc_with_cost(number, place, question.area(part.sort) - area)
        matching.add_arc_with_cost(number, len(parts) + number, _NO_WOOD + 1000 * area)
    # As many on the one side as on the other: nobody takes what is left.
    for nobody in range(len(parts)):
        for place in range(len(parts) + len(hung)):
            matching.add_arc_with_cost(len(hung) + nobody, place, 0)
    if not hung or matching.solve() != matching.OPTIMAL:
        return {}
    mates = ((number, matching.right_mate(number)) for number in range(len(hung)))
    return {number: parts[place] for number, place in mates if place < len(parts)}


def _serves(question: Question, part: _Part, sort: Sort) -> bool:
    """Whether a part can be made into a piece."""
    wood, from_cut = question.wood[part.wood], part.sort
    return (
        sort.mates in wood.mates
        and sort.height <= from_cut.height
        and sort.length <= from_cut.length
        and (sort.hidden or not wood.blemished)
        and (wood.sticks[0].rippable or sort.height in wood.heights)
    )


def _cut_out(
    question: Question, hung: Sequence[_Hung], given: Mapping[int, _Part], sticks: Sequence[Stick]
) -> dict[int, Stick]:
    """Lay the pieces of each lane one after another, and lane beside lane, the lowest first."""
    lanes: dict[tuple[int, int], list[int]] = defaultdict(list)
    for number, part in given.items():
        lanes[part.stick, part.lane].append(number)
    height = {number: question.course_heights[hung[number].sort.height] for number in given}
    rules, cut = question.rules, {}
    across = [stick.across_from for stick in sticks]
    for (which, _), pieces in sorted(
        lanes.items(), key=lambda lane: (lane[0][0], max(height[piece] for piece in lane[1]), lane[0][1])
    ):
        stick, widest = sticks[which], 0
        along = stick.along_from
        for number in pieces:
            width = min(height[number], stick.across_to - across[which])
            if not stick.rippable:
                width = stick.width
            length = hung[number].end - hung[number].start
            cut[number] = cut_from(stick, along, length, across[which], width)
            along += length + rules.crosscut_kerf_nm
            widest = max(widest, width)
        across[which] += widest + rules.rip_kerf_nm
    return cut


def _merged(stretches: Sequence[tuple[Nm, Nm]]) -> tuple[tuple[Nm, Nm], ...]:
    """Join bare stretches that touch."""
    merged: list[tuple[Nm, Nm]] = []
    for start, end in sorted(stretches):
        if merged and merged[-1][1] == start:
            merged[-1] = (merged[-1][0], end)
        else:
            merged.append((start, end))
    return tuple(merged)
