"""How far a job has come is kept exactly, and read whole or refused."""

import json
from pathlib import Path
from typing import Any

import pytest

from builders import nm
from in_progress import Measured, happened, marked
from plankwright.errors import BadInputError
from plankwright.files import mark_from_json, mark_to_json, read_work, work_to_json, write_work
from plankwright.model import MarkKind, Work


def all_sorts() -> Work:
    """Give work with a mark of every kind."""
    return marked(
        happened("hung", "1", measured=Measured(edge_nm=nm(6.125) + 1)),
        happened("cut", "3a"),
        happened("miscut", "2b", length_nm=nm(30)),
        happened("hung", "2a"),
        happened("down", "2a"),
        happened("broke", "2a"),
        happened("lost", "wide"),
    )


def test_what_is_written_reads_back_exactly(tmp_path: Path) -> None:
    """To the nanometre, and as the same text."""
    work = all_sorts()
    write_work(tmp_path, work)
    read = read_work(tmp_path)
    assert read == work
    assert read is not None
    assert work_to_json(read) == (tmp_path / "work.json").read_text(encoding="utf-8")


def test_a_job_that_nobody_began_has_none(tmp_path: Path) -> None:
    """There is no file then."""
    assert read_work(tmp_path) is None


def refused(tmp_path: Path, **changes: Any) -> str:  # noqa: ANN401 - any JSON
    """Give the sentence with which changed work is refused."""
    raw = json.loads(work_to_json(all_sorts())) | changes
    (tmp_path / "work.json").write_text(json.dumps(raw), encoding="utf-8")
    with pytest.raises(BadInputError) as error:
        read_work(tmp_path)
    return str(error.value)


def test_what_is_no_work_is_refused_with_its_place(tmp_path: Path) -> None:
    """In one sentence."""
    assert "format must be 'plankwright work'" in refused(tmp_path, format="plankwright layout")
    assert "marks[0].mark" in refused(tmp_path, marks=[{"mark": "sold"}])
    assert "surplus is not a key" in refused(tmp_path, surplus=1)


def test_marks_that_contradict_each_other_are_refused(tmp_path: Path) -> None:
    """One wood cannot be in two places."""
    part = {"along": ["0 mm", "10 mm"], "across": ["0 mm", "10 mm"]}
    twice = [{"mark": "cut", "what": "1a", "boards": [{"board": "A", "left": [part, part]}]}]
    assert "contradict each other (two parts that are left of board A" in refused(tmp_path, marks=twice)


@pytest.mark.parametrize("number", range(len(all_sorts().marks)))
def test_one_mark_reads_back_exactly(number: int) -> None:
    """Whatever happened; on one line, as it stands in the file."""
    mark = all_sorts().marks[number]
    text = mark_to_json(mark)
    assert len(text.splitlines()) == 1
    assert mark_from_json(text) == mark
    assert json.loads(text) == json.loads(work_to_json(all_sorts()))["marks"][number]


def test_every_kind_of_mark_is_among_them() -> None:
    """Else one might not be read back."""
    assert {mark.kind for mark in all_sorts().marks} == set(MarkKind)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        "7",
        '"cut"',
        '{"mark": "sold", "what": "1a"}',
        '{"mark": "cut", "x": 1}',
    ],
)
def test_what_is_no_mark_is_refused(text: str) -> None:
    """In sentences, as a file is."""
    with pytest.raises(BadInputError):
        mark_from_json(text)
