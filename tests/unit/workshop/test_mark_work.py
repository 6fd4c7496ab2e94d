"""Marks say what happened, and refuse what cannot have."""

import pytest

from builders import nm
from in_progress import Measured, begun_job, begun_layout, happened, marked
from plankwright.errors import ExitCode
from plankwright.model import Part, Standing
from plankwright.workshop.hang_courses import MeasureError
from plankwright.workshop.mark_work import Happened, MarkError


def in_hand(standing: Standing) -> dict[str, tuple[float, float]]:
    """Give length and width in inches of each piece in hand."""
    return {cut.piece.label: (cut.part.length_nm / nm(1), cut.part.width_nm / nm(1)) for cut in standing.cut}


def rests(standing: Standing, board_id: str) -> list[tuple[float, float]]:
    """Give from where to where along a board its rests lie, in inches."""
    return [
        (part.along_from_nm / nm(1), part.along_to_nm / nm(1))
        for part in standing.left
        if part.board_id == board_id
    ]


def edges(standing: Standing) -> list[tuple[float, float]]:
    """Give the edges of what hangs, in inches."""
    return [(row.from_nm / nm(1), row.to_nm / nm(1)) for row in standing.hung_on("wall")]


def test_a_piece_that_is_cut_is_in_hand_and_its_board_is_parted() -> None:
    """What the board is still to give stays whole: it is ripped with it, and comes free beside it."""
    standing = marked(happened("cut", "2b")).standing
    assert in_hand(standing) == {"2b": (40, 6)}
    assert rests(standing, "long") == [(40.625, 96.625), (96.75, 150)]


def test_a_number_names_the_pieces_of_a_course() -> None:
    """Those that are not yet cut."""
    standing = marked(happened("cut", "2b"), happened("cut", "2")).standing
    assert set(in_hand(standing)) == {"2a", "2b"}


def test_what_is_hung_was_cut() -> None:
    """Whether that was marked or not."""
    standing = marked(happened("cut", "2b"), happened("hung", "1", "2")).standing
    assert standing.hung_labels("wall") == {"1a", "2a", "2b"}
    assert standing.cut == ()
    assert set(standing.sawn) == {"long", "A", "B"}
    assert edges(standing) == [(0, 6), (6, 12)]


def test_a_course_grows_piece_by_piece() -> None:
    """Between the same edges."""
    standing = marked(happened("hung", "2b"), happened("hung", "2a")).standing
    (row,) = standing.hung_on("wall")
    assert [piece.label for piece in row.pieces] == ["2a", "2b"]


def test_a_course_hangs_on_the_one_below_wherever_that_came_out() -> None:
    """An eighth higher, and so is what follows; nails go with their pieces."""
    work = marked(happened("hung", "1", measured=Measured(edge_nm=nm(6.125))), happened("hung", "2"))
    assert edges(work.standing) == [(0, 6.125), (6.125, 12.125)]
    below, above = work.standing.hung_on("wall")
    assert (below.pieces[0].place.bottom, below.pieces[0].place.top) == (nm(0.125), nm(6.125))
    assert below.pieces[0].nails[0] == (nm(8), nm(1.125))
    assert (above.pieces[0].place.bottom, above.pieces[0].place.top) == (nm(6.125), nm(12.125))


@pytest.mark.parametrize(
    ("measured", "edge"), [(Measured(off_nm=nm(0.25)), 6.25), (Measured(off_nm=-nm(0.25)), 5.75)]
)
def test_an_edge_may_be_told_by_how_far_it_is_off(measured: Measured, edge: float) -> None:
    """Farther from the start side, or nearer: then no piece reaches beyond the edge."""
    work = marked(happened("hung", "1"), happened("hung", "1a", measured=measured))
    (row,) = work.standing.hung_on("wall")
    assert row.to_nm == nm(edge)
    assert row.pieces[0].place.top == nm(edge)
    assert row.pieces[0].place.bottom == max(0, nm(edge - 6))


def test_a_piece_that_broke_is_gone_and_what_is_left_of_its_board_is_not() -> None:
    """While it was cut, in hand, or hanging."""
    assert rests(marked(happened("broke", "2b")).standing, "long") == [(40.625, 96.625), (96.75, 150)]
    assert in_hand(marked(happened("cut", "2b"), happened("broke", "2b")).standing) == {}
    standing = marked(happened("hung", "2"), happened("broke", "2b")).standing
    assert standing.hung_labels("wall") == {"2a"}


def test_of_a_piece_cut_wrong_a_plain_rectangle_is_left() -> None:
    """Too short: what is still to come can come all the same."""
    standing = marked(happened("miscut", "2b", length_nm=nm(36))).standing
    assert in_hand(standing) == {"2b": (36, 6)}
    assert standing.cut[0].plain
    assert rests(standing, "long") == [(36.625, 96.625), (96.75, 150)]


def test_a_piece_in_hand_can_be_cut_wrong_again() -> None:
    """Narrower this time."""
    standing = marked(
        happened("miscut", "2b", length_nm=nm(36)), happened("miscut", "2b", width_nm=nm(5))
    ).standing
    assert in_hand(standing) == {"2b": (36, 5)}


def test_a_piece_cut_too_long_takes_from_the_rest() -> None:
    """And what was still to come from there no longer can."""
    standing = marked(happened("miscut", "2b", length_nm=nm(60))).standing
    assert in_hand(standing) == {"2b": (60, 6)}
    assert rests(standing, "long") == [(60.625, 150)]


def test_a_piece_taken_down_is_in_hand() -> None:
    """Whole, with its slopes and notches."""
    standing = marked(happened("hung", "2"), happened("down", "2a")).standing
    assert in_hand(standing) == {"2a": (56, 6)}
    assert not standing.cut[0].plain
    assert standing.hung_labels("wall") == {"2b"}


def test_of_a_board_that_is_lost_only_the_pieces_are_left_that_were_cut() -> None:
    """Whatever was still to come from it."""
    standing = marked(happened("cut", "2b"), happened("lost", "LONG")).standing
    assert standing.lost == ("long",)
    assert standing.parts_of("long") == (
        Part(
            board_id="long",
            along_from_nm=nm(0.5),
            along_to_nm=nm(40.5),
            across_from_nm=nm(0.125),
            across_to_nm=nm(6.125),
        ),
    )


def test_work_remembers_the_boards_that_it_began_with() -> None:
    """So that others are known to be found."""
    assert marked(happened("cut", "1")).boards == ("A", "B", "C", "D", "long", "wide")


@pytest.mark.parametrize(
    ("events", "sentence"),
    [
        ([happened("cut")], "Say which"),
        ([happened("cut", "9a")], "There is no piece 9a in the layout"),
        ([happened("hung", "9")], "There is no course 9"),
        ([happened("cut", "1a", surface_id="loft")], "no surface loft, but wall"),
        ([happened("cut", "1a"), happened("cut", "1a")], "1a is marked as cut already"),
        ([happened("hung", "1"), happened("cut", "1")], "1a is marked as cut already"),
        ([happened("hung", "2"), happened("hung", "2")], "2a and 2b are marked as hung already"),
        ([happened("hung", "1", "2", measured=Measured(edge_nm=nm(12)))], "several courses are named"),
        ([happened("down", "1a")], "1a is not marked as hung"),
        ([happened("miscut", "1a")], "Say what size"),
        ([happened("miscut", "1a", "2a", length_nm=nm(30))], "one at a time"),
        ([happened("miscut", "2", length_nm=nm(30))], "one at a time, each by its label"),
        ([happened("miscut", "1a", length_nm=0)], "no size is no piece"),
        ([happened("hung", "1"), happened("miscut", "1a", length_nm=nm(30))], "mark it as taken down first"),
        (
            [happened("cut", "1a"), happened("miscut", "1a", length_nm=nm(97))],
            "1a cannot be larger than what it was cut from",
        ),
        ([happened("lost", "Z")], "There is no board Z in the tally"),
        ([happened("lost", "A"), happened("lost", "A")], "Board A is marked as lost already"),
        ([happened("lost", "A"), happened("cut", "1a")], "wood of board A that is no longer there"),
    ],
)
def test_what_cannot_have_happened_is_refused(events: list[Happened], sentence: str) -> None:
    """With one sentence, and as bad input."""
    with pytest.raises(MarkError, match=sentence) as refused:
        marked(*events)
    assert refused.value.exit_code == ExitCode.BAD_INPUT


@pytest.mark.parametrize("edge", [0, 12, 24])
def test_an_edge_a_whole_course_away_is_a_slip(edge: float) -> None:
    """Measured from the wrong side, or of another course."""
    with pytest.raises(MeasureError, match="Course 1 was to end at 6"):
        marked(happened("hung", "1", measured=Measured(edge_nm=nm(edge))))


def test_the_layout_of_these_tests_is_right() -> None:
    """Else they would prove nothing."""
    from plankwright.check import check_layout, faults  # noqa: PLC0415 - needed here alone

    assert not faults(check_layout(begun_job(), begun_layout()))
