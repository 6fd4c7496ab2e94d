"""What a board falls into when some of its pieces are cut and others are still to come."""

from builders import board, course, job, layout, nm, piece, surface_layout, wall
from plankwright.layout.parting import part_boards
from plankwright.model import NOTHING_DONE, CutPiece, Job, Layout, Part, Piece, Rules, Standing, part_of

WALL = wall(96, 24)
RULES = Rules(expansion_gap_nm=0)


def job_of(length: float, width: float) -> Job:
    """Give a job of one board."""
    return job(WALL, [board("A", length, width)], RULES)


def laid(*pieces: Piece) -> Layout:
    """Give a layout with a course for each piece."""
    rows = (course(number, (6 * number - 6, 6 * number), one) for number, one in enumerate(pieces, start=1))
    return layout(surface_layout(WALL, *rows))


def parts(*found: Part) -> list[tuple[float, float, float, float]]:
    """Give parts in inches: along from and to, across from and to."""
    return [
        (
            part.along_from_nm / nm(1),
            part.along_to_nm / nm(1),
            part.across_from_nm / nm(1),
            part.across_to_nm / nm(1),
        )
        for part in found
    ]


def test_what_is_still_to_come_stays_whole_with_its_offcut() -> None:
    """Only the passes are made that free what is cut; here both are ripped before they are parted."""
    first = piece(WALL, "1a A", (0, 40), (0, 6))
    second = piece(WALL, "2a A", (0, 30), (6, 12), at=(40.625, 0.125))
    parted = part_boards(
        job_of(97, 6.25), laid(first, second), NOTHING_DONE, {("wall", "1a"): part_of(first)}
    )
    (sawn,) = parted.boards
    assert parts(*sawn.left) == [(40.625, 70.625, 0.125, 6.125), (70.75, 97, 0, 6.25)]
    assert parted.used_up == ()


def test_a_strip_beside_a_piece_is_kept_when_it_is_wide_enough() -> None:
    """A wide board: crosscut, then ripped."""
    only = piece(WALL, "1a A", (0, 40), (0, 6))
    (sawn,) = part_boards(job_of(41, 12), laid(only), NOTHING_DONE, {("wall", "1a"): part_of(only)}).boards
    assert parts(*sawn.left) == [(0.5, 40.5, 6.25, 12)]


def test_scraps_are_not_kept() -> None:
    """What is shorter than the shortest piece and narrower than the narrowest course is none."""
    only = piece(WALL, "1a A", (0, 90), (0, 6))
    (sawn,) = part_boards(job_of(97, 6.25), laid(only), NOTHING_DONE, {("wall", "1a"): part_of(only)}).boards
    assert sawn.left == ()


def test_a_second_piece_comes_out_of_what_the_first_has_left() -> None:
    """And the rest of the board is told anew."""
    first = piece(WALL, "1a A", (0, 20), (0, 6))
    second = piece(WALL, "2a A", (0, 20), (6, 12), at=(20.625, 0.125))
    rest = Part(
        board_id="A", along_from_nm=nm(20.625), along_to_nm=nm(97), across_from_nm=0, across_to_nm=nm(6.25)
    )
    standing = Standing(cut=(CutPiece(surface_id="wall", piece=first),), left=(rest,), sawn=("A",))
    (sawn,) = part_boards(
        job_of(97, 6.25), laid(first, second), standing, {("wall", "2a"): part_of(second)}
    ).boards
    assert parts(*sawn.left) == [(40.75, 97, 0, 6.25)]


def test_a_piece_cut_from_a_piece_in_hand_uses_it_up() -> None:
    """What is left of that is a part like any other."""
    before = piece(WALL, "9z A", (0, 60), (0, 6))
    after = piece(WALL, "1a A", (0, 30), (0, 6))
    standing = Standing(cut=(CutPiece(surface_id="wall", piece=before),), sawn=("A",))
    parted = part_boards(job_of(97, 6.25), laid(after), standing, {("wall", "1a"): part_of(after)})
    assert parted.used_up == (("wall", "9z"),)
    assert parts(*parted.boards[0].left) == [(30.625, 60.5, 0.125, 6.125)]


def test_a_piece_cut_longer_than_planned_takes_from_the_next() -> None:
    """The next is left out of account then, and what is left is one rest."""
    first = piece(WALL, "1a A", (0, 40), (0, 6))
    second = piece(WALL, "2a A", (0, 50), (6, 12), at=(40.625, 0.125))
    longer = Part(
        board_id="A",
        along_from_nm=nm(0.5),
        along_to_nm=nm(45),
        across_from_nm=nm(0.125),
        across_to_nm=nm(6.125),
    )
    (sawn,) = part_boards(
        job_of(97, 6.25), laid(first, second), NOTHING_DONE, {("wall", "1a"): longer}
    ).boards
    assert parts(*sawn.left) == [(45.125, 97, 0, 6.25)]
