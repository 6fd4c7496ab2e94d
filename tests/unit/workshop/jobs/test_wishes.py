"""Wishes are values: one for each piece and board, taken back one by one, written and read as they are."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from builders import wall
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from village import small_job

KEEP = PieceWish(surface_id="wall", label="1a", board_id="A")
PUT = PieceWish(surface_id="wall", label="2a", board_id="C")
ALL = NO_WISHES.keeping(KEEP).putting(PUT).leaving_out("B")

_TEXTS = st.text(max_size=6)
_PIECES = st.builds(PieceWish, surface_id=_TEXTS, label=_TEXTS, board_id=_TEXTS)


def test_each_wish_is_said_in_words() -> None:
    """Without the surface where there is but one, else with it."""
    assert [told.words for told in ALL.told(small_job())] == [
        "1a stays where it is",
        "board C for piece 2a",
        "without board B",
    ]
    two = replace(small_job(), surfaces=(*small_job().surfaces, wall(40, 40, id="porch")))
    assert [told.words for told in ALL.told(two)] == [
        "wall 1a stays where it is",
        "board C for piece wall 2a",
        "without board B",
    ]


def test_a_piece_has_one_wish_at_the_most() -> None:
    """The later one counts."""
    other = replace(PUT, board_id="B")
    assert NO_WISHES.putting(PUT).putting(other) == Wishes(put=(other,))
    assert NO_WISHES.putting(PUT).keeping(other) == Wishes(kept=(other,))
    assert NO_WISHES.keeping(PUT).putting(other) == Wishes(put=(other,))
    assert NO_WISHES.leaving_out("B").leaving_out("B") == Wishes(without=("B",))


def test_a_piece_can_be_freed_of_whatever_was_wished_of_it() -> None:
    """All else stays."""
    assert ALL.less_piece(KEEP.key) == replace(ALL, kept=())
    assert ALL.less_piece(PUT.key) == replace(ALL, put=())
    assert ALL.less_piece(("wall", "9a")) == ALL


@given(st.lists(_PIECES, max_size=3), st.lists(_PIECES, max_size=3), st.lists(_TEXTS, max_size=3))
def test_wishes_are_read_as_they_were_written(
    kept: list[PieceWish], put: list[PieceWish], without: list[str]
) -> None:
    """Whatever pieces and boards are called; nothing wished is nothing written."""
    wishes = Wishes(kept=tuple(kept), put=tuple(put), without=tuple(without))
    assert Wishes.from_json(wishes.to_json()) == wishes
    assert bool(wishes.to_json()) is not wishes.none


@given(_PIECES, _PIECES, _TEXTS)
def test_each_wish_is_taken_back_by_itself(kept: PieceWish, put: PieceWish, board_id: str) -> None:
    """And one that is not there is no matter."""
    wishes = NO_WISHES.keeping(kept).putting(put).leaving_out(board_id)
    for told in wishes.told(small_job()):
        fewer = wishes.less(told.key)
        assert len(fewer.told(small_job())) == len(wishes.told(small_job())) - 1
        assert told.key not in {other.key for other in fewer.told(small_job())}
        assert fewer.less(told.key) == fewer
    for told in wishes.told(small_job()):
        wishes = wishes.less(told.key)
    assert wishes.none
    assert wishes.less("no such thing") == NO_WISHES
