"""Whatever is asked of the app, it answers with a page or a clear sentence, and nothing kept is lost."""

import re
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

import pytest
from httpx2 import Response
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.stateful import run_state_machine_as_test

from at_desk import keep_small_job, make_desk
from page_forms import Form
from plankwright.web.screens import ROUTES
from property.asked_app import AskedApp, faults_of, forms_in, pages_of
from property.bad_requests import FILES, IDS, ODD_NAMES, VALUES
from property.random_steps import RandomSteps
from property.spoilt_forms import spoilt

_PARAMETER = re.compile(r"\{(\w+)(?::\w+)?\}")
_REAL = ("A", "B", "wall", "1", "1a", "2", "1a A", "jobs.db")
CALLS = sorted(
    (route.path, method) for route in ROUTES for method in (route.methods or ()) if method != "HEAD"
)


class Village(NamedTuple):
    """The small job with a layout, kept in a file of its own, and the forms that the app shows for it."""

    store: Path
    job_id: str
    places: tuple[tuple[str, int], ...]
    forms: tuple[Form, ...]

    @property
    def names(self) -> list[str]:
        """The names of all fields."""
        return sorted({name for form in self.forms for name in form.names})


@pytest.fixture(scope="module")
def village(tmp_path_factory: pytest.TempPathFactory) -> Village:
    """Keep the small job, and look at all of its pages."""
    folder, aside = tmp_path_factory.mktemp("store"), tmp_path_factory.mktemp("aside")
    kept = keep_small_job(make_desk(folder).store, folder / "village")
    app = AskedApp.on_copy(folder / "jobs.db", aside)
    forms: dict[tuple[str, tuple[str, ...]], tuple[Form, str, int]] = {}
    for path, page in pages_of(app, f"/jobs/{kept.id}", "/").items():
        for number, form in enumerate(forms_in(page)):
            forms.setdefault((form.action.partition("?")[0], form.names), (form, path, number))
    return Village(
        folder / "jobs.db",
        kept.id,
        tuple((path, number) for _, path, number in forms.values()),
        tuple(form for form, _, _ in forms.values()),
    )


@pytest.mark.parametrize(("path", "method"), CALLS)
@settings(max_examples=6)
@given(data=st.data())
def test_bad_ids_fields_and_files(village: Village, path: str, method: str, data: st.DataObject) -> None:
    """Are each answered with a clear sentence, and change nothing when they are refused."""
    ids = st.one_of(st.sampled_from(_REAL), IDS)
    of_job = st.one_of(st.just(village.job_id), IDS)

    def drawn(parameter: re.Match[str]) -> str:
        return data.draw(of_job if parameter[1] == "job_id" else ids, label=parameter[1])

    asked = _PARAMETER.sub(drawn, path)
    name = st.one_of(st.sampled_from(village.names), ODD_NAMES)
    fields = data.draw(st.lists(st.tuples(name, VALUES), max_size=8), label="fields")
    with TemporaryDirectory() as folder:
        app = AskedApp.on_copy(village.store, Path(folder))
        before = app.kept()
        if method == "POST":
            sent = data.draw(st.one_of(st.just([]), FILES), label="files")
            answer = app.post(asked, fields, [("files", file) for file in sent])
        else:
            answer = app.get(asked)
        assert list(faults_of(answer)) == []
        if method == "GET" or answer.status_code >= 400:
            assert app.kept() == before


@settings(max_examples=200)
@given(data=st.data())
def test_each_form_with_a_field_spoilt(village: Village, data: st.DataObject) -> None:
    """Is refused with a clear sentence and shown again as it was filled in, or taken."""
    form = data.draw(st.sampled_from(village.forms), label="form")
    sent = spoilt(form, data)
    files = data.draw(FILES) if form.files else []
    with TemporaryDirectory() as folder:
        app = AskedApp.on_copy(village.store, Path(folder))
        before = app.kept()
        answer = app.send(sent, [(form.files[0], file) for file in files])
        assert list(faults_of(answer)) == []
        if answer.status_code >= 400:
            assert app.kept() == before
        if answer.status_code == 422 and not form.files:
            assert _lost(sent, forms_in(answer)) == []


def test_steps_in_any_order(village: Village) -> None:
    """Lose nothing: every job is what the steps that were taken make of it, and all can be taken back."""

    class InVillage(RandomSteps):
        def __init__(self) -> None:
            super().__init__(village.store, village.job_id, village.places)

    run_state_machine_as_test(InVillage, settings=settings(max_examples=30, stateful_step_count=25))


@pytest.mark.parametrize(
    ("status", "text", "fault"),
    [
        (500, '<p role="alert"><li>Our fault.</li></section>', "status 500"),
        (200, "Traceback (most recent call last)", "it shows what only we understand"),
        (422, "<p>no</p>", "it does not say why"),
        (404, '<section role="alert"><li>gone</li></section>', "“gone” is no sentence"),
    ],
)
def test_what_is_wrong_with_an_answer_is_found(status: int, text: str, fault: str) -> None:
    """Each in its own words."""
    answer = Response(status, html=text)
    assert list(faults_of(answer)) == [fault]


def _lost(sent: Form, shown: tuple[Form, ...]) -> list[tuple[str, str]]:
    """Give what was typed, once for each field, and does not stand in any form that is shown again."""
    every = [name for name, _ in sent.fields]
    stands = {(name, value.strip()) for form in shown for name, value in form.fields}
    untyped = sent.hidden | {name for name, _ in (*sent.choices, *sent.ticks, *sent.buttons)}
    typed = [
        (name, value.strip()) for name, value in sent.fields if name not in untyped and every.count(name) == 1
    ]
    return [(name, value) for name, value in typed if value and (name, value) not in stands]
