"""A solver that says nothing."""

import pytest

from plankwright.layout.silent import SilentHighs


def test_making_and_running_the_solver_prints_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    """Not even by its own native code, which goes round Python's stdout."""
    solver = SilentHighs()
    solver.addVar(0.0, 1.0)
    solver.run()
    said = capfd.readouterr()
    assert (said.out, said.err) == ("", "")
