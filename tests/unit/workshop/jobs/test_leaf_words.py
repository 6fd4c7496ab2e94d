"""Answers of the trade name screens where they name files and commands elsewhere."""

import re

import pytest

from builders import board, job, wall
from plankwright.model import Framing, Job, Layout
from plankwright.paper.leaf import Leaf
from plankwright.workshop.advice.fill_pack import fill_pack
from plankwright.workshop.ask_trade import ask_trade
from plankwright.workshop.jobs.leaf_words import for_screen, on_screen, pack_for_screen
from trade_jobs import ceiling_job, tongued_job, tongued_layout
from village import short_result, small_job, small_layout

FILES = re.compile(r"job\.toml|\[\[?\w+\]?\]|plankwright|_[a-z]|--\w")


def texts(leaf: Leaf) -> list[str]:
    """Give everything that an answer says."""
    cells = [cell for part in leaf.parts if part.grid for row in part.grid.rows for cell in row]
    return [leaf.headline.text, *(said.text for part in leaf.parts for said in part.said), *cells]


JOBS = [
    (tongued_job(), tongued_layout(tongued_job())),
    (ceiling_job(), tongued_layout(ceiling_job())),
    (small_job(), small_layout()),
    (small_job(), short_result().layout),
    (job(wall(96, 10, framing=Framing(solid=True)), [board("A", 97, 5.25, lot="hall")]), None),
]


@pytest.mark.parametrize(("made", "laid"), JOBS)
def test_no_answer_names_a_file_a_key_or_a_command(made: Job, laid: Layout | None) -> None:
    """Whatever the job lacks."""
    for leaf in ask_trade(made, laid).values():
        assert [text for text in texts(for_screen(leaf)) if FILES.search(text)] == []


def test_some_answers_name_them_elsewhere() -> None:
    """Else nothing would be turned into words here."""
    said = [text for leaf in ask_trade(small_job(), short_result().layout).values() for text in texts(leaf)]
    assert sum(bool(FILES.search(text)) for text in said) > 3


def test_the_rest_of_an_answer_stays_as_it_is() -> None:
    """Its sources above all."""
    leaf = ask_trade(tongued_job())["moisture"]
    shown = for_screen(leaf)
    assert shown.sources == leaf.sources
    assert [part.title for part in shown.parts] == [part.title for part in leaf.parts]


@pytest.mark.parametrize(
    ("told", "shown"),
    [
        (
            "board F1 has no run as long as shortest_piece: it gives short pieces only",
            "board F1 has no run as long as the shortest piece of the rules: it gives short pieces only",
        ),
        ("call it in job.toml as before.", "call it as before under Surfaces."),
        ("Nothing of a file.", "Nothing of a file."),
    ],
)
def test_sentences_of_screens_name_no_key(told: str, shown: str) -> None:
    """Nobody at a screen has seen one."""
    assert on_screen(told) == shown


@pytest.mark.parametrize(("made", "laid"), [one for one in JOBS if one[1] is not None])
def test_no_pack_that_is_printed_from_a_screen_names_a_file(made: Job, laid: Layout) -> None:
    """Nor a key or a command."""
    shown = pack_for_screen(fill_pack(made, laid))
    sections = [*shown.before, *shown.at_the_wall, *shown.after]
    every = [*shown.mind, *(text for one in sections for leaf in one.leaves for text in texts(leaf))]
    assert [text for text in every if FILES.search(text)] == []
