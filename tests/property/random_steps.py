"""Somebody who follows links and sends forms at random, and a plain account of what that comes to."""

import secrets
from collections import defaultdict
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from httpx2 import Response
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, rule

from page_forms import Form
from plankwright.store import jobs as kept_jobs
from plankwright.workshop.jobs.kept import KeptJob
from property.asked_app import BASE, AskedApp, Kept, faults_of, forms_in, links_in
from property.bad_requests import FILES
from property.spoilt_forms import filled, spoilt


class RandomSteps(RuleBasedStateMachine):
    """Follows links and sends forms, some of them spoilt, and keeps account beside the app.

    Parameters
    ----------
    store
        A file of jobs, of which a copy is used.
    job_id
        The job that most is done with.
    places
        Where there is something to fill in: the path of a page, and which of its forms.
    """

    def __init__(self, store: Path, job_id: str, places: Sequence[tuple[str, int]]) -> None:
        super().__init__()
        self._folder = TemporaryDirectory()
        self._patch = pytest.MonkeyPatch()
        numbers = count(1)
        # What is drawn hangs on the order of jobs on a page, so that must be the same when it is drawn again.
        moments = (datetime(2026, 1, 1, tzinfo=UTC) + timedelta(seconds=number) for number in count())
        self._patch.setattr(kept_jobs, "now", lambda: f"{next(moments):%Y-%m-%dT%H:%M:%S+00:00}")
        self._patch.setattr(secrets, "token_hex", lambda _bytes: f"{next(numbers):08x}")
        self._app = AskedApp.on_copy(store, Path(self._folder.name))
        self._job, self._places = f"/jobs/{job_id}", places
        self._page = self._app.get(self._job)
        self._past: dict[str, list[KeptJob | None]] = defaultdict(list)
        """Of each job, how it was before each step that can be taken back; nothing where it was not seen."""

        self._ahead: dict[str, list[KeptJob]] = defaultdict(list)
        """Of each job, how it was after each step that can be taken again."""

    @rule(data=st.data())
    def follow_a_link(self, data: st.DataObject) -> None:
        """Which changes nothing."""
        links = [link.removeprefix(BASE) for link in links_in(self._page) if "/static/" not in link]
        self._look(data.draw(st.sampled_from(links or [self._job]), label="link"))

    @rule(data=st.data())
    def fill_in_a_form(self, data: st.DataObject) -> None:
        """Of any page, as somebody might."""
        form = self._form(data)
        if form is not None:
            self._send(filled(form, data), data)

    @rule(data=st.data())
    def spoil_a_form(self, data: st.DataObject) -> None:
        """Of any page, as nobody should."""
        form = self._form(data)
        if form is not None and form.fields:
            self._send(spoilt(form, data), data)

    @rule(what=st.sampled_from(("undo", "redo")))
    def take_a_step_back_or_again(self, what: str) -> None:
        """If there is one, and the job is still there."""
        before = self._app.kept()
        self._go(self._job, what)
        self._account(what, before, self._app.kept())

    def teardown(self) -> None:
        """Take everything back, and find every job as it was at first."""
        try:
            for job_id, past in self._past.items():
                if past and job_id in self._app.kept().jobs:
                    self._take_all_back(job_id, past)
        finally:
            self._patch.undo()
            self._folder.cleanup()

    def _take_all_back(self, job_id: str, past: Sequence[KeptJob | None]) -> None:
        for _ in past:
            self._go(f"/jobs/{job_id}", "undo")
        assert self._app.kept().jobs[job_id].job == past[0]

    def _go(self, job: str, what: str) -> None:
        """Take a step back or again by the form that offers it."""
        for form in forms_in(self._checked(self._app.get(f"{job}/steps"))):
            if form.action.endswith(f"/{what}"):
                self._checked(self._app.send(form))
                return

    def _form(self, data: st.DataObject) -> Form | None:
        """Turn to a page, and choose one of its forms, if it still has as many."""
        path, number = data.draw(st.sampled_from(self._places), label="form")
        self._look(path)
        forms = forms_in(self._page)
        return forms[number] if number < len(forms) else None

    def _look(self, path: str) -> None:
        before = self._app.kept()
        answer = self._checked(self._app.get(path))
        assert self._app.kept() == before
        self._turn_to(answer)

    def _send(self, form: Form, data: st.DataObject) -> None:
        files = data.draw(FILES, label="files") if form.files else []
        before = self._app.kept()
        answer = self._checked(self._app.send(form, [(form.files[0], file) for file in files]))
        after = self._app.kept()
        if answer.status_code >= 400:
            assert after == before
        self._account(form.action, before, after)
        where = answer.headers.get("location")
        self._turn_to(self._checked(self._app.get(where)) if where else answer)

    def _account(self, action: str, before: Kept, after: Kept) -> None:
        """Each job changes by steps alone: one back, one again, or new ones, as a mark and what follows."""
        for job_id in before.jobs.keys() & after.jobs.keys():
            was, now = before.jobs[job_id], after.jobs[job_id]
            past, ahead = self._past[job_id], self._ahead[job_id]
            more = len(now.steps) - len(was.steps)
            if more < 0:
                assert now.steps == was.steps[1:]
                seen = past.pop() if past else None
                assert seen is None or now.job == seen
                ahead.append(was.job)
            else:
                assert now.steps[more:] == was.steps
                past += [was.job, *[None] * (more - 1)][:more]
                if action.endswith("redo") and more:
                    assert now.job == ahead.pop()
                elif more:
                    ahead.clear()
                else:
                    assert now.job == was.job

    def _turn_to(self, answer: Response) -> None:
        if answer.status_code < 400 and (forms_in(answer) or links_in(answer)):
            self._page = answer

    @staticmethod
    def _checked(answer: Response) -> Response:
        faults = list(faults_of(answer))
        assert not faults, f"{answer.request.method} {answer.url}: {faults}"
        return answer
