"""Screens are found by the links that lead to them."""

from tools.picture_screens import _name
from tools.walk_screens import links_of, route_of

PAGE = """
<a href="/jobs/1/tally#boards">tally</a> <a href="board?id=A">board</a> <a href="https://example.org/">elsewhere</a>
<a>nowhere</a> <svg><a href="pieces/1a"><path/></a></svg> <link href="/static/app.css">
"""


def test_links_within_the_app_are_found() -> None:
    """In words and in drawings, reckoned from the page; what leads elsewhere is left out."""
    found = links_of(PAGE, "/jobs/1/layout")
    assert found == ["/jobs/1/tally", "/jobs/1/board?id=A", "/jobs/1/pieces/1a"]


def test_a_path_is_of_the_route_that_answers_it() -> None:
    """Whatever its ids and its query; one that nobody answers is of none."""
    assert route_of("/jobs/1a2b/tally?find=A") == "/jobs/{job_id}/tally"
    assert route_of("/") == "/"
    assert route_of("/nowhere/at/all") is None


def test_pictures_are_named_after_screens() -> None:
    """So that two are never one file."""
    assert _name("/") == "jobs"
    assert _name("/jobs/{job_id}") == "job"
    assert _name("/jobs/{job_id}/layout/pieces/{place}/{label:path}") == "layout-pieces-one-one"
