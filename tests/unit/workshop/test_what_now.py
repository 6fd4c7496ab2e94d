"""What now: only layouts that heed what is done and break no rule come out."""

import pickle
from dataclasses import replace
from typing import Any

import pytest

from builders import nm
from in_progress import begun_job, begun_layout, happened, marked
from plankwright.errors import LayoutRefusedError
from plankwright.layout import Effort, Result
from plankwright.layout.again import ChangeKind, lay_again
from plankwright.model import Layout
from plankwright.workshop.go_together import BoardsMissingError, OtherLayoutError
from plankwright.workshop.what_now import what_now

MOMENT = Effort(name="moment", seconds=2)


def gives(layout: Layout) -> Any:  # noqa: ANN401 - stands in for a search
    """Give a search that gives one layout."""
    return lambda *_args, **_more: Result(layout=layout)


def test_it_tells_what_is_different_and_what_was_found() -> None:
    """Piece by piece."""
    work = marked(happened("hung", "1"), happened("lost", "C"))
    now = what_now(begun_job("X"), begun_layout(), work, again=lay_again, effort=MOMENT)
    assert now.result.layout.covers_everything
    assert now.found == ("X",)
    assert [change.kind for change in now.changes].count(ChangeKind.OTHER_BOARD) == 1
    assert now.warnings == ()


def test_a_layout_that_does_not_heed_what_is_done_is_refused() -> None:
    """As the one from before the board was lost."""
    work = marked(happened("lost", "C"))
    with pytest.raises(LayoutRefusedError, match="is lost"):
        what_now(begun_job(), begun_layout(), work, again=gives(begun_layout()), effort=MOMENT)


def test_a_promise_that_further_boards_would_close_it_is_checked() -> None:
    """And not made when it does not hold."""
    (laid,) = begun_layout().surfaces
    broken = replace(begun_layout(), surfaces=(replace(laid, courses=laid.courses[1:]),))

    def promising(*_args: Any, **_more: Any) -> Result:  # noqa: ANN401 - stands in for a search
        return Result(layout=begun_layout(), closing=(begun_job(), broken))

    now = what_now(begun_job(), begun_layout(), marked(happened("hung", "1")), again=promising, effort=MOMENT)
    assert now.result.closing is None


def test_a_layout_of_other_surfaces_is_refused() -> None:
    """In one sentence, before any search."""
    other = Layout(job_name="village hall", surfaces=())
    with pytest.raises(OtherLayoutError, match="is of no surface, but the job has wall"):
        what_now(begun_job(), other, marked(happened("hung", "1")), again=lay_again, effort=MOMENT)


@pytest.mark.parametrize(("names", "told"), [(("A",), "board A"), (("A", "B"), "boards A and B")])
def test_boards_that_pieces_hang_of_must_stay_in_the_tally(names: tuple[str, ...], told: str) -> None:
    """In one sentence, that also comes through from another process."""
    work = marked(happened("hung", "1"), happened("miscut", "2a", length_nm=nm(30)))
    poor = replace(begun_job(), boards=tuple(one for one in begun_job().boards if one.id not in names))
    with pytest.raises(BoardsMissingError, match=f"Pieces of {told} hang or are cut") as missing:
        what_now(poor, begun_layout(), work, again=lay_again, effort=MOMENT)
    assert str(pickle.loads(pickle.dumps(missing.value))) == str(missing.value)  # noqa: S301 - our own
