"""Nails are told by stud, and places without nails by what runs there."""

from builders import box_outline, course, job, piece, rectangle, studs, surface_layout, wall
from plankwright.draw.subject import Subject, subject
from plankwright.model import Course, Direction, Edge, Framing, KeepOut, Piece, Surface
from plankwright.paper.nailing import PieceNailing, member_name, tell_keep_outs, tell_nails

PIPE = KeepOut(id="riser", what="water pipe", place=rectangle(30, 0, 31, 48))
WIRE = KeepOut(id="feed", what="wire", place=rectangle(40, 8, 60, 9))
WALL = wall(96, 48, keep_outs=(PIPE, WIRE))


def hung(surface: Surface, *pieces: Piece) -> Subject:
    """Give a surface with pieces in one course from 6 to 12."""
    return subject(job(surface, []), surface_layout(surface, row(*pieces)))


def row(*pieces: Piece) -> Course:
    """Give the course."""
    return course(1, (6, 12), *pieces)


def whole_row(number: int = 1, low: float = 6) -> Course:
    """Give a course with a piece from end to end."""
    return course(number, (low, low + 6), piece(WALL, f"{number}a B", (0, 96), (low, low + 6)))


def plain(text: str) -> str:
    """Give a text with common spaces."""
    return text.replace("\N{NO-BREAK SPACE}", " ")


def test_members_are_named_as_on_the_map() -> None:
    """Studs are counted from the left and named with the mark of their centre."""
    assert plain(member_name(hung(WALL), 2)) == 'S2 (24")'


def test_nails_are_counted_by_stud() -> None:
    """Studs with as many nails are told together."""
    one = piece(WALL, "1a B", (0, 60), (6, 12), nailed_at=(8, 24, 40, 40.25))
    assert plain(tell_nails(hung(WALL, one), one)) == "8 in all: 2 on each of S1, S2; 4 on S3."


def test_too_few_studs_ask_for_blocking() -> None:
    """A piece behind which fewer studs stand than the rules ask for needs more than nails."""
    one = piece(WALL, "1a B", (0, 20), (6, 12), nailed_at=(8,))
    told = plain(tell_nails(hung(WALL, one), one))
    assert told == "2 in all: 2 on S1. Only 1 of 2 studs behind it: add blocking or adhesive."


def test_piece_without_nails_says_why() -> None:
    """No nails mean nothing to nail to, or backing that takes them anywhere."""
    one = piece(WALL, "1a B", (10, 20), (6, 12))
    assert tell_nails(hung(WALL, one), one) == (
        "none, no stud takes one behind this piece: add blocking or adhesive."
    )
    solid = wall(96, 48, framing=Framing(solid=True))
    assert tell_nails(hung(solid, one), one) == "anywhere, the backing is solid."


def test_nails_into_solid_backing_are_counted() -> None:
    """Given nails are told even where the backing would take them anywhere."""
    solid = wall(96, 48, framing=Framing(solid=True))
    one = piece(solid, "1a B", (0, 60), (6, 12), nailed_at=(5, 55))
    assert tell_nails(hung(solid, one), one) == "4 in all: 4 into the backing."


def test_keep_outs_are_told_with_their_clearance() -> None:
    """A pipe right through a course is told along it, a wire in part of it across as well."""
    assert list(tell_keep_outs(hung(WALL), whole_row())) == [
        'No nail between 29" and 32" along: water pipe (riser).',
        'No nail between 39" and 61" along, 7" to 10" from the start: wire (feed).',
    ]


def test_keep_outs_of_other_courses_are_left_out() -> None:
    """A wire that ends below a course is no concern of it."""
    assert list(tell_keep_outs(hung(WALL), whole_row(2, 12))) == [
        'No nail between 29" and 32" along: water pipe (riser).'
    ]


def test_keep_outs_beside_the_pieces_of_a_course_are_left_out() -> None:
    """Where none of its pieces hangs nobody drives a nail; and no mark lies beyond the wall."""
    short = row(piece(WALL, "1a B", (0, 35), (6, 12)))
    assert list(tell_keep_outs(hung(WALL), short)) == [
        'No nail between 29" and 32" along: water pipe (riser).'
    ]
    wide = wall(96, 48, keep_outs=(KeepOut(id="run", what="wire", place=rectangle(0, 8, 96, 9)),))
    assert list(tell_keep_outs(hung(wide), short)) == [
        'No nail between 0" and 96" along, 7" to 10" from the start: wire (run).'
    ]


def test_no_nail_of_a_kind_may_be_driven() -> None:
    """Then paper says so, instead of those of the layout."""
    one = piece(WALL, "1a B", (0, 60), (6, 12), nailed_at=(8, 24, 40))
    told = tell_nails(hung(WALL, one), one, PieceNailing())
    assert told == ("none, every nail of this kind is too long here or too short: add blocking or adhesive.")


def test_upright_courses_cross_strips() -> None:
    """On upright courses the framing runs across and is told from below."""
    upright = wall(
        48,
        96,
        outline=box_outline(48, 96),
        courses_run=Direction.VERTICAL,
        start=Edge.LEFT,
        framing=studs(8, 40, runs=Direction.HORIZONTAL),
        keep_outs=(KeepOut(id="feed", what="wire", place=rectangle(0, 50, 48, 51)),),
    )
    one = piece(upright, "1a B", (0, 90), (6, 12), nailed_at=(8, 40))
    what = hung(upright, one)
    assert plain(tell_nails(what, one)) == "4 in all: 2 on each of S1, S2."
    assert list(tell_keep_outs(what, row(one))) == ['No nail between 49" and 52" along: wire (feed).']
