"""Two walls of an invented village hall, whose courses run round the corner between them."""

import json
from pathlib import Path

import pytest

from commanding import Run
from corner import write_corner_job
from plankwright.files import read_layout
from plankwright.layout import lay_out
from plankwright.model import Layout


@pytest.fixture
def corner(run: Run, tmp_path: Path) -> Path:
    """Give the folder of the job, laid out."""
    folder = write_corner_job(tmp_path / "corner")
    ran = run("lay", folder, "--effort", "1", search=lay_out)
    assert ran.code == 0, ran.out + ran.err
    assert "Courses run round the corner between north and east at the same heights." in ran.out
    return folder


def seams(layout: Layout, raised_nm: dict[str, int]) -> list[set[int]]:
    """Give the seams of each wall [nm] above the lower of the floors."""
    return [
        {course.to_nm + raised_nm[laid.surface_id] for course in laid.courses[:-1]}
        for laid in layout.surfaces
    ]


RAISED = {"north": 0, "east": 25_400_000}


def test_courses_run_round_the_corner(run: Run, corner: Path) -> None:
    """At the same heights, under ceilings of unlike heights and over a floor that is an inch higher."""
    north, east = seams(read_layout(corner / "out" / "layout.json"), RAISED)
    assert north
    assert {seam for seam in east if seam < max(north) + 1} == north
    assert run("check", corner).code == 0
    drawing = (corner / "out" / "map-east.svg").read_text(encoding="utf-8")
    assert "courses run round the left corner to north" in drawing


def test_a_layout_in_which_they_do_not_is_found_out(run: Run, corner: Path) -> None:
    """Once the job says that the floor is level after all."""
    job = corner / "job.toml"
    job.write_text(job.read_text(encoding="utf-8").replace("raised = 1", "raised = 0"), encoding="utf-8")
    ran = run("check", corner, "--json")
    assert ran.code != 0
    assert {found["code"] for found in json.loads(ran.out)["findings"] if found["severity"] == "error"} == {
        309
    }


def test_what_now_keeps_them_running_round(run: Run, corner: Path) -> None:
    """The starter of one wall came out an eighth higher; so is that of the other."""
    run("mark", corner, "hung", "1", "--surface", "north", "--higher", "1/8")
    ran = run("now", corner, "--effort", "2")
    assert ran.code == 0, ran.out + ran.err
    north, east = seams(read_layout(corner / "out" / "layout.json"), RAISED)
    assert {seam for seam in east if seam < max(north) + 1} == north
    assert run("check", corner).code == 0
    assert run("left", corner).code == 0


def test_what_it_survives_can_be_asked(run: Run, corner: Path) -> None:
    """Board by board, with both walls laid out anew together."""
    ran = run("risk", corner, "--draws", "1", "--effort", "1", "--json")
    assert ran.code == 0, ran.out + ran.err
    assert json.loads(ran.out)["whole"]


def test_a_link_that_cannot_be_is_told_on_its_line(run: Run, corner: Path) -> None:
    """With what is wrong and how to mend it."""
    job = corner / "job.toml"
    job.write_text(
        job.read_text(encoding="utf-8").replace('"north", "east"', '"north", "west"'), encoding="utf-8"
    )
    ran = run("lay", corner)
    assert ran.code == 2
    assert "job.toml, line 4: linked does not fit: west is no surface of this job" in ran.err
