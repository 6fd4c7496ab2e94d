"""Whatever lies in a job folder, it is read or refused in plain sentences: never a traceback."""

import contextlib
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from job_texts import JOB
from plankwright.errors import BadInputError, FileTroubleError
from plankwright.files import layout_from_json, layout_to_json, read_job, read_tally
from plankwright.measure import Unit
from village import small_layout

TALLY = "id,length,width,thickness,flaws,quantity\nA,7' 3-5/8\",5-1/2,3/4,0-3 rot,2\n"
LAYOUT = layout_to_json(small_layout())


def told(read: Callable[[], object]) -> None:
    """Read, and let nothing but the two errors for users pass."""
    with contextlib.suppress(BadInputError, FileTroubleError):
        read()


def spoilt(text: str) -> st.SearchStrategy[str]:
    """Give texts with a stretch of the given one replaced by something else."""
    places = st.integers(0, len(text))
    marks = st.text("[]{}=\"'#,.;:-\n\\ 019aeE\x00½") | st.text(max_size=4)
    return st.builds(
        lambda begin, length, more: text[:begin] + more + text[begin + length :],
        places,
        st.integers(0, 12),
        marks,
    )


def in_folder(name: str, content: bytes) -> None:
    """Read a job folder in which one file holds something else."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder)
        (path / "job.toml").write_text(JOB, encoding="utf-8")
        (path / "tally.csv").write_text(TALLY, encoding="utf-8")
        (path / name).write_bytes(content)
        told(lambda: read_job(path))


@given(spoilt(JOB) | st.text())
@example("[a]\n[a.b.c]\n[a]")
@example("a.b = 1\n[a.b]")
@example("surface = [[1]]")
@example("surface = [{opening = 1, cut_out = [1]}]")
@example("rules = [1]")
def test_any_job_is_read_or_refused(text: str) -> None:
    """Slips of all kinds in job.toml, and texts that are something else."""
    in_folder("job.toml", text.encode())


@given(spoilt(TALLY) | st.text())
def test_any_tally_is_read_or_refused(text: str) -> None:
    """Slips of all kinds in tally.csv, and texts that are something else."""
    in_folder("tally.csv", text.encode())


@given(st.binary(), st.sampled_from(["job.toml", "tally.csv"]))
def test_any_bytes_are_read_or_refused(content: bytes, name: str) -> None:
    """Also such as are no text."""
    in_folder(name, content)


@given(spoilt(LAYOUT) | st.text())
def test_any_layout_is_read_or_refused(text: str) -> None:
    """Slips of all kinds in a layout, and texts that are something else."""
    told(lambda: layout_from_json(text))


@pytest.mark.parametrize(
    "text", ["\x00", "[" * 100_000, '{"a": 1e999}', '{"seed": 1' + "0" * 5000 + "}", '"\\ud800"']
)
def test_odd_json_is_refused(text: str) -> None:
    """Depth, endless numbers and halves of letters."""
    with pytest.raises(BadInputError):
        layout_from_json(text)


def test_a_spoilt_workbook_is_refused(tmp_path: Path) -> None:
    """Bytes of a workbook that was cut off."""
    path = tmp_path / "tally.xlsx"
    path.write_bytes(b"PK\x03\x04" + bytes(range(256)))
    with pytest.raises(BadInputError):
        read_tally(path, unit=Unit.INCH)
