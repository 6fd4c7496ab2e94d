"""The rules and tools of a job on their screens; its name, units and tape apart."""

import re
from html import unescape

import pytest
from httpx2 import Response
from starlette.testclient import TestClient

from page_forms import Form, forms_of
from plankwright import files
from plankwright.web.desk import Desk


def rules_form(page: Response, ends: str = "/rules") -> Form:
    """Give the form of a page whose address ends so."""
    return next(form for form in forms_of(page.text, str(page.url)) if form.action.endswith(ends))


def alerts(page: Response) -> list[str]:
    """Give what is told to be wrong."""
    found = re.search(r'role="alert">.*?</section>', page.text, re.DOTALL)
    told = re.findall(r"<li>(.*?)</li>", found[0]) if found else []
    return [unescape(re.sub("<[^>]+>", "", one)) for one in told]


def test_rules_that_are_saved_as_they_are_shown_stay_as_they_are(
    client: TestClient, desk: Desk, example: str
) -> None:
    """Saws, lots, air, times and prices with them."""
    before = desk.store.job(example)
    form = rules_form(client.get(f"/jobs/{example}/rules"))
    assert client.post(form.action, data=form.data()).status_code == 200
    assert desk.store.job(example) == before


def test_every_rule_says_what_it_means_and_what_is_usual(client: TestClient, small: str) -> None:
    """What is usual is no more than an example in an empty field."""
    page = unescape(client.get(f"/jobs/{small}/rules").text)
    for key, meaning in files.rule_meanings().items():
        assert f'name="rules.{key}"' in page
        assert meaning in page
    assert re.search(r'name="rules.stagger" value=""[^>]*placeholder="1\' 0""', page)


def test_rules_are_changed_in_one_step(client: TestClient, desk: Desk, small: str) -> None:
    """Which can be taken back."""
    form = rules_form(client.get(f"/jobs/{small}/rules"))
    given = {"rules.hold_back": "1", "rules.joints": "never", "house.built": "1926", "currency": "$"}
    assert client.post(form.action, data=form.filled(**given).data()).status_code == 200
    definition = desk.store.job(small).definition
    assert (definition["rules"]["hold_back"], definition["rules"]["joints"]) == (1, "never")
    assert definition["house"] == {"built": 1926}
    desk.store.undo(small)
    assert "house" not in desk.store.job(small).definition


@pytest.mark.parametrize("key", ["saw", "lot", "task", "price"])
def test_rows_are_added_and_taken_out_by_plain_buttons(client: TestClient, small: str, key: str) -> None:
    """All that was typed stays."""
    form = rules_form(client.get(f"/jobs/{small}/rules"))
    page = client.post(form.action, data=form.filled(currency="$").data() | {"add": f"{key}.name"})
    longer = rules_form(page)
    assert f"{key}.0.name" in longer.names
    assert dict(longer.fields)["currency"] == "$"
    shorter = rules_form(client.post(form.action, data=longer.data() | {"remove": f"{key}.0"}))
    assert f"{key}.0.name" not in shorter.names


def test_a_saw_that_lacks_something_is_shown_again(client: TestClient, small: str) -> None:
    """With its field marked, in a part that is not folded away."""
    form = rules_form(client.get(f"/jobs/{small}/rules"))
    given = {"saw.0.name": "mitre saw", "rules.nail_end": "near", "task.0.name": "pull nails"}
    page = client.post(form.action, data=form.filled(**given).data())
    assert page.status_code == 422
    told = alerts(page)
    assert "Saw mitre saw: the way that it cuts is not filled in yet." in told
    assert any(one.startswith("Nail end “near” is not a length") for one in told)
    assert re.search(r'name="rules.nail_end"[^>]*aria-invalid="true"', page.text)
    folded = re.sub(r"<details[^>]* open>", "", page.text)
    assert "<details>\n    <summary>Nails</summary>" not in folded
    assert dict(rules_form(page).fields)["saw.0.name"] == "mitre saw"


def test_lots_of_the_tally_are_offered(client: TestClient, desk: Desk, example: str) -> None:
    """A row for one comes with its name."""
    form = rules_form(client.get(f"/jobs/{example}/rules"))
    bare = [(name, value) for name, value in form.fields if not name.startswith("lot.")]
    client.post(form.action, data=dict(bare))
    page = client.get(f"/jobs/{example}/rules")
    lots = [value for name, value in rules_form(page).buttons if name == "lot_of_tally"]
    assert set(lots) <= {board.lot for board in desk.store.job(example).boards}
    assert lots
    fresh = rules_form(page)
    longer = client.post(fresh.action, data=fresh.data() | {"lot_of_tally": lots[0]})
    assert dict(rules_form(longer).fields)["lot.0.name"] == lots[0]


def test_rules_that_somebody_else_changed_are_not_written_over(
    client: TestClient, desk: Desk, small: str
) -> None:
    """What was typed is shown again."""
    form = rules_form(client.get(f"/jobs/{small}/rules"))
    client.post(form.action, data=form.filled(currency="$").data())
    refused = client.post(form.action, data=form.filled(currency="EUR").data())
    assert refused.status_code == 409
    assert alerts(refused)
    assert dict(rules_form(refused).fields)["currency"] == "EUR"
    assert desk.store.job(small).definition["currency"] == "$"


def test_units_are_changed_and_every_length_stays(client: TestClient, desk: Desk, example: str) -> None:
    """And the tape that does not go with them is put aside."""
    before = files.read_definition(desk.store.job(example).definition)
    form = rules_form(client.get(f"/jobs/{example}/rules/units"), "/units")
    page = client.post(form.action, data=form.filled(units="cm", decimal_comma="true").data())
    assert page.status_code == 200
    definition = desk.store.job(example).definition
    after = files.read_definition(definition)
    assert (after.surfaces, after.rules) == (before.surfaces, before.rules)
    assert "fraction" not in definition
    assert client.get(f"/jobs/{example}/surfaces/0").status_code == 200


def test_a_job_is_called_otherwise_and_keeps_its_layout(client: TestClient, desk: Desk, small: str) -> None:
    """The layout is still one of this job."""
    form = rules_form(client.get(f"/jobs/{small}/rules/units"), "/units")
    assert client.post(form.action, data=form.filled(name="porch").data()).status_code == 200
    kept = desk.store.job(small)
    assert kept.name == "porch"
    assert kept.layout_id is not None
    assert desk.store.layout(small, kept.layout_id).layout.job_name == "porch"


@pytest.mark.parametrize(("name", "value"), [("name", ""), ("units", "cubits"), ("fraction", "1/7")])
def test_units_that_are_none_are_refused(
    client: TestClient, desk: Desk, small: str, name: str, value: str
) -> None:
    """And the field is marked."""
    before = desk.store.job(small)
    form = rules_form(client.get(f"/jobs/{small}/rules/units"), "/units")
    page = client.post(form.action, data=form.filled(**{name: value}).data())
    assert page.status_code == 422
    assert all(told.endswith(".") for told in alerts(page))
    assert re.search(rf'name="{name}"[^>]*aria-invalid="true"', page.text)
    assert desk.store.job(small) == before


def test_a_kerf_that_no_blade_takes_is_refused(client: TestClient, desk: Desk, small: str) -> None:
    """In plain words, with all that was typed."""
    form = rules_form(client.get(f"/jobs/{small}/rules"))
    page = client.post(form.action, data=form.filled(**{"rules.rip_kerf": "5 ft"}).data())
    assert page.status_code == 422
    told = "Kerf along must be 1/2 in (12.7 mm) or less: no saw blade takes more, so check the unit."
    assert alerts(page) == [told]
    assert dict(rules_form(page).fields)["rules.rip_kerf"] == "5 ft"
    assert "rip_kerf" not in desk.store.job(small).definition.get("rules", {})
