"""Signs of insects, mould and rot in the words of a tally."""

import pytest

from plankwright.trade.readying.signs import shows_insects, shows_mould, shows_rot


@pytest.mark.parametrize("words", ["worm holes", "Powderpost!", "eaten by beetles", "old wormholes"])
def test_insects(words: str) -> None:
    """However they are called."""
    assert shows_insects(words)


@pytest.mark.parametrize("words", ["", "wormy-looking knot", "warm", "nail holes"])
def test_no_insects(words: str) -> None:
    """Words that only look alike."""
    assert not shows_insects(words)


def test_mould_and_rot() -> None:
    """In British and American spelling."""
    assert shows_mould("mold on the back")
    assert shows_mould("mouldy")
    assert not shows_mould("moulding")
    assert shows_rot("punky end")
    assert not shows_rot("sound")
