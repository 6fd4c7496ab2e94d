"""How a run speaks."""

import sys

import pytest

from plankwright.cli.talk import Talk
from plankwright.errors import Problem


def test_answers_go_to_stdout_and_talk_to_stderr(capsys: pytest.CaptureFixture[str]) -> None:
    """So that a pipe gets the answer alone."""
    talk = Talk()
    talk.headline("Enough.")
    talk.answer("All covered.")
    talk.say("Reading.")
    talk.remark([Problem(file="tally.csv", place="line 3", what="it is wide", line=3)])
    said = capsys.readouterr()
    assert said.out == "Enough.\nAll covered.\n"
    assert said.err == "Reading.\nLook again: tally.csv, line 3: it is wide\n"


def test_quiet_leaves_the_answer_alone(capsys: pytest.CaptureFixture[str]) -> None:
    """Only talk and progress are left out."""
    talk = Talk()
    talk.quiet = True
    talk.answer("All covered.")
    talk.say("Reading.")
    said = capsys.readouterr()
    assert (said.out, said.err) == ("All covered.\n", "")
    assert not talk.shows_progress


@pytest.mark.parametrize("sits", [True, False])
def test_progress_is_for_somebody_who_sits_there(monkeypatch: pytest.MonkeyPatch, *, sits: bool) -> None:
    """Not for a pipe or a log."""
    monkeypatch.setattr(sys.stderr, "isatty", lambda: sits, raising=False)
    assert Talk().shows_progress is sits
