"""What the tally comes to while boards are still measured."""

from dataclasses import replace

from builders import board, flaw
from kept_jobs import bare_job, whole_job, work_after
from plankwright import files
from plankwright.model import MarkKind
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.tally_so_far import tell_reach, tell_totals


def _totals(kept: KeptJob) -> tuple[str, ...]:
    return tell_totals(kept, files.read_definition(kept.definition, kept.boards))


def _reach(kept: KeptJob) -> str:
    return tell_reach(kept, files.read_definition(kept.definition, kept.boards))[0]


def test_boards_are_added_up() -> None:
    """Their number and length, and how much of them can be hung."""
    first, second = _totals(whole_job())
    assert first == "3 boards, 24' 3\" end to end."
    assert second.startswith("After trims and flaws, ")
    assert second.endswith(" %).")


def test_nothing_adds_up_to_nothing() -> None:
    """There is nothing to say."""
    assert _totals(bare_job()) == ()


def test_boards_of_no_use_are_named() -> None:
    """The first few of them."""
    useless = [board(f"B{number}", 97, 5, flaws=(flaw(0, 97),)) for number in range(8)]
    assert _totals(bare_job("hall", useless[0]))[-1].startswith("B0 gives nothing long and wide enough")
    assert "B5 and 2 more give nothing" in _totals(bare_job("hall", *useless))[-1]


def test_the_reach_of_boards_is_told() -> None:
    """Of the small job, which has enough."""
    assert _reach(whole_job()) == "Enough for all 2 courses, with one board to spare."


def test_before_a_board_is_there_nothing_is_counted() -> None:
    """Even with a wall."""
    assert _reach(replace(whole_job(), boards=())).startswith("Measure the first board")


def test_without_a_surface_there_is_nothing_to_compare_with() -> None:
    """And it says what to do."""
    assert _reach(bare_job("hall", board("A", 97, 5))).startswith("There is no surface to compare with yet")


def test_a_wall_that_cannot_be_read_is_not_compared_with() -> None:
    """The screen of the surfaces says what is wrong."""
    spoilt = {**whole_job().definition, "rules": {"stagger": "a bit"}}
    assert "nothing is compared" in _reach(replace(whole_job(), definition=spoilt))


def test_a_job_that_is_begun_is_left_to_the_layout() -> None:
    """What hangs is not counted anew."""
    begun = replace(whole_job(), work=work_after((MarkKind.CUT, "1a")))
    assert "cut or hang already" in _reach(begun)
