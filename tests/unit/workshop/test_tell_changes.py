"""What is different, told so that a carpenter can act on it."""

from builders import board, job, nm, piece, wall
from plankwright.layout.again import Change, ChangeKind
from plankwright.model import Piece, Rules
from plankwright.workshop.tell_changes import moved_share, tell_changes

WALL = wall(96, 24)
JOB = job(WALL, [board(name, 97, 6.25) for name in "AB"], Rules(expansion_gap_nm=0))
ONE = piece(WALL, "1a A", (0, 60), (0, 6))
OTHER = piece(WALL, "3a B", (0, 60), (12, 18))


def change(
    kind: ChangeKind, before: Piece | None, after: Piece | None, *, cut: bool = False, shifted: float = 0
) -> Change:
    """Give a change on the wall."""
    return Change(kind=kind, surface_id="wall", before=before, after=after, cut=cut, shifted_nm=nm(shifted))


SAME = change(ChangeKind.SAME, ONE, ONE)


def test_where_all_stays_that_is_all_there_is_to_say() -> None:
    """One piece or several; or none is left."""
    assert tell_changes(JOB, [SAME]) == ("One of one piece still to be hung stays as it was.",)
    assert tell_changes(JOB, [SAME, SAME]) == ("Two of two pieces still to be hung stay as they were.",)
    assert tell_changes(JOB, []) == ("Nothing is left to be hung.",)


def test_what_is_gone_and_not_replaced_is_counted_too() -> None:
    """Or one would read that all stays as it was."""
    gone = change(ChangeKind.GONE, OTHER, None)
    summary, line = tell_changes(JOB, [SAME, gone])
    assert summary == "One of one piece still to be hung stays as it was; one is gone."
    assert line == "- 3a is gone."
    assert tell_changes(JOB, [gone])[0] == "Nothing is left to be hung; one is gone."


def test_each_sort_of_change_has_its_sentence() -> None:
    """With the size that is to be cut, and where it is to be hung when that is not where it was."""
    moved = piece(WALL, "2b A", (36, 96), (6, 12))
    shorter = piece(WALL, "1a A", (0, 56), (0, 6))
    told = tell_changes(
        JOB,
        [
            SAME,
            change(ChangeKind.OTHER_BOARD, ONE, piece(WALL, "1a B", (0, 60), (0, 6))),
            change(ChangeKind.OTHER_BOARD, ONE, ONE),
            change(ChangeKind.OTHER_SIZE, ONE, shorter),
            change(ChangeKind.OTHER_SIZE, ONE, shorter, cut=True),
            change(ChangeKind.MOVED, ONE, moved, cut=True),
            change(ChangeKind.MOVED, ONE, piece(WALL, "2b A", (36, 90), (6, 12)), cut=True),
            change(ChangeKind.NEW, None, moved),
            change(ChangeKind.NOT_NEEDED, OTHER, None, cut=True),
            change(ChangeKind.GONE, OTHER, None),
        ],
    )
    summary, *lines = told
    assert summary == (
        "One of eight pieces still to be hung stays as laid out before; two are cut from other wood, two are "
        "cut to another size, two are hung in another place, one is new, one is no longer needed and one is "
        "gone."
    )
    elsewhere = '- 2b (was 1a), cut already, hangs elsewhere now, 36" to {} along and 6" from the start side'
    assert lines == [
        '- 1a is cut from board B instead of A: 5\' 0" by 6".',
        '- 1a is cut anew from what is left of board A: 5\' 0" by 6".',
        '- 1a is cut to 4\' 8" by 6" instead of 5\' 0" by 6", board A.',
        '- 1a, cut already, is cut down to 4\' 8" by 6" from 5\' 0" by 6", board A.',
        elsewhere.format('96"') + ': 5\' 0" by 6", board A.',
        elsewhere.format('90"') + ': 4\' 6" by 6", cut down from 5\' 0" by 6", board A.',
        '- 2b is new: 5\' 0" by 6", board A.',
        "- 3a, cut already, is no longer needed.",
        "- 3a is gone.",
    ]


def test_a_label_that_another_piece_bears_now_is_told_apart() -> None:
    """Or one would read that the piece was both hung and gone."""
    told = tell_changes(
        JOB,
        [
            change(ChangeKind.NEW, None, piece(WALL, "1a B", (0, 60), (0, 6))),
            change(ChangeKind.GONE, ONE, None),
        ],
    )
    assert told[1:] == ('- 1a is new: 5\' 0" by 6", board B.', "- 1a of before is gone.")


def test_heights_are_told_together() -> None:
    """From the first to the last piece that hangs higher, or lower."""
    higher = change(ChangeKind.SAME, ONE, ONE, shifted=0.125)
    last = change(ChangeKind.SAME, ONE, piece(WALL, "3a A", (0, 60), (12, 18)), shifted=0.125)
    lower = change(ChangeKind.SAME, ONE, ONE, shifted=-0.25)
    assert tell_changes(JOB, [higher, last, lower])[1:] == (
        'wall: 1a and 3a hang 1/8" farther from the start side than before.',
        'wall: 1a hangs 1/4" nearer to the start side than before.',
    )
    assert tell_changes(JOB, [higher, higher, last])[1].startswith("wall: 1a to 3a hang")


def test_with_several_surfaces_pieces_are_told_with_theirs() -> None:
    """Labels are not enough then."""
    both = job([WALL, wall(96, 24, id="loft")], JOB.boards)
    told = tell_changes(both, [change(ChangeKind.NEW, None, ONE)])
    assert told[1] == '- wall 1a is new: 5\' 0" by 6", board A.'


def test_the_share_that_moved_counts_what_is_still_to_be_hung() -> None:
    """What is gone or no longer needed is neither."""
    changes = [SAME, SAME, change(ChangeKind.NEW, None, ONE), change(ChangeKind.GONE, ONE, None)]
    assert moved_share(changes) == 1 / 3
    assert moved_share([]) == 0
