"""Layouts of jobs in progress: what hangs, what is in hand, and one thing of it not heeded."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from builders import course, nm, piece
from plankwright.check import FindingCode, recount
from plankwright.model import (
    CutPiece,
    HungCourse,
    Job,
    Layout,
    Part,
    Piece,
    Standing,
)
from spoil.walls import Hanging, entry, gable, plain


class Going(NamedTuple):
    """A job in progress: the job, the layout that it goes on by, and how far it has come."""

    job: Job
    layout: Layout
    standing: Standing


def all_hung(hanging: Hanging) -> Standing:
    """Give the standing of a job of which everything hangs as laid out."""
    return hung(hanging.layout, lambda _piece: True)


def hung(layout: Layout, which: Callable[[Piece], bool]) -> Standing:
    """Give the standing of a job of which some pieces hang as laid out, and nothing else is left."""
    rows = [
        HungCourse(surface_id=laid.surface_id, course=replace(row, pieces=pieces))
        for laid in layout.surfaces
        for row in laid.courses
        if (pieces := tuple(one for one in row.pieces if which(one)))
    ]
    sawn = dict.fromkeys(one.board_id for row in rows for one in row.course.pieces)
    return Standing(hung=tuple(rows), sawn=tuple(sawn))


def half_hung() -> Going:
    """Give the entry wall of which the two lower courses hang."""
    work, laid = entry()
    return Going(work, laid, hung(laid, lambda one: one.label[0] in "12"))


def in_hand() -> Going:
    """Give the plain wall of which 1a is cut, and what is left of its board is not worth keeping."""
    work, laid = plain()
    (one,) = (each for each in laid.pieces if each.label == "1a")
    return Going(work, laid, Standing(cut=(CutPiece(surface_id="wall", piece=one),), sawn=("A",)))


def left_over() -> Going:
    """Give the plain wall of which 1a broke: the other piece of that board comes out of what was left."""
    work, laid = plain()
    rest = Part(
        board_id="A",
        along_from_nm=nm(0.5),
        along_to_nm=nm(41),
        across_from_nm=nm(0.125),
        across_to_nm=nm(5.5),
    )
    return Going(work, laid, Standing(left=(rest,), sawn=("A",)))


def peak_in_hand() -> Going:
    """Give the gable of which the uppermost piece is cut, slopes and all, and hangs where it was to hang."""
    work, laid = gable()
    (one,) = (each for each in laid.pieces if each.label == "4a")
    return Going(work, laid, Standing(cut=(CutPiece(surface_id="gable", piece=one),), sawn=("D",)))


def of_another_surface() -> Going:
    """Give the plain wall and a piece in hand that was cut for a surface that the job no longer has."""
    work, laid = plain()
    one = replace(laid.pieces[0], label="9a", board_id="Z")
    return Going(work, laid, Standing(cut=(CutPiece(surface_id="loft", piece=one),), sawn=("Z",)))


def _without_a_hung_piece() -> Going:
    going = half_hung()
    extra = HungCourse(
        surface_id="wall", course=course(9, (40, 48), piece(going.job.surfaces[0], "9a A", (0, 30), (40, 48)))
    )
    return going._replace(standing=replace(going.standing, hung=(*going.standing.hung, extra)))


def _measured_higher() -> Going:
    going = half_hung()
    first, *others = going.standing.hung
    higher = replace(first, course=replace(first.course, to_nm=first.course.to_nm + nm(0.25)))
    return going._replace(standing=replace(going.standing, hung=(higher, *others)))


def _otherwise(**changes: object) -> Going:
    """Let a piece hang otherwise than it is laid out."""
    going = half_hung()
    first, *others = going.standing.hung
    (one, *rest) = first.course.pieces
    row = replace(first.course, pieces=(replace(one, **changes), *rest))  # type: ignore[arg-type]
    return going._replace(standing=replace(going.standing, hung=(replace(first, course=row), *others)))


def _shorter(going: Going, by: float) -> Going:
    """Let the piece that is in hand be shorter than the layout has it."""
    (cut,) = going.standing.cut
    short = replace(cut.piece, along_to_nm=cut.piece.along_to_nm - nm(by))
    return going._replace(
        standing=replace(going.standing, cut=(CutPiece(surface_id="wall", piece=short, plain=True),))
    )


def _upright_again() -> Going:
    """Take the peak for a plain wall: what has slopes is to fill a rectangle."""
    going = peak_in_hand()
    (cut,) = going.standing.cut
    (low,) = (one for one in going.layout.pieces if one.label == "3a")
    # Out of the piece in hand, its whole width, where the wall below is still wide.
    taken = replace(cut.piece, place=replace(cut.piece.place, left=low.place.left, right=low.place.right))
    whole = replace(
        taken,
        along_to_nm=taken.along_from_nm + low.place.right - low.place.left,
        across_to_nm=taken.across_from_nm + low.place.top - low.place.bottom,
        place=low.place,
        label="3a",
        nails=low.nails,
    )
    cut_long = replace(
        cut.piece,
        along_to_nm=whole.along_to_nm,
        across_to_nm=whole.across_to_nm,
        place=replace(
            cut.piece.place,
            right=cut.piece.place.left + low.place.right - low.place.left,
            top=cut.piece.place.bottom + low.place.top - low.place.bottom,
        ),
        label="old",
    )
    (laid,) = going.layout.surfaces
    rows = tuple(
        replace(row, pieces=(whole,)) if row.number == 3 else row for row in laid.courses if row.number < 4
    )
    bare = (going.layout.pieces[3].place,)
    changed = replace(laid, courses=rows, bare=bare)
    return Going(
        going.job,
        replace(going.layout, surfaces=(replace(changed, score=recount(going.job, changed)),)),
        Standing(cut=(CutPiece(surface_id="gable", piece=cut_long),), sawn=("D",)),
    )


RIGHT = {
    "two courses hang": half_hung(),
    "a piece is in hand": in_hand(),
    "a piece out of what is left": left_over(),
    "a piece with slopes is in hand": peak_in_hand(),
    "a piece in hand was cut for a surface that is no longer there": of_another_surface(),
}

WRONG: tuple[tuple[FindingCode, str, Going], ...] = (
    (FindingCode.HUNG_MISSING, "a piece that hangs is forgotten", _without_a_hung_piece()),
    (FindingCode.HUNG_CHANGED, "a course hangs higher", _measured_higher()),
    (FindingCode.HUNG_CHANGED, "it is of another board", _otherwise(board_id="D")),
    (FindingCode.HUNG_CHANGED, "it hangs upside down", _otherwise(turned=True)),
    (FindingCode.HUNG_CHANGED, "it is shimmed", _otherwise(shim_nm=nm(0.25))),
    (FindingCode.HUNG_CHANGED, "it is cut elsewhere from its board", _otherwise(along_from_nm=nm(0.25))),
    (
        FindingCode.WOOD_GONE,
        "the board is lost",
        in_hand()._replace(standing=Standing(sawn=("A",), lost=("A",))),
    ),
    (FindingCode.WOOD_GONE, "the piece in hand is shorter", _shorter(in_hand(), 1)),
    (FindingCode.SHAPE_GONE, "slopes are filled up again", _upright_again()),
)
