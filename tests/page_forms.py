"""The forms of a page, as a browser without scripts would send them, and the links that lead on."""

from dataclasses import dataclass, field, replace
from html.parser import HTMLParser
from urllib.parse import urljoin, urlsplit

from httpx2 import Response
from starlette.testclient import TestClient

_UNSENT = frozenset({"submit", "button", "image", "reset"})
_TICKS = frozenset({"checkbox", "radio"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """A form as it stands on a page.

    Parameters
    ----------
    action, method
        Where it goes, and how: "get" or "post".
    fields
        What would be sent, by name; ticks that are not set are left out.
    hidden
        Names of the fields that nobody fills in.
    ticks
        Boxes and buttons that could be set, by name and value.
    choices
        What may be chosen, by the name of the field.
    files
        Names of fields that take files.
    buttons
        Names and values of the buttons that send it.
    """

    action: str
    method: str
    fields: tuple[tuple[str, str], ...] = ()
    hidden: frozenset[str] = frozenset()
    ticks: tuple[tuple[str, str], ...] = ()
    choices: tuple[tuple[str, tuple[str, ...]], ...] = ()
    files: tuple[str, ...] = ()
    buttons: tuple[tuple[str, str], ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """The names of all that it sends."""
        every = [name for name, _ in (*self.fields, *self.ticks, *self.choices)]
        return tuple(dict.fromkeys((*every, *self.files)))

    def filled(self, **values: str) -> "Form":
        """Give it with some fields filled in otherwise; those that it lacks are added."""
        kept = [(name, values.pop(name, value)) for name, value in self.fields]
        return replace(self, fields=(*kept, *values.items()))

    def data(self) -> dict[str, list[str]]:
        """Give what is sent, as a client takes it."""
        sent: dict[str, list[str]] = {}
        for name, value in self.fields:
            sent.setdefault(name, []).append(value)
        return sent


@dataclass
class _Draft:
    """A form that is being read."""

    action: str
    method: str
    fields: list[tuple[str, str]] = field(default_factory=list)
    hidden: set[str] = field(default_factory=set)
    ticks: list[tuple[str, str]] = field(default_factory=list)
    choices: list[tuple[str, tuple[str, ...]]] = field(default_factory=list)
    files: list[str] = field(default_factory=list)
    buttons: list[tuple[str, str]] = field(default_factory=list)

    def done(self) -> Form:
        return Form(
            action=self.action,
            method=self.method,
            fields=tuple(self.fields),
            hidden=frozenset(self.hidden),
            ticks=tuple(self.ticks),
            choices=tuple(self.choices),
            files=tuple(self.files),
            buttons=tuple(self.buttons),
        )


class _Reader(HTMLParser):
    def __init__(self, url: str) -> None:
        super().__init__()
        self.url = url
        self.links: list[str] = []
        self.drafts: list[_Draft] = []
        self._by_id: dict[str, _Draft] = {}
        self._late: list[tuple[str, str, dict[str, str]]] = []
        self._open: _Draft | None = None
        self._textarea: tuple[_Draft, str] | None = None
        self._select: tuple[_Draft, str] | None = None
        self._options: list[tuple[str, bool]] = []
        self._text = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        had = {name: value or "" for name, value in attrs}
        if tag == "form":
            self._open = _Draft(urljoin(self.url, had.get("action", "")), had.get("method", "get").lower())
            self.drafts.append(self._open)
            if "id" in had:
                self._by_id[had["id"]] = self._open
        elif tag == "a" and "href" in had:
            self.links.append(urljoin(self.url, had["href"]))
        elif tag == "option":
            self._options.append((had.get("value", ""), "selected" in had))
        elif tag in {"input", "button", "select", "textarea"} and "disabled" not in had:
            self._control(tag, had)

    def handle_endtag(self, tag: str) -> None:
        if tag == "form":
            self._open = None
        elif tag == "select" and self._select:
            draft, name = self._select
            values = tuple(value for value, _ in self._options)
            draft.choices.append((name, values))
            chosen = [value for value, selected in self._options if selected] or list(values[:1])
            draft.fields += [(name, value) for value in chosen[:1]]
            self._select = None
        elif tag == "textarea" and self._textarea:
            draft, name = self._textarea
            draft.fields.append((name, self._text.removeprefix("\n")))
            self._textarea = None

    def handle_data(self, data: str) -> None:
        if self._textarea:
            self._text += data

    def _control(self, tag: str, had: dict[str, str]) -> None:
        draft = self._by_id.get(had["form"]) if "form" in had else self._open
        if draft is None:
            if "form" in had:
                self._late.append((tag, had["form"], had))
            return
        self._put(draft, tag, had)

    def _put(self, draft: _Draft, tag: str, had: dict[str, str]) -> None:
        name, value, kind = had.get("name", ""), had.get("value", ""), had.get("type", "").lower()
        if tag == "button" or kind in _UNSENT:
            if name:
                draft.buttons.append((name, value))
        elif not name:
            return
        elif tag == "select":
            self._select, self._options = (draft, name), []
        elif tag == "textarea":
            self._textarea, self._text = (draft, name), ""
        elif kind == "file":
            draft.files.append(name)
        elif kind in _TICKS:
            draft.ticks.append((name, value or "on"))
            if "checked" in had:
                draft.fields.append((name, value or "on"))
        else:
            draft.fields.append((name, value))
            if kind == "hidden":
                draft.hidden.add(name)

    def close(self) -> None:
        super().close()
        for tag, form, had in self._late:
            if form in self._by_id and tag in {"input", "button"}:
                self._put(self._by_id[form], tag, had)


def forms_of(page: str, url: str) -> tuple[Form, ...]:
    """Read the forms of a page.

    Parameters
    ----------
    page
        Its HTML.
    url
        Its address, from which those of its forms are reckoned.
    """
    return tuple(draft.done() for draft in _read(page, url).drafts)


def links_of(page: str, url: str) -> tuple[str, ...]:
    """Read where the links of a page lead within the app, without what stands behind a #."""
    here = urlsplit(url)
    found = (urlsplit(link) for link in _read(page, url).links)
    own = (link._replace(fragment="").geturl() for link in found if link.netloc == here.netloc)
    return tuple(dict.fromkeys(own))


def _read(page: str, url: str) -> _Reader:
    reader = _Reader(url)
    reader.feed(page)
    reader.close()
    return reader


def take_back(client: TestClient, job_id: str, screen: str) -> Response:
    """Take the last step with a job back on one of its screens, as the button of that screen does."""
    page = client.get(f"/jobs/{job_id}/{screen}")
    form = next(one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/undo"))
    return client.post(form.action, data=form.data())
