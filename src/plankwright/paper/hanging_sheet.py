"""The hanging sheet in words: course by course from the start edge, pieces in order along each."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from plankwright.draw.corners import corners_of, marks_beyond
from plankwright.draw.subject import HungRow, Subject, subject
from plankwright.layout.done import NOTHING, Done
from plankwright.layout.joints import Joint
from plankwright.layout.regions import extent_in_course
from plankwright.layout.shaping import shaping_cuts
from plankwright.measure import Nm, write_fine, write_inches
from plankwright.model import (
    Course,
    CutKind,
    Direction,
    Edge,
    EdgeTreatment,
    Job,
    Piece,
    Rectangle,
    Surface,
    SurfaceKind,
    SurfaceLayout,
)
from plankwright.paper.as_hung import EDGES, AsHung
from plankwright.paper.nailing import PieceNailing, member_name, tell_keep_outs, tell_nails


@dataclass(frozen=True, slots=True)
class ToDo:
    """One thing to do with a piece: what it is about, and how."""

    what: str
    how: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceRow:
    """One piece: what it is called, what board and how long it is, and all there is to do with it."""

    label: str
    board: str
    size: str
    todo: tuple[ToDo, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseBlock:
    """One course: how far it reaches, what to watch, and its pieces."""

    number: int
    mark: str
    width: str
    watch: tuple[str, ...]
    pieces: tuple[PieceRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceSheet:
    """One surface: where it starts, what the nails go into, its courses, and what stays bare."""

    id: str
    intro: tuple[str, ...]
    far_edge: str
    courses: tuple[CourseBlock, ...]
    bare: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What was planned for a surface besides its layout.

    Parameters
    ----------
    intro
        Sentences that hold for all of it.
    pieces
        Piece by piece, by their labels.
    """

    intro: tuple[str, ...] = ()
    pieces: Mapping[str, PieceNailing] = field(default_factory=dict)


PLAIN = Planned()
"""Nothing was planned besides."""


def hanging_sheet(
    job: Job, surface_layout: SurfaceLayout, done: Done = NOTHING, planned: Planned = PLAIN
) -> SurfaceSheet:
    """Put the hanging sheet of one surface into words.

    Parameters
    ----------
    job
        The job.
    surface_layout
        The layout of one of its surfaces.
    done
        What hangs already is not told of any more; of what is cut it is said.
    planned
        What was planned besides: nails, boxes.

    Returns
    -------
    SurfaceSheet
        With a block for each course that is not all hung, from the start edge on.
    """
    writer = _Writer(subject(job, surface_layout), planned)
    return SurfaceSheet(
        id=surface_layout.surface_id,
        intro=tuple(writer.intro()),
        far_edge=writer.far_edge,
        courses=tuple(
            writer.course(course, done)
            for course in surface_layout.courses
            if not course.pieces or any(piece.label not in done.hung for piece in course.pieces)
        ),
        bare=tuple(writer.bare(place) for place in surface_layout.bare),
    )


def closing_course(surface: Surface, laid: SurfaceLayout) -> Course | None:
    """Give the course that meets the far side of a surface, if there are several and none is bare behind it.

    Parameters
    ----------
    surface, laid
        The surface and its layout.

    Returns
    -------
    Course | None
        The last one, or nothing where it is the only one or something behind it stays bare.
    """
    if len(laid.courses) < 2:  # noqa: PLR2004 - a single course is the starter
        return None
    last = laid.courses[-1]
    behind = [place for place in laid.bare if extent_in_course(surface, place)[2] >= last.to_nm]
    return last if last.pieces and not behind else None


_WHERE_IT_HANGS = {
    EdgeTreatment.TONGUE_OFF: "the tongue comes off",
    EdgeTreatment.SPLINE: "a loose spline goes in",
    EdgeTreatment.FACE_NAIL: "it is nailed through the face",
}
"""What is still to be done with the far edge of a piece that hangs, before the next course does."""


class _Writer:
    def __init__(self, what: Subject, planned: Planned) -> None:
        self.planned = planned
        self.what, self.surface, self.rules = what, what.surface, what.job.rules
        self.courses = what.layout.courses
        self.closing = closing_course(what.surface, what.layout)
        self.near_edge, self.far_edge = EDGES[what.surface.start]

    def intro(self) -> Iterator[str]:
        """Say where to start and measure from, and what the nails go into."""
        surface = self.surface
        yield self._start()
        if self.rules.expansion_gap_nm:
            gap = self.inches(self.rules.expansion_gap_nm)
            yield f"Keep {gap} free along every side and every opening."
        if surface.framing.solid:
            yield "Solid backing: it takes a nail anywhere but where something runs behind."
        else:
            numbers = range(1, len(surface.crossing_members) + 1)
            marks = ", ".join(member_name(self.what, number) for number in numbers)
            word = self.what.member.capitalize()
            yield f"{word}s, counted along the courses, with the marks of their centres: {marks}."
        yield from self._corners()
        yield from self.planned.intro
        if surface.cut_outs:
            yield (
                "Boxes: power off before you notch. A box must end flush with the new face, which may take "
                "an extension; ask whoever is licensed for it."
            )

    def _corners(self) -> Iterator[str]:
        for side, other in corners_of(self.what.job, self.surface.id):
            more = marks_beyond(self.surface, other)
            read = f"{self.inches(abs(more))} {'more' if more > 0 else 'less'}" if more else "the same"
            yield (
                f"Courses run round the {side} corner to {other.id}: strike each line on level round it "
                f"before you hang the course. Marks of heights read {read} there."
            )

    def _start(self) -> str:
        surface = self.surface
        level = surface.courses_run is Direction.HORIZONTAL
        along = "from the left" if level else "from below"
        if surface.kind is not SurfaceKind.WALL:
            return (
                f"Seen looking {'up at' if surface.kind is SurfaceKind.CEILING else 'down on'} it, "
                f"courses run {'across' if level else 'up'} the drawing, from its {surface.start} on. "
                f"Their marks are measured square to a straight line through the outermost point "
                f"of that side, marks along them {along}."
            )
        if level:
            way, point = ("up", "lowest") if surface.start is Edge.BOTTOM else ("down", "highest")
            return (
                f"Courses run level, from the {surface.start} {way}. Their marks are measured from "
                f"a level line through the {point} point of the {surface.start}, marks along them {along}."
            )
        return (
            f"Boards stand upright, from the {surface.start} on. Their marks are measured from a plumb line "
            f"through the outermost point of the {surface.start} side, marks along them {along}."
        )

    def course(self, course: Course, done: Done) -> CourseBlock:
        return CourseBlock(
            number=course.number,
            mark=self.inches(course.to_nm),
            width=self.inches(course.height_nm),
            watch=(*self._done(course, done), *self._watch(course)),
            pieces=tuple(
                self._row(row)
                for row in self.what.rows
                if row.course is course and row.piece.label not in done.hung
            ),
        )

    def bare(self, place: Rectangle) -> str:
        along_from, along_to, across_from, across_to = extent_in_course(self.surface, place)
        return (
            f"Left bare: {self.inches(along_from)} to {self.inches(along_to)} along, "
            f"{self.inches(across_from)} to {self.inches(across_to)} from the start. "
            "No board was left for it."
        )

    def inches(self, nm: Nm) -> str:
        return write_inches(nm, self.what.tape)

    def _done(self, course: Course, done: Done) -> Iterator[str]:
        """Tell what of a course hangs or is cut already, and what is still to be done to the one below."""
        labels = [piece.label for piece in course.pieces]
        hanging = [label for label in labels if label in done.hung]
        if hanging:
            yield f"{', '.join(hanging)} {'hangs' if len(hanging) == 1 else 'hang'} already."
        cut = [label for label in labels if label in done.cut]
        if cut:
            yield f"{', '.join(cut)} {'is' if len(cut) == 1 else 'are'} cut already."
        below = next((other for other in self.courses if other.number == course.number - 1), None)
        for piece in below.pieces if below is not None else ():
            fact = done.hung.get(piece.label)
            if fact is not None and fact.far is not piece.far and piece.far in _WHERE_IT_HANGS:
                what = _WHERE_IT_HANGS[piece.far]
                yield f"{piece.label}, where it hangs: {what} at its {self.far_edge} edge."

    def _watch(self, course: Course) -> Iterator[str]:
        before = [other.to_nm for other in self.courses if other.number < course.number]
        if course is self.courses[0]:
            yield (
                f"Starter: its {self.near_edge} edge at {self.inches(course.from_nm)}. "
                "Set it straight and true; every course follows it."
            )
        elif before and course.from_nm != max(before):
            yield f"Its {self.near_edge} edge at {self.inches(course.from_nm)}."
        if course is self.closing:
            yield (
                "Closing course: measure the room that is left at both ends and in the middle "
                "before ripping it."
            )
        yield from tell_keep_outs(self.what, course)
        if not course.pieces:
            yield "No piece hangs here."

    def _row(self, row: HungRow) -> PieceRow:
        told = AsHung(
            surface=self.surface,
            piece=row.piece,
            board=self.what.job.board(row.piece.board_id),
            hung=row.hung,
            tape=self.what.tape,
        )
        return PieceRow(
            label=row.piece.label,
            board=row.piece.board_id,
            size=told.size,
            todo=tuple(self._todo(row.piece, told)),
        )

    def _todo(self, piece: Piece, told: AsHung) -> Iterator[ToDo]:
        along_from, along_to, *_ = extent_in_course(self.surface, piece.place)
        yield ToDo("Place:", f"{self.inches(along_from)} to {self.inches(along_to)}, {told.how}.")
        cuts = shaping_cuts(told.work, self.rules.rip_kerf_nm)
        if any(cut.kind is CutKind.TAPER_RIP for cut in cuts):
            yield ToDo("Taper:", f"{told.both_widths()}.")
        for notch, what in ((cut.notch, cut.what) for cut in cuts if cut.notch is not None):
            yield ToDo(
                "Notch:",
                f"for {what}, {self.inches(notch.left)} from its left and "
                f"{self.inches(notch.bottom)} from below; "
                f"{self.inches(notch.width_nm)} wide, {self.inches(notch.height_nm)} high.",
            )
        treatments = told.treatments(*(set(EdgeTreatment) - {EdgeTreatment.AS_FOUND}))
        if treatments:
            yield ToDo("Edges:", f"{', '.join(treatments)}.")
        if piece.shim_nm:
            yield ToDo("Shim:", f"{write_fine(piece.shim_nm, self.what.tape)} behind it.")
        for joint in self.what.joints:
            if joint.before == piece.label:
                yield ToDo("Joint:", self._joint(joint, told))
        nailing = self.planned.pieces.get(piece.label)
        yield ToDo("Nails:", tell_nails(self.what, piece, nailing))
        for sentence in () if nailing is None else nailing.besides:
            yield ToDo("Mind:", sentence)

    def _joint(self, joint: Joint, told: AsHung) -> str:
        if joint.member is not None:
            where = f"on {self.what.member} {member_name(self.what, joint.member)}"
        else:
            where = f"at {self.inches(joint.at_nm)}"
        shown = "in sight" if joint.in_sight else f"hidden by {self._hidden_by(joint)}"
        return f"its {told.ends[1]} end meets {joint.after} {where}, {shown}."

    def _hidden_by(self, joint: Joint) -> str:
        x, y = ((one + other) / 2 for one, other in zip(joint.start, joint.end, strict=True))
        for zone in self.surface.concealed:
            place = zone.place
            if place.left <= x <= place.right and place.bottom <= y <= place.top:
                return zone.id
        return "the trim"
