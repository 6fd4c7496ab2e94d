"""The schemas in docs/schemas are the ones of the program, and what people write meets them."""

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from plankwright.files import layout_to_json, work_to_json
from plankwright.files.schemas import schemas
from unit.files.test_work_json import all_sorts
from village import small_layout

ROOT = Path(__file__).parents[3]
JOBS = sorted((*ROOT.glob("examples/*/job.toml"), ROOT / "src/plankwright/files/templates/job.toml"))


def validator(name: str) -> Any:  # noqa: ANN401 - the library does not say
    """Give the validator of a schema."""
    schema = json.loads(schemas()[name])
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


@pytest.mark.parametrize("name", schemas())
def test_the_written_schemas_are_current(name: str) -> None:
    """`python tools/write_schemas.py` writes them."""
    assert (ROOT / "docs" / "schemas" / name).read_text(encoding="utf-8") == schemas()[name]


def test_nothing_else_lies_with_the_schemas() -> None:
    """A schema that no longer exists is gone."""
    assert {path.name for path in (ROOT / "docs" / "schemas").iterdir()} == set(schemas())


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.parent.name)
def test_jobs_meet_their_schema(path: Path) -> None:
    """The examples and the template."""
    validator("job.schema.json").validate(tomllib.loads(path.read_text(encoding="utf-8")))


def test_layouts_meet_their_schema() -> None:
    """As the program writes them."""
    validator("layout.schema.json").validate(json.loads(layout_to_json(small_layout())))


def test_work_meets_its_schema() -> None:
    """As the program writes it."""
    validator("work.schema.json").validate(json.loads(work_to_json(all_sorts())))


@pytest.mark.parametrize(
    "change",
    [
        {"surplus": 1},
        {"units": "yards"},
        {"surface": []},
        {"surface": [{"id": "a"}]},
        {"rules": {"joints": 1}},
    ],
)
def test_the_schema_refuses_what_the_program_refuses(change: dict[str, Any]) -> None:
    """Unknown keys and words, and missing parts."""
    job = tomllib.loads(JOBS[0].read_text(encoding="utf-8"))
    assert validator("job.schema.json").is_valid(job)
    assert not validator("job.schema.json").is_valid(job | change)


def test_defaults_are_written_as_a_person_would() -> None:
    """In inches, and tables have none of their own."""
    schema = json.loads(schemas()["job.schema.json"])
    rules = schema["$defs"]["RulesDocument"]["properties"]
    assert (rules["end_trim"]["default"], rules["joints"]["default"], rules["hold_back"]["default"]) == (
        '1/2"',
        "stagger",
        0,
    )
    assert "default" not in schema["properties"]["rules"]
