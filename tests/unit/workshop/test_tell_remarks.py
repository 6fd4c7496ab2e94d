"""What the checker leaves to judgement stands once for all pieces that it holds for, the worst first."""

from plankwright.check import Finding, FindingCode
from plankwright.check.finding import found
from plankwright.workshop.tell_remarks import tell_remarks


def blocking(piece: str, possible: int) -> Finding:
    """A piece that could be nailed at so many members."""
    told = "held by nothing" if possible == 0 else f"held at {possible} of 2"
    place = ("entry", f"course {piece[:-1]}, piece {piece}")
    return found(FindingCode.ADD_BLOCKING, place, told, measured=possible, allowed=2)


def test_one_sentence_for_all_pieces_alike() -> None:
    """With their labels; those that nothing holds come first, a single one as the checker tells it."""
    one, two, none = blocking("1b", 1), blocking("12b", 1), blocking("3a", 0)
    assert tell_remarks([one, two, none]) == (str(none), "entry, pieces 1b, 12b: held at 1 of 2 [508]")


def test_nothing_is_told_twice() -> None:
    """The same words of the same piece, as of two notches, are one sentence."""
    again = blocking("4a", 1)
    assert tell_remarks([again, again]) == (str(again),)


def test_nothing_to_tell() -> None:
    """No findings, no sentences."""
    assert tell_remarks([]) == ()
