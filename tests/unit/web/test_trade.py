"""The answers of the trade as pages, with where their figures come from."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from starlette.testclient import TestClient

import plankwright.web
from kept_jobs import bare_job
from plankwright.trade.source import Trust
from plankwright.web.desk import Desk
from plankwright.workshop.ask_trade import QUESTIONS
from plankwright.workshop.caution import BEFORE

NAMES = list(QUESTIONS)
TEMPLATES = Path(plankwright.web.__file__).parent / "templates"


def test_every_question_is_a_link_to_its_answer(client: TestClient, small: str) -> None:
    """Headed as the list has it."""
    page = client.get(f"/jobs/{small}/trade")
    assert page.status_code == 200
    for name, question in QUESTIONS.items():
        (to,) = re.findall(rf'href="([^"]+)"><span class="stage">{re.escape(question.title)}<', page.text)
        answer = client.get(to)
        assert answer.status_code == 200, name
        assert f"<h1>{question.title}</h1>" in answer.text, name


@pytest.mark.parametrize("name", NAMES)
def test_each_mark_leads_to_a_source_that_says_how_far_it_was_followed(
    client: TestClient, small: str, name: str
) -> None:
    """As many sources are listed as the highest mark."""
    page = client.get(f"/jobs/{small}/trade/{name}").text
    marks = [
        int(mark)
        for marks in re.findall(r'class="source-mark">([^<]+)<', page)
        for mark in re.findall(r"\d+", marks)
    ]
    trusts = re.findall(r'class="trust">([^<]+)<', page)
    assert marks
    assert set(marks) == set(range(1, len(trusts) + 1))
    assert set(trusts) <= {trust.value for trust in Trust}
    assert "<summary>Where these figures come from</summary>" in page


@pytest.mark.parametrize("name", NAMES)
def test_each_answer_leaves_the_decision_to_others(client: TestClient, small: str, name: str) -> None:
    """On every page."""
    page = client.get(f"/jobs/{small}/trade/{name}").text
    assert "Local codes and licensed trades decide" in page.replace("\n", " ")


def test_a_table_scrolls_by_itself_and_can_be_reached_by_keyboard(client: TestClient, small: str) -> None:
    """The page beside it does not."""
    page = client.get(f"/jobs/{small}/trade/buy").text
    assert re.search(r'<div class="scroll" role="region" tabindex="0" aria-label="[^"]+">\s*<table>', page)


def test_hazards_are_told_of_a_job_that_has_nothing(client: TestClient, desk: Desk) -> None:
    """It is asked before boards are pulled."""
    job_id = desk.store.add(bare_job()).id
    page = client.get(f"/jobs/{job_id}/hazards")
    assert page.status_code == 200
    assert "<h1>What can hurt you</h1>" in page.text
    assert "Paint of unknown age may hold lead" in page.text


@pytest.mark.parametrize("name", [name for name in NAMES if name != "hazards"])
def test_what_is_missing_is_said_and_leads_on(client: TestClient, desk: Desk, name: str) -> None:
    """No board is tallied."""
    job_id = desk.store.add(bare_job()).id
    page = client.get(f"/jobs/{job_id}/trade/{name}")
    assert page.status_code == 200
    assert "No board is tallied yet" in page.text
    assert f'href="/jobs/{job_id}/tally"' in page.text
    assert 'class="answer"' not in page.text


def test_nothing_is_told_of_a_layout_that_fits_no_longer(client: TestClient, desk: Desk, small: str) -> None:
    """It leads to laying out anew."""
    desk.store.change(small, "board A taken out", lambda job: replace(job, boards=job.boards[1:]))
    page = client.get(f"/jobs/{small}/trade/nails").text
    assert "fits no longer" in page
    assert f'href="/jobs/{small}/layout"' in page


def test_a_question_that_is_none_is_not_there(client: TestClient, small: str) -> None:
    """With a way back."""
    assert client.get(f"/jobs/{small}/trade/weather").status_code == 404
    assert client.get("/jobs/none/trade").status_code == 404
    assert client.get("/jobs/none/hazards").status_code == 404


def test_screens_warn_only_of_work_that_something_is_said_of() -> None:
    """Each template that warns names one of the sorts of work that the workshop knows."""
    asked = re.compile(r"""cautions\.before\(["'](\w+)["']""")
    named = [work for file in TEMPLATES.glob("*.html") for work in asked.findall(file.read_text("utf-8"))]
    assert set(named) <= BEFORE.keys()
