"""What stays is taken for hung where it is, what is left out for lost, on top of what was really marked."""

from dataclasses import replace

from builders import nm, with_piece
from in_progress import Measured, begun_job, begun_layout, happened, marked
from plankwright.model import Standing, part_of
from plankwright.workshop.jobs.as_if_done import as_if_done, shimmed_as
from wishing import piece_at


def as_if(
    *staying: str, losing: tuple[str, ...] = (), without: tuple[str, ...] = (), hung: str = ""
) -> Standing:
    """Give how far the job in progress would have come."""
    work = marked(*([happened("hung", hung, measured=Measured(off_nm=nm(0.25)))] if hung else []))
    return as_if_done(
        begun_job(),
        begun_layout(),
        work,
        staying=[("wall", label) for label in staying],
        losing=[("wall", label) for label in losing],
        without=without,
    ).standing


def test_what_stays_is_taken_for_hung_where_it_is_laid_out() -> None:
    """Though nothing below it hangs."""
    standing = as_if("4b", "2a")
    hung = standing.hung_pieces("wall")
    assert hung == {label: piece_at(begun_layout(), ("wall", label)) for label in ("2a", "4b")}
    assert set(standing.sawn) == {"B", "long"}
    other = part_of(piece_at(begun_layout(), ("wall", "2b")))
    assert any(rest.holds(other) for rest in standing.left)


def test_it_goes_along_with_what_really_hangs() -> None:
    """A course that came out high lifts the one on it."""
    standing = as_if("2a", hung="1")
    assert [row.from_nm for row in standing.hung_on("wall")] == [0, nm(6.25)]


def test_what_is_left_out_is_taken_for_lost() -> None:
    """Of a board that is sawn already only what is left is gone: it was no spare any more."""
    standing = as_if(without=("wide", "A"), hung="1")
    assert set(standing.sawn) == {"wide", "A"}
    assert standing.lost == ("wide",)
    assert standing.left == ()


def test_wood_that_others_have_taken_is_not_kept_for_those_who_lost_it() -> None:
    """2b is to give way here, so that nothing is spared for it."""
    other = part_of(piece_at(begun_layout(), ("wall", "2b")))
    assert other in as_if("4b").left
    lost = as_if("4b", losing=("2b",)).left
    assert other not in lost
    assert any(rest.holds(other) for rest in lost)


def test_what_hangs_takes_the_shims_of_a_layout() -> None:
    """Whatever else it is."""
    standing = as_if("4b", "2a")
    (laid,) = begun_layout().surfaces
    assert shimmed_as(standing, begun_layout()) == standing
    raised = replace(begun_layout(), surfaces=(with_piece(laid, "4b", shim_nm=nm(0.125)),))
    shims = {label: each.shim_nm for label, each in shimmed_as(standing, raised).hung_pieces("wall").items()}
    assert shims == {"2a": 0, "4b": nm(0.125)}
