"""The rules of a job and what else is known of it are changed as a whole, in one step."""

import pytest

from builders import TAPE, board
from kept_jobs import whole_job
from plankwright import files
from plankwright.errors import BadInputError
from plankwright.measure import System, TapeStyle
from plankwright.model import Rules
from plankwright.workshop.jobs.change_rules import lots_unsaid, put_rules, rule_groups, rule_tables
from plankwright.workshop.jobs.kept import KeptJob, StaleError
from plankwright.workshop.jobs.tally_boards import fingerprint


def mark(kept: KeptJob) -> str:
    """Give the fingerprint of the tables as they are shown."""
    return fingerprint(rule_tables(kept.definition))


def test_every_rule_is_shown_with_its_meaning() -> None:
    """None of them more than once."""
    rules = [rule for group in rule_groups(TAPE, files.rule_meanings()) for rule in group.rules]
    assert sorted(rule.key for rule in rules) == sorted(
        name.removesuffix("_nm") for name in Rules.__dataclass_fields__
    )
    assert all(rule.meaning for rule in rules)


def test_what_is_usual_is_told_as_the_tape_has_it() -> None:
    """In the units of the job."""

    def usual(tape: TapeStyle) -> dict[str, str]:
        return {rule.key: rule.usual for group in rule_groups(tape, {}) for rule in group.rules}

    assert usual(TAPE)["stagger"] == "1' 0\""
    assert usual(TapeStyle(system=System.METRIC))["stagger"] == "305 mm"
    assert usual(TAPE)["nailing_points"] == "2"
    assert usual(TAPE)["joints"] == "Few, and staggered"


def test_rules_and_tools_are_put_in_place_of_what_they_were() -> None:
    """What is left empty is left out."""
    kept = whole_job()
    given = {
        "rules": {"hold_back": "1", "stagger": "10"},
        "saw": [{"name": "mitre saw", "cuts": "crosscut", "capacity": "12"}],
        "house": {"built": "1926"},
        "currency": "$",
    }
    after = put_rules(kept, files, given, mark(kept)).definition
    assert after["rules"] == {"hold_back": 1, "stagger": '10"'}
    assert after["house"] == {"built": 1926}
    assert after["surface"] == kept.definition["surface"]
    emptied = put_rules(KeptJob(id="", definition=after), files, {}, fingerprint(rule_tables(after)))
    assert rule_tables(emptied.definition) == {}


def test_no_other_part_of_the_job_is_touched() -> None:
    """Whatever is sent along."""
    kept = whole_job()
    after = put_rules(kept, files, {"surface": [], "name": "", "units": "mm"}, mark(kept))
    assert after.definition["surface"] == kept.definition["surface"]
    assert after.name == kept.name


@pytest.mark.parametrize(
    ("given", "path", "sentence"),
    [
        (
            {"saw": [{"name": "old saw"}]},
            ("saw", 0, "cuts"),
            "Saw old saw: the way that it cuts is not filled in yet.",
        ),
        ({"rules": {"hold_back": "two"}}, ("rules", "hold_back"), "Hold back must be a whole number."),
        (
            {"lot": [{"name": "hall", "moisture": ["8"]}]},
            ("lot", 0, "moisture"),
            "Lot hall: both readings are needed.",
        ),
        (
            {"room": {"dry": {"temperature": "68 F", "humidity": "30"}}},
            ("room", "damp"),
            "Air in the damp season: the temperature is not filled in yet.",
        ),
        (
            {"house": {"built": "26"}},
            ("house", "built"),
            ("House: built is no year in which a building was built: write four figures, from 1500 to 2200."),
        ),
        ({"price": [{"name": "pine", "cost": "5", "per": "hour"}]}, ("price", 0, "per"), None),
    ],
)
def test_what_is_wrong_leads_to_its_field(
    given: dict[str, object], path: tuple[str | int, ...], sentence: str | None
) -> None:
    """In words of the form."""
    kept = whole_job()
    with pytest.raises(BadInputError) as refused:
        put_rules(kept, files, given, mark(kept))
    problem = refused.value.problems[0]
    assert problem.path == path
    assert sentence is None or problem.what == sentence


def test_rules_that_somebody_else_changed_are_not_written_over() -> None:
    """They are shown anew first."""
    with pytest.raises(StaleError):
        put_rules(whole_job(), files, {}, "another")


def test_lots_of_the_tally_are_offered_until_something_is_said_of_them() -> None:
    """Whatever their case and spaces; boards of none offer none."""
    boards = [
        board("A", 97, 5, lot="Hall"),
        board("B", 97, 5, lot="hall "),
        board("C", 97, 5),
        board("D", 97, 5, lot="barn"),
    ]
    assert lots_unsaid(boards, []) == ("Hall", "barn")
    assert lots_unsaid(boards, ["BARN"]) == ("Hall",)
