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


@pytest.mark.parametrize(
    ("name", "value", "shown"),
    [
        ("NO_COLOR", "1", "Enough.\n"),
        ("TERM", "dumb", "Enough.\n"),
        ("TERM", "xterm", "\x1b[1mEnough.\x1b[0m\n"),
    ],
)
def test_only_the_headline_stands_out_and_only_where_that_is_wanted(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], name: str, value: str, shown: str
) -> None:
    """A plain line holds no marks for the terminal at all."""
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)
    talk = Talk()
    talk.headline("Enough.")
    talk.answer("All covered.")
    assert capsys.readouterr().out == f"{shown}All covered.\n"
