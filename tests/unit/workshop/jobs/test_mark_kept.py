"""Marks are made on kept jobs against the layout that was shown, once each."""

from dataclasses import replace

import pytest

from plankwright.model import MarkKind
from plankwright.workshop.jobs.kept import KeptJob, StaleError
from plankwright.workshop.jobs.mark_kept import happened_to, mark_kept, tell_happened
from plankwright.workshop.mark_work import Happened, MarkError, Measured
from two_walls import events, nm, walls_by, walls_job, walls_worked


def marked(*steps: tuple[Happened, ...]) -> KeptJob:
    """Give the job after some steps."""
    kept = walls_worked()
    for step in steps:
        kept = mark_kept(kept, walls_job(), walls_by(), step)
    return kept


def marks(kept: KeptJob) -> list[tuple[str, str]]:
    """Give what is marked."""
    return [] if kept.work is None else [(mark.kind.value, mark.what) for mark in kept.work.marks]


def test_a_mark_is_added() -> None:
    """The first one begins the work, with the boards that there are."""
    kept = marked(events("cut", "1a", on="north"))
    assert marks(kept) == [("cut", "1a")]
    assert kept.work is not None
    assert set(kept.work.boards) == {"A", "B", "D", "E", "F", "L"}


def test_pieces_of_several_surfaces_are_marked_in_one_step() -> None:
    """Each under the label that it has on its own surface."""
    kept = marked(happened_to(MarkKind.HUNG, [("north", "1a"), ("south", "1a"), ("north", "2b")]))
    assert kept.work is not None
    assert kept.work.standing.hung_labels("north") == {"1a", "2b"}
    assert kept.work.standing.hung_labels("south") == {"1a"}


@pytest.mark.parametrize("word", ["cut", "hung", "broke", "lost"])
def test_a_second_tap_marks_nothing_more(word: str) -> None:
    """It is no mistake either: the first answer may have been slow."""
    step = events(word, "A") if word == "lost" else events(word, "1a", on="north")
    once = marked(step)
    assert mark_kept(once, walls_job(), walls_by(), step) is once


def test_the_like_on_another_surface_is_no_second_tap() -> None:
    """Its piece bears the same label, and it is told why that cannot have happened."""
    with pytest.raises(MarkError, match="1a is not marked as hung"):
        marked(
            events("hung", "1a", on="north"),
            events("down", "1a", on="north"),
            events("down", "1a", on="south"),
        )


def test_what_another_phone_marked_is_left_out() -> None:
    """The rest of the course is marked."""
    kept = marked(events("hung", "2b", on="north"), events("hung", "2", on="north"))
    assert marks(kept) == [("hung", "2b"), ("hung", "2a")]


def test_a_course_that_hangs_can_still_be_measured() -> None:
    """Its edge is what is new."""
    measured = Happened(
        kind=MarkKind.HUNG, names=("1",), surface_id="north", measured=Measured(edge_nm=nm(5.125))
    )
    kept = marked(events("hung", "1", on="north"), (measured,))
    assert kept.work is not None
    (row,) = kept.work.standing.hung_on("north")
    assert row.to_nm == nm(5.125)


def test_nothing_is_marked_against_another_layout() -> None:
    """Its labels may be those of other pieces by now."""
    kept = replace(walls_worked(), layout_id=2)
    with pytest.raises(StaleError, match="another one since"):
        mark_kept(kept, walls_job(), walls_by(), events("cut", "1a", on="north"))


def test_what_cannot_have_happened_is_refused() -> None:
    """Nobody takes down what does not hang."""
    with pytest.raises(MarkError, match="1a is not marked as hung"):
        marked(events("down", "1a", on="north"))


def test_wood_that_is_gone_is_told_of_without_a_command() -> None:
    """Who stands at a screen has none to type."""
    with pytest.raises(MarkError, match=r"board A that is no longer there: have what is left") as caught:
        marked(events("lost", "A"), events("cut", "1a", on="north"))
    assert "plankwright" not in str(caught.value)


@pytest.mark.parametrize(
    ("happened", "told"),
    [
        (events("cut", "1a", "2b", on="north"), "1a and 2b cut"),
        (events("cut", "1a", "1b", "1c", "1d", on="north"), "1a to 1d cut"),
        (events("hung", "3", on="north"), "course 3 hung"),
        (events("miscut", "3a", on="north"), "3a cut wrong"),
        (events("lost", "F7"), "board F7 lost"),
        (
            (*events("cut", "1a", on="north"), *events("cut", "1a", on="south")),
            "1a on north cut and 1a on south cut",
        ),
    ],
)
def test_a_step_is_named_in_a_few_words(happened: tuple[Happened, ...], told: str) -> None:
    """So that one knows what the next Undo takes back."""
    several = len({one.surface_id for one in happened}) > 1
    assert tell_happened(happened, several=several) == told


def test_a_step_on_one_of_several_surfaces_names_it() -> None:
    """Each has a piece 1a of its own; a board is of none."""
    assert tell_happened(events("broke", "1b", on="north"), several=True) == "1b on north broke"
    assert tell_happened(events("lost", "F7"), several=True) == "board F7 lost"
