"""Fixtures for running commands as a user does."""

from pathlib import Path

import pytest

from commanding import Ran, Run
from plankwright import files as real_files
from plankwright.bootstrap import Bench
from plankwright.cli import main
from plankwright.workshop.lay_out import Search
from plankwright.workshop.ports import Files
from village import StandInSearch, small_result, write_small_job


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Run:
    """Run `plankwright`, and never see a traceback."""

    def command(*arguments: object, search: Search | None = None, files: Files | None = None) -> Ran:
        bench = Bench(files=files or real_files, search=search or StandInSearch(small_result()))
        with pytest.raises(SystemExit) as left:
            main([str(argument) for argument in arguments], bench=bench)
        said = capsys.readouterr()
        assert "Traceback" not in said.out + said.err
        return Ran(code=int(left.value.code or 0), out=said.out, err=said.err)

    return command


@pytest.fixture
def village(tmp_path: Path) -> Path:
    """Give the folder of the small job."""
    return write_small_job(tmp_path / "village")


@pytest.fixture(autouse=True)
def no_settings(monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep the settings of whoever runs the tests out of them."""
    for name in ("EFFORT", "SEED", "OUT", "PAPER", "QUIET", "STORE", "PORT"):
        monkeypatch.delenv(f"PLANKWRIGHT_{name}", raising=False)
