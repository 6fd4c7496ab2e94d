"""Signs of insects, mould and rot in the words of a tally."""

import pytest

from plankwright.trade.readying.signs import (
    shows_insects,
    shows_mould,
    shows_paint,
    shows_rot,
    tells_heated,
)


@pytest.mark.parametrize(
    "words",
    [
        "worm holes",
        "Powderpost!",
        "eaten by beetles",
        "old wormholes",
        "wormy",
        "woodworms",
        "worm-eaten sapwood",
        "a trail of ants",
        "ant nest",
        "termites",
        "larval galleries",
    ],
)
def test_insects(words: str) -> None:
    """However they are called."""
    assert shows_insects(words)


@pytest.mark.parametrize(
    "words",
    [
        "",
        "warm",
        "important",
        "antique",
        "planted by hand",
        "wormwood stain",
        "sprayed with insecticide",
        "bugle screw",
        "nail holes",
        "no worm holes",
        "without any sign of beetles",
        "no rot or insects",
        "not wormy",
        "no live woodworms",
    ],
)
def test_no_insects(words: str) -> None:
    """Words that only look alike."""
    assert not shows_insects(words)


def test_mould_and_rot() -> None:
    """In British and American spelling."""
    assert shows_mould("mold on the back")
    assert shows_mould("mouldy")
    assert shows_mould("mildewed")
    assert not shows_mould("moulding")
    assert not shows_mould("mushroomed end")
    assert shows_rot("punky end")
    assert not shows_rot("sound")
    assert not shows_rot("soft brushed finish")


@pytest.mark.parametrize("words", ["rotting", "Rotten end", "rotted away", "decaying", "dry rot"])
def test_rot(words: str) -> None:
    """However it is written."""
    assert shows_rot(words)


@pytest.mark.parametrize(
    "words", ["rotated", "rotary saw marks", "carrot", "not rotting", "no sign of decay"]
)
def test_no_rot(words: str) -> None:
    """Words that only begin alike, and denials."""
    assert not shows_rot(words)


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
    assert shows_paint("paint-splashed")
    assert not shows_paint("painter's tape")
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
