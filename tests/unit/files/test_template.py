"""A new job folder can be used as it is, and nothing is written over."""

import re
import tomllib
from pathlib import Path

import pytest

from plankwright.errors import FileTroubleError
from plankwright.files import example_folder, read_job, template, write_template


def test_the_template_is_a_job(tmp_path: Path) -> None:
    """It is read without a problem or a remark."""
    folder = tmp_path / "new" / "job"
    assert [path.name for path in write_template(folder)] == ["job.toml", "tally.csv"]
    reading = read_job(folder)
    assert reading.remarks == ()
    assert len(reading.job.boards) == 6


def test_what_the_template_offers_can_be_used(tmp_path: Path) -> None:
    """Each commented line that can be used is understood, but for those that stand for another."""
    folder = tmp_path / "job"
    job_file, _ = write_template(folder)
    offered = re.sub(r"^# (?=\[|\w+ = )", "", job_file.read_text(encoding="utf-8"), flags=re.MULTILINE)
    other_ways = r"^(linked|heights|level|corners|millimetre_step|solid|runs|decimal_comma) = .*\n"
    used = re.sub(other_ways, "", offered, flags=re.MULTILINE)
    tables = tomllib.loads(used)
    assert {"opening", "cut_out", "concealed", "keep_out", "between"} < set(tables["surface"][0])
    assert {"house", "lot", "room", "nails", "task", "price", "currency"} < set(tables)
    job_file.write_text(used, encoding="utf-8")
    assert read_job(folder).remarks == ()


@pytest.mark.parametrize("name", ["job.toml", "tally.csv", "tally.xlsx"])
def test_nothing_is_written_over(tmp_path: Path, name: str) -> None:
    """Neither a job nor either kind of tally."""
    (tmp_path / name).write_bytes(b"mine")
    with pytest.raises(
        FileTroubleError, match=f"holds {name} already, and nothing is written over: name another"
    ):
        write_template(tmp_path)
    assert [(path.name, path.read_bytes()) for path in tmp_path.iterdir()] == [(name, b"mine")]


def test_the_example_is_a_job() -> None:
    """It is read without a problem, and it is the one in the open beside the source."""
    folder = example_folder()
    assert folder == Path(__file__).parents[3] / "examples" / "village-hall"
    assert read_job(folder).job.boards


def test_an_example_that_is_packed_with_the_program_counts(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where it is installed there is no source beside it."""
    (tmp_path / "example").mkdir()
    monkeypatch.setattr(template, "files", lambda _package: tmp_path)
    assert example_folder() == tmp_path / "example"


def test_the_example_is_packed_with_the_program() -> None:
    """At the place where it is looked for."""
    project = tomllib.loads((Path(__file__).parents[3] / "pyproject.toml").read_text(encoding="utf-8"))
    packed = project["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    assert packed == {"examples/village-hall": "plankwright/files/example"}
