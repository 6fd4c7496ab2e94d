"""Whatever the checker is handed broken in one place, it says so; whatever it is handed, it never raises.

The layouts are those of random jobs, so that slopes, openings, fixtures and milled edges come together in
ways that nobody thought of; `spoil` breaks layouts made by hand, in each way that has a code of its own.
"""

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, TypeAlias

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from builders import nm
from plankwright.check import check_layout, faults
from plankwright.check.slack import SLACK
from plankwright.errors import BadInputError
from plankwright.files.layout_json import layout_from_json, layout_to_json
from plankwright.layout import Effort, Watch, lay_out
from plankwright.measure import CENTIMETRE, Nm
from plankwright.model import Course, Flaw, Job, Layout, Piece, Severity, SurfaceLayout
from property.strategies import jobs

Broken: TypeAlias = tuple[str, Job, Layout]
OUTWARDS = {"left": -1, "bottom": -1, "right": 1, "top": 1}
ANYTHING = st.one_of(
    st.integers(-(10**7), 10**7).map(lambda count: f"{count / 8} mm"),
    st.sampled_from([0, 1, 2, -1, 2**53, 10**30]),
    st.sampled_from(["", "1a", "A1", "wall 1", "back", "face-nailed", "0.5 mm²"]),
)
"""What may stand in a layout file, here or there."""

AREA_SEEN = 2 * CENTIMETRE**2
"""Areas are compared to the square centimetre. [nm²]"""


def laid_out(job: Job) -> Layout:
    """Give a first layout of a job, if it has pieces."""
    layout = lay_out(job, effort=Effort(name="moment", seconds=0.1), watch=Watch(stopped=lambda: True)).layout
    assume(layout.pieces)
    return layout


@dataclass(frozen=True, slots=True)
class Spot:
    """One piece of a layout, to be broken by so much.

    Parameters
    ----------
    job, layout
        What is right.
    surface, course, piece
        Which piece: numbers from 0.
    by
        How much, beyond what counts as rounding, either way. [nm]
    """

    job: Job
    layout: Layout
    surface: int
    course: int
    piece: int
    by: Nm

    @property
    def laid(self) -> SurfaceLayout:
        """The layout of its surface."""
        return self.layout.surfaces[self.surface]

    @property
    def row(self) -> Course:
        """Its course."""
        return self.laid.courses[self.course]

    @property
    def one(self) -> Piece:
        """The piece."""
        return self.row.pieces[self.piece]

    def on_surface(self, **changes: Any) -> Layout:  # noqa: ANN401 - any field
        """Change the layout of the surface."""
        return replace(
            self.layout, surfaces=_with(self.layout.surfaces, self.surface, replace(self.laid, **changes))
        )

    def in_row(self, **changes: Any) -> Layout:  # noqa: ANN401 - any field
        """Change the course."""
        return self.on_surface(courses=_with(self.laid.courses, self.course, replace(self.row, **changes)))

    def hang(self, *pieces: Piece) -> Layout:
        """Hang other pieces for the one."""
        return self.in_row(pieces=_with(self.row.pieces, self.piece, *pieces))


def _with(values: Sequence[Any], place: int, *others: Any) -> tuple[Any, ...]:  # noqa: ANN401 - pieces or courses
    return (*values[:place], *others, *values[place + 1 :])


def any_spot(job: Job, data: st.DataObject) -> Spot:
    """Choose a piece of a right layout, and how much to break it by."""
    layout = laid_out(job)
    places = [
        (s, c, p)
        for s, laid in enumerate(layout.surfaces)
        for c, course in enumerate(laid.courses)
        for p in range(len(course.pieces))
    ]
    by = st.integers(SLACK + 1, nm(50)) | st.integers(-nm(50), -SLACK - 1)
    return Spot(job, layout, *data.draw(st.sampled_from(places)), data.draw(by))


def broken(spot: Spot) -> Iterator[Broken]:
    """Break one thing at a time, each so that a rule is broken whatever else the job holds."""
    job, one, score = spot.job, spot.one, spot.laid.score
    yield "taken out", job, spot.hang()
    yield "hung twice", job, spot.hang(one, one)
    yield "of no board", job, spot.hang(replace(one, board_id="nobody's"))
    for side, sign in OUTWARDS.items():
        place = replace(one.place, **{side: getattr(one.place, side) + sign * abs(spot.by)})
        yield f"{side} moved", job, spot.hang(replace(one, place=place))
    for mark in ("along_from_nm", "along_to_nm", "across_from_nm", "across_to_nm"):
        yield f"{mark} moved", job, spot.hang(replace(one, **{mark: getattr(one, mark) + spot.by}))
    yield "its board found rotten", _rotten(job, one, abs(spot.by)), spot.layout
    yield "its course moved", job, spot.in_row(from_nm=spot.row.from_nm + spot.by)
    yield "its course misnumbered", job, spot.in_row(number=spot.row.number + spot.by)
    yield "its course left out", job, spot.on_surface(courses=_with(spot.laid.courses, spot.course))
    yield (
        "its surface left out",
        job,
        replace(spot.layout, surfaces=_with(spot.layout.surfaces, spot.surface)),
    )
    for measure, seen in (("bare_nm2", AREA_SEEN), ("joints_in_sight", 1), ("wood_spent_nm2", AREA_SEEN)):
        wrong = replace(score, **{measure: getattr(score, measure) + seen})
        yield f"{measure} misstated", job, spot.on_surface(score=wrong)


def _rotten(job: Job, one: Piece, length: Nm) -> Job:
    """Find a stretch of lost wood where a piece begins on its board."""
    end = min(one.along_from_nm + length, one.along_to_nm)
    rot = Flaw(start_nm=one.along_from_nm, end_nm=end, what="rot", severity=Severity.LOST)
    return replace(
        job,
        boards=tuple(
            replace(board, flaws=(*board.flaws, rot)) if board.id == one.board_id else board
            for board in job.boards
        ),
    )


@settings(max_examples=8)
@given(jobs(), st.data())
def test_one_thing_broken_is_found(job: Job, data: st.DataObject) -> None:
    """Whichever piece, whatever is done to it, and by however little beyond a micrometre."""
    spot = any_spot(job, data)
    assert not faults(check_layout(spot.job, spot.layout))
    assert [how for how, spoilt, layout in broken(spot) if not faults(check_layout(spoilt, layout))] == []


@settings(max_examples=12)
@given(jobs(), st.data())
def test_no_layout_file_chokes_the_checker(job: Job, data: st.DataObject) -> None:
    """Anything else stands in one place of the file: it is refused as it is read, or judged."""
    layout = laid_out(job)
    for _ in range(5):
        written = json.loads(layout_to_json(layout))
        _slip(data, written)
        try:
            read = layout_from_json(json.dumps(written))
        except BadInputError:
            continue
        check_layout(job, read)


def _slip(data: st.DataObject, node: Any) -> None:  # noqa: ANN401 - any JSON
    """Change one value somewhere in a document."""
    key = data.draw(st.sampled_from(sorted(node) if isinstance(node, dict) else range(len(node))))
    if isinstance(node[key], dict | list) and node[key] and data.draw(st.integers(0, 9)):
        _slip(data, node[key])
        return
    how = data.draw(st.sampled_from(["changed", "changed", "gone", "twice"]))
    if how == "gone":
        del node[key]
    elif how == "twice" and isinstance(node, list):
        node.append(node[key])
    else:
        node[key] = data.draw(ANYTHING)
