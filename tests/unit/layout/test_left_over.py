"""What is left once all hangs is tallied piece by piece, and nothing twice."""

from dataclasses import replace

from builders import board, nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.layout.left_over import left_over
from plankwright.model import NOTHING_DONE, Standing


def left(standing: Standing = NOTHING_DONE, *more: str) -> dict[str, float]:
    """Give the length in inches of what is left, by its id."""
    return {one.id: one.length_nm / nm(1) for one, _ in left_over(begun_job(*more), begun_layout(), standing)}


def test_whole_boards_and_offcuts_are_left() -> None:
    """Scraps are not: less than the shortest piece, once trimmed."""
    assert left() == {"B-1": 40.375, "D-1": 56.375, "long-1": 53.25, "wide": 97}


def test_whole_boards_stay_in_the_tally_however_short() -> None:
    """The next surface may take shorter pieces."""
    stub = board("stub", 9, 6.25)
    with_stub = replace(begun_job(), boards=(stub, *begun_job().boards))
    (first, was), *_ = left_over(with_stub, begun_layout(), NOTHING_DONE)
    assert first == was == stub


def test_it_makes_no_difference_how_far_the_job_has_come() -> None:
    """As long as all goes as laid out."""
    assert left(marked(happened("hung", "1", "2"), happened("cut", "4b")).standing) == left()
    assert left(marked(happened("hung", "1", "2", "3", "4")).standing) == left()


def test_what_is_lost_is_not_left() -> None:
    """Of a board that was sawn the offcut is lost too."""
    assert "wide" not in left(marked(happened("lost", "wide")).standing)
    standing = marked(happened("hung", "2", "4"), happened("lost", "long")).standing
    assert left(standing) == {"B-1": 40.375, "D-1": 56.375, "wide": 97}


def test_a_piece_that_no_layout_needs_is_left() -> None:
    """Taken down or cut in vain."""
    standing = marked(happened("cut", "4a")).standing
    extra = marked(happened("miscut", "3a", length_nm=nm(60))).standing
    laid = begun_layout()
    without = type(laid)(
        job_name=laid.job_name,
        surfaces=tuple(
            type(surface)(
                surface_id=surface.surface_id,
                courses=tuple(row for row in surface.courses if row.number != 3),
                score=surface.score,
            )
            for surface in laid.surfaces
        ),
    )
    assert "C-1" in {one.id for one, _ in left_over(begun_job(), without, extra)}
    assert "4a" not in left(standing)


def test_ids_are_free() -> None:
    """A board may be called like an offcut."""
    assert set(left(NOTHING_DONE, "D-1")) == {"B-1", "D-1", "D-2", "long-1", "wide"}
