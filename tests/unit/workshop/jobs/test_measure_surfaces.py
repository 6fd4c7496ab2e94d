"""Surfaces and rules are put into the definition whole or not at all, never over what another saw last."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from kept_jobs import bare_job, whole_job, work_after
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.model import MarkKind
from plankwright.workshop.jobs.kept import KeptJob, NotThereError, RefusedError, StaleError
from plankwright.workshop.jobs.measure_surfaces import (
    put_surface,
    put_tables,
    raise_surface,
    surface_at,
    surfaces_of,
    take_out_surface,
)
from plankwright.workshop.jobs.tally_boards import fingerprint

SOLID = {"solid": True}
HUNG = replace(whole_job(), work=work_after((MarkKind.HUNG, "1")))


def wall(name: str, **more: Any) -> dict[str, Any]:  # noqa: ANN401 - whatever is filled in
    """Give a surface as it is filled in."""
    return {"id": name, "width": "8 ft", "height": "4 ft", "framing": SOLID, **more}


def job_of(*names: str, **tables: Any) -> KeptJob:  # noqa: ANN401 - as above
    """Give a job of some walls."""
    return put_tables(bare_job(), files, {"surface": [wall(name) for name in names], **tables})


def names_of(job: KeptJob) -> list[str]:
    """Give what the surfaces are called."""
    return [str(surface["id"]) for surface in surfaces_of(job.definition)]


def seen(job: KeptJob, place: int) -> str:
    """Give the fingerprint of a surface as a form carries it."""
    return fingerprint(surface_at(job, place))


def test_a_surface_is_added_at_the_end() -> None:
    """With a unit at every length of it."""
    job = put_surface(job_of("north"), files, wall("east", height=50), None)
    assert names_of(job) == ["north", "east"]
    assert surface_at(job, 1)["height"] == "4' 2\""
    assert files.read_definition(job.definition).surfaces[1].id == "east"


def test_a_surface_is_put_in_place_of_what_was_shown() -> None:
    """The others stay."""
    job = job_of("north", "east", "south")
    changed = put_surface(job, files, wall("east", height="5 ft"), 1, seen(job, 1))
    assert names_of(changed) == ["north", "east", "south"]
    assert surface_at(changed, 1)["height"] == "5' 0\""
    assert [surface_at(changed, place) for place in (0, 2)] == [surface_at(job, place) for place in (0, 2)]


def test_what_somebody_changed_meanwhile_is_not_written_over() -> None:
    """Neither changed nor taken out, nor made more important where that is asked."""
    job, other = job_of("north", "east"), "0123456789abcdef"
    acts: list[Callable[[], object]] = [
        lambda: put_surface(job, files, wall("east"), 1, other),
        lambda: put_surface(job, files, wall("east"), 1),
        lambda: take_out_surface(job, files, 1, other),
        lambda: raise_surface(job, files, 1, other),
    ]
    for act in acts:
        with pytest.raises(StaleError):
            act()


@pytest.mark.parametrize("place", [-1, 2, 99])
def test_a_surface_that_is_not_there_is_told(place: int) -> None:
    """Also one counted from the end."""
    job = job_of("north", "east")
    acts: list[Callable[[], object]] = [
        lambda: surface_at(job, place),
        lambda: put_surface(job, files, wall("x"), place, ""),
        lambda: take_out_surface(job, files, place, ""),
        lambda: raise_surface(job, files, place),
    ]
    for act in acts:
        with pytest.raises(NotThereError, match="There is no such surface in this job, or no longer"):
            act()


def test_every_problem_of_a_surface_is_told_and_nothing_kept() -> None:
    """With its place in words."""
    job = job_of("north")
    bad = wall("east", width="wide", framing={"spacing": 16})
    with pytest.raises(BadInputError) as told:
        put_surface(job, files, bad, None)
    assert {problem.place for problem in told.value.problems} == {"surface east", "surface east, framing"}
    assert names_of(job) == ["north"]


def test_two_surfaces_are_never_called_alike() -> None:
    """A layout could not tell them apart."""
    with pytest.raises(BadInputError, match="north"):
        put_surface(job_of("north"), files, wall("north"), None)


def test_a_surface_that_is_called_otherwise_stays_linked() -> None:
    """The link goes by its name."""
    job = job_of("north", "east", linked=[["north", "east"]])
    changed = put_surface(job, files, wall("porch"), 1, seen(job, 1))
    assert changed.definition["linked"] == [["north", "porch"]]


def test_a_surface_is_taken_out_with_its_links() -> None:
    """Links of others stay; a job may be left without any surface."""
    job = job_of("a", "b", "c", "d", linked=[["a", "b"], ["c", "d"]])
    less = take_out_surface(job, files, 0, seen(job, 0))
    assert names_of(less) == ["b", "c", "d"]
    assert less.definition["linked"] == [["c", "d"]]
    last = job_of("north")
    empty = take_out_surface(last, files, 0, seen(last, 0))
    assert surfaces_of(empty.definition) == ()
    assert put_surface(empty, files, wall("new"), None).definition["surface"]


def test_a_surface_is_made_more_important() -> None:
    """By one place; the first stays first."""
    job = job_of("a", "b", "c")
    assert names_of(raise_surface(job, files, 2)) == ["a", "c", "b"]
    assert names_of(raise_surface(job, files, 1, seen(job, 1))) == ["b", "a", "c"]
    assert raise_surface(job, files, 0) == job


def test_a_surface_that_pieces_hang_on_stays_and_keeps_its_name() -> None:
    """Its measures may be mended."""
    with pytest.raises(RefusedError, match="Pieces hang on wall or are cut for it: it stays in the job"):
        take_out_surface(HUNG, files, 0, seen(HUNG, 0))
    with pytest.raises(RefusedError, match="it must be called as before"):
        put_surface(HUNG, files, wall("other"), 0, seen(HUNG, 0))
    assert put_surface(HUNG, files, wall("wall", height="5 ft"), 0, seen(HUNG, 0)).work == HUNG.work


@pytest.mark.parametrize("empty", ["", None, [], {}, ()])
def test_a_table_that_is_empty_is_left_out(empty: object) -> None:
    """As one that was never filled in."""
    job = put_tables(job_of("north"), files, {"rules": {"rip_kerf": "1/8"}, "currency": "$"})
    assert job.definition["rules"] == {"rip_kerf": '1/8"'}
    less = put_tables(job, files, {"rules": empty, "currency": empty})
    assert less.definition == job_of("north").definition


def test_what_is_false_or_nothing_in_number_stays() -> None:
    """It says something."""
    job = put_tables(bare_job(), files, {"decimal_comma": False, "rules": {"hold_back": 0}})
    assert job.definition["decimal_comma"] is False
    assert job.definition["rules"] == {"hold_back": 0}


def test_tables_that_are_wrong_are_refused() -> None:
    """With every problem of the whole definition as it would be."""
    with pytest.raises(BadInputError, match="rip_kerf"):
        put_tables(job_of("north"), files, {"rules": {"rip_kerf": "thin"}})
    with pytest.raises(BadInputError, match="surprise"):
        put_tables(job_of("north"), files, {"surprise": 1})


def test_no_surface_comes_or_goes_once_work_has_begun() -> None:
    """What is left could not be laid out any more; one that is there may be measured anew."""
    begun = put_tables(HUNG, files, {"surface": [*surfaces_of(HUNG.definition), wall("north")]})
    acts: list[Callable[[], object]] = [
        lambda: put_surface(begun, files, wall("east"), None),
        lambda: take_out_surface(begun, files, 1, seen(begun, 1)),
    ]
    for act in acts:
        with pytest.raises(RefusedError, match=r"Work on this job has begun\. Begin another job"):
            act()
    higher = put_surface(begun, files, wall("north", height="5 ft"), 1, seen(begun, 1))
    assert surface_at(higher, 1)["height"] == "5' 0\""
