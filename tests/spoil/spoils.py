"""One thing broken in a layout that was right, and the one code to be found: at least one for each code."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any, NamedTuple

from builders import course, crosscut_saw, flaw, nm, piece, rectangle, rip_saw, socket, with_piece
from plankwright.check import FindingCode
from plankwright.model import (
    BlemishPolicy,
    ConcealedZone,
    EdgeKind,
    EdgeProfile,
    EdgeTreatment,
    Face,
    JointPolicy,
    KeepOut,
    Rectangle,
    Severity,
)
from spoil.walls import (
    Hanging,
    corner,
    entry,
    gable,
    interlocked,
    one_wide_board,
    pinwheel,
    plain,
    uneven_floor,
    upright,
)

Damage = Callable[[Hanging], Hanging]


class Spoil(NamedTuple):
    """A layout that is right, what is done to it, and what must be found."""

    code: FindingCode
    what: str
    make: Callable[[], Hanging]
    damage: Damage


def _part(hanging: Hanging, **changes: Any) -> Hanging:  # noqa: ANN401 - any field
    """Change the layout of the only surface."""
    (surface,) = hanging.layout.surfaces
    return hanging._replace(layout=replace(hanging.layout, surfaces=(replace(surface, **changes),)))


def in_layout(**changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change the layout as a whole."""
    return lambda hanging: hanging._replace(layout=replace(hanging.layout, **changes))


def in_piece(which: str, **changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change fields of one piece."""
    return lambda hanging: hanging._replace(
        layout=replace(hanging.layout, surfaces=(with_piece(hanging.layout.surfaces[0], which, **changes),))
    )


def moved(label: str, **by: float) -> Damage:
    """Shift measures of one piece by inches: sides of its place, or where it lies on its board."""

    def damage(hanging: Hanging) -> Hanging:
        (one,) = (each for each in hanging.layout.pieces if each.label == label)
        sides = {side: nm(by[side]) + getattr(one.place, side) for side in _SIDES & by.keys()}
        changes = {name: nm(by[name]) + getattr(one, name) for name in by.keys() - _SIDES}
        return in_piece(label, place=replace(one.place, **sides), **changes)(hanging)

    return damage


_SIDES = {"left", "bottom", "right", "top"}


def nailed(label: str, *nails: tuple[float, float]) -> Damage:
    """Drive further nails into a piece."""

    def damage(hanging: Hanging) -> Hanging:
        (one,) = (each for each in hanging.layout.pieces if each.label == label)
        return in_piece(label, nails=(*one.nails, *((nm(x), nm(y)) for x, y in nails)))(hanging)

    return damage


def in_course(which: int, **changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change fields of one course."""
    return lambda hanging: _part(
        hanging,
        courses=tuple(
            replace(row, **changes) if row.number == which else row
            for row in hanging.layout.surfaces[0].courses
        ),
    )


def in_rules(**changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change the rules."""
    return lambda hanging: in_job(rules=replace(hanging.job.rules, **changes))(hanging)


def in_job(**changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change fields of the job."""
    return lambda hanging: hanging._replace(job=replace(hanging.job, **changes))


def seam_raised(by: float) -> Damage:
    """Let the first course of the second wall be higher by some inches, and the second one lower."""

    def damage(hanging: Hanging) -> Hanging:
        first, second = hanging.layout.surfaces
        low, high, *rest = second.courses
        at, shift = low.to_nm + nm(by), nm(by)
        low = replace(
            low,
            to_nm=at,
            pieces=tuple(
                replace(one, place=replace(one.place, top=at), across_to_nm=one.across_to_nm + shift)
                for one in low.pieces
            ),
        )
        high = replace(
            high,
            from_nm=at,
            pieces=tuple(
                replace(one, place=replace(one.place, bottom=at), across_from_nm=one.across_from_nm + shift)
                for one in high.pieces
            ),
        )
        changed = replace(second, courses=(low, high, *rest))
        return hanging._replace(layout=replace(hanging.layout, surfaces=(first, changed)))

    return damage


def in_job_surface(name: str, **changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change a surface of a job that has several."""
    return lambda hanging: in_job(
        surfaces=tuple(
            replace(surface, **changes) if surface.id == name else surface for surface in hanging.job.surfaces
        )
    )(hanging)


def in_surface(**changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change fields of the only surface of the job."""
    return lambda hanging: in_job(surfaces=(replace(hanging.job.surfaces[0], **changes),))(hanging)


def in_board(name: str, **changes: Any) -> Damage:  # noqa: ANN401 - any field
    """Change fields of one board."""
    return lambda hanging: in_job(
        boards=tuple(replace(each, **changes) if each.id == name else each for each in hanging.job.boards)
    )(hanging)


def in_score(**changes: int) -> Damage:
    """Change the score that the layout states."""
    return lambda hanging: _part(hanging, score=replace(hanging.layout.surfaces[0].score, **changes))


def bare(*places: Rectangle, without: str = "") -> Damage:
    """Declare places bare, and take a piece out."""
    return lambda hanging: _part(
        hanging,
        bare=places,
        courses=tuple(
            replace(row, pieces=tuple(each for each in row.pieces if each.label != without))
            for row in hanging.layout.surfaces[0].courses
        ),
    )


def _twice(hanging: Hanging) -> Hanging:
    return in_layout(surfaces=hanging.layout.surfaces * 2)(hanging)


def _unknown_too(hanging: Hanging) -> Hanging:
    (surface,) = hanging.layout.surfaces
    return in_layout(surfaces=(surface, replace(surface, surface_id="barn")))(hanging)


def _above_the_wall(hanging: Hanging) -> Hanging:
    (surface,) = hanging.layout.surfaces
    high = (10.25, 15.25)
    extra = course(3, high, piece(hanging.job.surfaces[0], "3a E", (0.25, 50), high))
    return _part(hanging, courses=(*surface.courses, extra))


def _reversed_pieces(hanging: Hanging) -> Hanging:
    first, second = hanging.layout.surfaces[0].courses
    return _part(hanging, courses=(replace(first, pieces=first.pieces[::-1]), second))


def _reversed_courses(hanging: Hanging) -> Hanging:
    return _part(hanging, courses=hanging.layout.surfaces[0].courses[::-1])


def _socket_up(hanging: Hanging) -> Hanging:
    return in_surface(cut_outs=(socket(20, 28, 22.5, 31),))(hanging)


_TONGUE = EdgeProfile(kind=EdgeKind.TONGUE_AND_GROOVE, reach_nm=nm(0.25))
_SHIPLAP = EdgeProfile(kind=EdgeKind.SHIPLAP, reach_nm=nm(0.25))

COVER = (
    Spoil(FindingCode.SURFACE_UNKNOWN, "a surface of another house", plain, _unknown_too),
    Spoil(FindingCode.SURFACE_MISSING, "the surface forgotten", plain, in_layout(surfaces=())),
    Spoil(FindingCode.SURFACE_TWICE, "the surface twice", plain, _twice),
    Spoil(FindingCode.BEYOND_MEASURE, "a nail two kilometres up", plain, nailed("1a", (8, 8e4))),
    Spoil(FindingCode.BEYOND_MEASURE, "a course off the earth", plain, in_course(2, to_nm=10**400)),
    Spoil(FindingCode.OTHER_JOB, "another job's name", plain, in_layout(job_name="barn")),
    Spoil(FindingCode.GAP, "a piece an inch short at its end", plain, moved("2b", right=-1, along_to_nm=-1)),
    Spoil(FindingCode.GAP, "an upright piece short", upright, moved("3a", top=-0.1, along_to_nm=-0.1)),
    Spoil(FindingCode.OVERLAP, "a piece an inch over the next", plain, moved("2a", right=1, along_to_nm=1)),
    Spoil(FindingCode.OUTSIDE, "a course above the wall", plain, _above_the_wall),
    Spoil(
        FindingCode.BLANK_TOO_LARGE, "an end sawn off at the wall", plain, moved("2b", right=1, along_to_nm=1)
    ),
    Spoil(
        FindingCode.BLANK_TOO_LARGE,
        "a course past its gap",
        uneven_floor,
        lambda hanging: in_course(2, to_nm=nm(11.875))(moved("2a", top=0.125, across_to_nm=0.125)(hanging)),
    ),
    Spoil(
        FindingCode.LEFT_BARE,
        "no board for a place",
        plain,
        bare(rectangle(72, 5.25, 96.25, 10.25), without="2b"),
    ),
    Spoil(
        FindingCode.BARE_BUT_COVERED,
        "bare where a piece hangs",
        plain,
        bare(rectangle(72, 5.25, 96.25, 10.25)),
    ),
)

BOARDS = (
    Spoil(FindingCode.BOARD_UNKNOWN, "a board nobody has", plain, in_piece("1a", board_id="Z")),
    Spoil(
        FindingCode.IN_END_TRIM,
        "too near the marked end",
        plain,
        moved("1a", along_from_nm=-0.25, along_to_nm=-0.25),
    ),
    Spoil(
        FindingCode.IN_END_TRIM,
        "too near the other end",
        plain,
        moved("1a", along_from_nm=1.5, along_to_nm=1.5),
    ),
    Spoil(FindingCode.IN_LOST_WOOD, "rot within", plain, in_board("A", flaws=(flaw(10, 12),))),
    Spoil(FindingCode.IN_LOST_WOOD, "rot at an end", plain, in_board("A", flaws=(flaw(40, 41),))),
    Spoil(
        FindingCode.BEYOND_WIDTH,
        "over the far edge",
        plain,
        moved("1a", across_from_nm=0.5, across_to_nm=0.5),
    ),
    Spoil(
        FindingCode.BEYOND_WIDTH,
        "over the near edge",
        plain,
        moved("1a", across_from_nm=-0.1, across_to_nm=-0.1),
    ),
    Spoil(FindingCode.BEYOND_WIDTH, "a board that tapers", plain, in_board("A", width_end_nm=nm(5.2))),
    Spoil(FindingCode.LENGTH_DIFFERS, "cut longer than its place", plain, moved("1a", along_to_nm=0.0625)),
    Spoil(FindingCode.LENGTH_DIFFERS, "an upright one cut short", upright, moved("1a", along_to_nm=-0.0625)),
    Spoil(
        FindingCode.WIDTH_DIFFERS, "ripped narrower than its place", plain, moved("1a", across_to_nm=-0.0625)
    ),
    Spoil(
        FindingCode.PIECES_CLASH,
        "less than a kerf along",
        one_wide_board,
        moved("1b", along_from_nm=-0.1, along_to_nm=-0.1),
    ),
    Spoil(
        FindingCode.PIECES_CLASH, "less than a kerf across", one_wide_board, in_rules(rip_kerf_nm=nm(0.25))
    ),
    Spoil(
        FindingCode.PIECES_CLASH,
        "wood used twice",
        one_wide_board,
        in_piece("1b", along_from_nm=nm(1), along_to_nm=nm(57.25)),
    ),
    Spoil(
        FindingCode.BLEMISH_SHOWS,
        "a stain in sight",
        plain,
        in_board("A", flaws=(flaw(10, 12, Severity.BLEMISH),)),
    ),
    Spoil(
        FindingCode.BLEMISH_SHOWS,
        "a stain on the face that shows",
        plain,
        in_board("A", flaws=(flaw(10, 12, Severity.BLEMISH, face=Face.FRONT),)),
    ),
    Spoil(
        FindingCode.BLEMISH_SHOWS,
        "a shorter bench",
        entry,
        in_surface(concealed=(ConcealedZone(id="bench", place=rectangle(74, 0, 105, 9)),)),
    ),
    Spoil(FindingCode.SPARES_SHORT, "two spares asked for", plain, in_rules(hold_back=2)),
)

COURSES = (
    Spoil(
        FindingCode.COURSE_EDGE,
        "a piece that starts a hair high",
        plain,
        moved("1a", bottom=1 / 64, across_to_nm=-1 / 64),
    ),
    Spoil(
        FindingCode.COURSE_WIDTH, "a piece too narrow", plain, moved("1a", top=-3 / 64, across_to_nm=-3 / 64)
    ),
    Spoil(FindingCode.COURSE_WIDTH, "a course too narrow", plain, in_course(2, to_nm=nm(10.125))),
    Spoil(
        FindingCode.COURSES_OVERLAP, "a course over the next", plain, in_course(1, to_nm=nm(5.25 + 1 / 32))
    ),
    Spoil(FindingCode.COURSE_NARROW, "courses asked wider", plain, in_rules(narrowest_course_nm=nm(5.5))),
    Spoil(FindingCode.OUT_OF_ORDER, "pieces from the right", plain, _reversed_pieces),
    Spoil(FindingCode.OUT_OF_ORDER, "courses from the top", plain, _reversed_courses),
    Spoil(FindingCode.OUT_OF_ORDER, "a course misnumbered", plain, in_course(2, number=1)),
    Spoil(FindingCode.LABEL_TWICE, "one label on two pieces", plain, in_piece("1b", label="1a")),
    Spoil(FindingCode.PIECE_SHORT, "a piece too short to butt", plain, in_rules(shortest_piece_nm=nm(30))),
    Spoil(FindingCode.SLIVER, "a strip over a socket", entry, _socket_up),
    Spoil(
        FindingCode.SLIVER,
        "a starter tapered to a long point",
        uneven_floor,
        in_rules(narrowest_course_nm=nm(5.4)),
    ),
)

JOINTS = (
    Spoil(FindingCode.JOINT_PROFILE, "a shiplap board ripped square", plain, in_board("B", profile=_SHIPLAP)),
    Spoil(FindingCode.JOINT_THICKNESS, "a thicker board", plain, in_board("B", thickness_nm=nm(0.875))),
    Spoil(
        FindingCode.JOINT_THICKNESS,
        "the bench moved",
        entry,
        lambda hanging: in_rules(blemishes=BlemishPolicy.ANYWHERE, stagger_nm=0)(
            in_surface(concealed=())(hanging)
        ),
    ),
    Spoil(FindingCode.SHIM, "a shim none allowed", plain, in_piece("1b", shim_nm=nm(0.0625))),
    Spoil(FindingCode.SHIM, "less than no shim", upright, in_piece("1a", shim_nm=-1)),
    Spoil(FindingCode.JOINT_OFF_FRAMING, "more bearing asked", plain, in_rules(bearing_nm=nm(1))),
    Spoil(FindingCode.JOINT_IN_SIGHT, "no joint allowed", plain, in_rules(joints=JointPolicy.NEVER)),
    Spoil(
        FindingCode.JOINT_IN_SIGHT, "no joint allowed upright", upright, in_rules(joints=JointPolicy.NEVER)
    ),
    Spoil(FindingCode.JOINT_STAGGER, "more stagger asked", plain, in_rules(stagger_nm=nm(33))),
    Spoil(
        FindingCode.EDGE_MISSTATED,
        "ripped stated as found",
        interlocked,
        in_piece("3a", near=EdgeTreatment.AS_FOUND),
    ),
    Spoil(
        FindingCode.EDGE_MISSTATED,
        "a groove stated ripped",
        interlocked,
        in_piece("2a", near=EdgeTreatment.RIPPED),
    ),
    Spoil(
        FindingCode.EDGE_MISSTATED,
        "no tongue to rip off",
        plain,
        in_piece("1a", far=EdgeTreatment.TONGUE_OFF),
    ),
    Spoil(
        FindingCode.TONGUE_CLASH,
        "a tongue on a square edge",
        interlocked,
        in_piece("2a", far=EdgeTreatment.AS_FOUND),
    ),
    Spoil(
        FindingCode.TONGUE_CLASH,
        "a tongue longer than the groove",
        interlocked,
        in_board("A", profile=replace(_TONGUE, reach_nm=nm(0.375))),
    ),
    Spoil(
        FindingCode.GROOVE_OPEN,
        "no spline between grooves",
        interlocked,
        in_piece("4a", near=EdgeTreatment.AS_FOUND),
    ),
    Spoil(
        FindingCode.GROOVE_OPEN,
        "a groove on a square edge",
        interlocked,
        in_piece("1a", far=EdgeTreatment.TONGUE_OFF),
    ),
)

CORNERS = (
    Spoil(FindingCode.CORNER, "a seam of one wall a quarter inch higher", corner, seam_raised(0.25)),
    Spoil(FindingCode.CORNER, "walls put the wrong way up", corner, in_job_surface("east", raised_nm=nm(1))),
)

SAWS = (
    Spoil(
        FindingCode.NO_STRAIGHT_CUT,
        "saws for a pinwheel",
        pinwheel,
        in_job(saws=(crosscut_saw(20), rip_saw(20))),
    ),
    Spoil(
        FindingCode.CROSSCUT_TOO_WIDE,
        "a short crosscut saw",
        one_wide_board,
        in_job(saws=(crosscut_saw(3), rip_saw(12))),
    ),
    Spoil(
        FindingCode.RIP_TOO_WIDE,
        "a narrow table saw",
        one_wide_board,
        in_job(saws=(crosscut_saw(12), rip_saw(3))),
    ),
    Spoil(FindingCode.RIP_TOO_WIDE, "no saw to rip with", one_wide_board, in_job(saws=(crosscut_saw(12),))),
    Spoil(
        FindingCode.ANGLED_CUT_TOO_LONG,
        "angled ends too long",
        gable,
        in_job(saws=(crosscut_saw(9.9), rip_saw(12))),
    ),
)

NAILS = (
    Spoil(FindingCode.NAIL_OFF_PIECE, "a nail in the doorway", entry, nailed("3a", (56, 18))),
    Spoil(FindingCode.NAIL_NEAR_EDGE, "a nail by the long edge", plain, nailed("1a", (8, 0.5))),
    Spoil(FindingCode.NAIL_NEAR_END, "a nail by the end", plain, nailed("1a", (39.9, 2))),
    Spoil(FindingCode.NAIL_OFF_FRAMING, "a nail between studs", plain, nailed("1a", (30, 2))),
    Spoil(FindingCode.NAIL_IN_KEEP_OUT, "a nail by the pipe", entry, nailed("1a", (31.3, 2))),
    Spoil(
        FindingCode.NAIL_IN_KEEP_OUT,
        "a wire behind solid backing",
        pinwheel,
        lambda hanging: nailed("1a", (20, 2))(
            in_surface(keep_outs=(KeepOut(id="wire", place=rectangle(19, 0, 21, 9)),))(hanging)
        ),
    ),
    Spoil(FindingCode.NAILS_TOO_FEW, "a piece not nailed", plain, in_piece("1a", nails=())),
    Spoil(FindingCode.JOINED_BUT_NOT_HELD, "more nailing asked", plain, in_rules(nailing_points=4)),
    Spoil(
        FindingCode.ADD_BLOCKING, "more nailing asked than studs", uneven_floor, in_rules(nailing_points=20)
    ),
)

SCORE = (
    Spoil(FindingCode.BARE_AREA_WRONG, "bare area made up", plain, in_score(bare_nm2=2 * 10**14)),
    Spoil(FindingCode.JOINT_COUNT_WRONG, "a joint hushed up", plain, in_score(joints_in_sight=1)),
    Spoil(FindingCode.WOOD_SPENT_WRONG, "wood hushed up", plain, in_score(wood_spent_nm2=0)),
)

SPOILS = (*COVER, *BOARDS, *COURSES, *JOINTS, *CORNERS, *SAWS, *NAILS, *SCORE)
