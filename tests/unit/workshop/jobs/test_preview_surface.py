"""A surface is drawn as far as it is filled in, and kept once nothing is missing."""

from typing import Any

import pytest

from kept_jobs import bare_job
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.workshop.jobs.fill_in_surface import filled_in
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, StaleError
from plankwright.workshop.jobs.preview_surface import (
    Sight,
    preview_surface,
    put_filled_surface,
    surfaces_seen,
)
from plankwright.workshop.jobs.tally_boards import fingerprint

WALL: dict[str, Any] = {
    "id": "wall",
    "width": "12 ft",
    "height": "8 ft",
    "framing": {"first_centre": "16", "spacing": "16"},
}


def seen(place: int | None = None, kept: KeptJob | None = None, **given: Any) -> Sight:  # noqa: ANN401 - any key of a form
    """Give what is seen of a surface."""
    job = kept or bare_job()
    return preview_surface(job, files, filled_in(given, decimal_comma=False, taken=()), place)


def put(kept: KeptJob, place: int | None = None, mark: str = "", **given: Any) -> KeptJob:  # noqa: ANN401 - any key of a form
    """Keep a surface."""
    return put_filled_surface(kept, files, filled_in(given, decimal_comma=False, taken=()), place, mark)


def test_a_whole_surface_is_drawn_and_told() -> None:
    """With nothing missing, and with its size for whoever taps on it."""
    sight = seen(**WALL)
    assert sight.drawing.startswith("<svg")
    assert sight.told[0] == "Wall, 12' 0\" wide, 8' 0\" high: 96.0 sq ft."
    assert sight.troubles == ()
    assert (float(sight.width), float(sight.height), sight.unit) == (144, 96, "in")


def test_nothing_is_drawn_before_there_is_a_size() -> None:
    """It is told what to fill in."""
    sight = seen()
    assert sight.drawing == ""
    assert all(trouble.lacking for trouble in sight.troubles)
    assert [trouble.path for trouble in sight.troubles] == [
        ("width",),
        ("height",),
        ("framing", "first_centre"),
    ]


@pytest.mark.parametrize(
    "given",
    [
        {"framing": {}},
        {"framing": {"first_centre": "abc", "spacing": "16"}},
        {"framing": {"first_centre": "900", "spacing": "901"}},
        {"start": "left"},
        {"kind": "cupboard"},
        {"opening": [{"left": "2 ft"}]},
        {"opening": [{"left": "90 ft", "bottom": "0", "width": "1", "height": "1"}]},
        {"trim": {"left": "wide"}},
        {"between": [{"what": "wallboard"}]},
        {"strange": "thing"},
    ],
    ids=lambda given: next(iter(given)),
)
def test_what_can_be_read_is_drawn_beside_what_is_wrong(given: dict[str, Any]) -> None:
    """Whatever else is missing or wrong, the outline is seen."""
    sight = seen(**WALL | given)
    assert sight.drawing.startswith("<svg")
    assert sight.troubles


def test_the_parts_that_can_be_read_are_drawn_beside_one_that_cannot() -> None:
    """A door that is being filled in takes no window away."""
    window = {"id": "window", "left": "1 ft", "bottom": "3 ft", "width": "2 ft", "height": "2 ft"}
    sight = seen(**WALL | {"opening": [{"left": "5 ft"}, window]})
    assert "window" in sight.drawing
    assert {trouble.path[:2] for trouble in sight.troubles} == {("opening", 0)}


def test_a_part_goes_by_its_place_in_the_form() -> None:
    """The second opening is the second, even while the first cannot be read."""
    far = {"left": "90 ft", "bottom": "0", "width": "1 ft", "height": "1 ft"}
    told = [trouble.sentence for trouble in seen(**WALL | {"opening": [{"left": "x"}, far]}).troubles]
    assert "Opening 2 lies wholly outside the surface: check where it is measured from." in told


def test_what_is_wrong_with_a_corner_of_a_gable_is_told_of_its_measure() -> None:
    """The form has no corners then; what is told of two of them is told once."""
    gable = {"width": "wide", "sides": "8 ft", "ridge_at": "8 ft", "ridge": "11 ft"}
    troubles = seen(outline="gable", gable=gable, framing={"centres": "5"}).troubles
    assert [trouble.path for trouble in troubles] == [("gable", "width")]
    assert troubles[0].sentence.startswith("Width: “wide” ")


@pytest.mark.parametrize(
    ("slip", "path"),
    [
        ({"ridge_at": "20 ft"}, ("gable", "ridge_at")),
        ({"ridge_at": "0"}, ("gable", "ridge_at")),
        ({"ridge": "8 ft"}, ("gable", "ridge")),
    ],
)
def test_a_ridge_that_is_none_is_told(slip: dict[str, str], path: tuple[str, str]) -> None:
    """Though its corners would make an outline."""
    gable = {"width": "16 ft", "sides": "8 ft", "ridge_at": "8 ft", "ridge": "11 ft"}
    given: dict[str, Any] = {"outline": "gable", "framing": {"solid": True}, "backing": "solid"}
    assert seen(**given, gable=gable).troubles == ()
    assert path in [trouble.path for trouble in seen(**given, gable=gable | slip).troubles]


def test_a_name_is_used_once() -> None:
    """The surface itself may be called as it is."""
    kept = put(bare_job(), **WALL)
    (trouble,) = seen(None, kept, **WALL).troubles
    assert trouble.path == ("id",)
    assert seen(0, kept, **WALL).troubles == ()


def test_a_surface_is_kept_with_a_unit_at_every_length() -> None:
    """It is read as the same whatever unit is meant later."""
    kept = put(bare_job(), **WALL)
    assert kept.definition["surface"][0]["framing"]["spacing"] == "1' 4\""
    ((surface, _),) = surfaces_seen(kept, files)
    assert len(surface.framing.members) == 9


def test_a_surface_that_lacks_anything_is_not_kept() -> None:
    """Each problem leads to its field."""
    with pytest.raises(BadInputError) as refused:
        put(bare_job(), **WALL | {"height": "", "opening": [{"left": "1"}]})
    paths = [problem.path for problem in refused.value.problems]
    assert paths[0] == ("height",)
    assert ("opening", 0, "width") in paths


def test_a_surface_that_breaks_a_link_is_refused_in_the_words_of_the_form() -> None:
    """What concerns the whole job has no field."""
    kept = put(put(bare_job(), **WALL), **WALL | {"id": "east"})
    linked = KeptJob(id="", definition={**kept.definition, "linked": [["wall", "east"]]})
    mark = fingerprint(linked.definition["surface"][1])
    with pytest.raises(BadInputError) as refused:
        put(
            linked,
            1,
            mark,
            **WALL | {"id": "east", "courses": "vertical", "framing": {"centres": "9", "runs": "horizontal"}},
        )
    (problem,) = refused.value.problems
    assert problem.path == ()
    assert "east is no wall with horizontal courses" in problem.what


def test_a_surface_that_somebody_else_changed_is_not_written_over() -> None:
    """Nor one that is no longer there."""
    kept = put(bare_job(), **WALL)
    with pytest.raises(StaleError):
        put(kept, 0, "another", **WALL)
    with pytest.raises(NotThereError):
        put(kept, 7, "another", **WALL | {"id": "other"})
