"""Signs of insects, mould and rot in the words of a tally."""

import pytest

from plankwright.trade.readying.signs import (
    shows_insects,
    shows_mould,
    shows_paint,
    shows_rot,
    tells_heated,
)


@pytest.mark.parametrize("words", ["worm holes", "Powderpost!", "eaten by beetles", "old wormholes"])
def test_insects(words: str) -> None:
    """However they are called."""
    assert shows_insects(words)


@pytest.mark.parametrize(
    "words",
    [
        "",
        "wormy-looking knot",
        "warm",
        "nail holes",
        "no worm holes",
        "without any sign of beetles",
        "no rot or insects",
    ],
)
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
    assert not shows_rot("soft brushed finish")


def test_a_no_reaches_no_farther_than_its_clause() -> None:
    """What comes after a comma, or after another word, is met."""
    assert shows_insects("no rot, worm holes")
    assert shows_insects("no longer sound: worm")
    assert not shows_rot("no rot, worm holes")
    assert shows_mould("no trace of paint; mould on the back")


def test_paint() -> None:
    """Paint only: varnish holds none."""
    assert shows_paint("all paint back")
    assert shows_paint("Painted white")
    assert shows_paint("whitewash")
    assert not shows_paint("old varnish")
    assert not shows_paint("never painted")
    assert not shows_paint("unpainted")


@pytest.mark.parametrize("words", ["not heated", "not yet heated", "to be heated", "unheated", "", "heat it"])
def test_not_heated(words: str) -> None:
    """What is still to be done is not done."""
    assert not tells_heated(words)


def test_heated() -> None:
    """In the middle of other words."""
    assert tells_heated("worm holes, heated in March")
