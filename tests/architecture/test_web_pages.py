"""The app needs nothing from outside; its pages carry no script and no words of the terminal."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WEB = ROOT / "src" / "plankwright" / "web"
TEMPLATES = sorted((WEB / "templates").glob("*.html"))
CARRIED = sorted(path for path in (WEB / "static").iterdir() if path.suffix in {".js", ".css", ".svg"})

OUTSIDE = re.compile(
    r"\b(?:https?|wss?):\s*//(?!www\.w3\.org/)[^\s\"'`)<]+"  # an address, but for the names of namespaces
    r"|(?<=[\"'(=])//[a-z0-9-]+\.[a-z]{2,}[^\s\"'`)<]*"  # one that takes over how the page was asked for
    r"|@import\b[^;]*",
    re.IGNORECASE,
)
INLINE = re.compile(
    r"<script(?![^>]*\ssrc=)[^>]*>"  # a script in the page, which its policy would not let run
    r"|\s(?:on[a-z]+|hx-on[^\s=]*|hx-vars)\s*="
    r"|\bjavascript:"
    r"|\bhx-vals\s*=\s*[\"']js:"
    r"|\bhx-trigger\s*=\s*[\"'][^\"']*\[",  # a condition, which would be run as a script
    re.IGNORECASE,
)
TERMINAL = re.compile(
    r"(?<![\w-])--[a-z][a-z-]+|\bplankwright (?:[a-z]+ )?(?:lay|now|mark|tally|start|app)\b"
)
NO_PAGE = re.compile(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}|<!--.*?-->", re.DOTALL)
TAG = re.compile(r"<[^>]*>", re.DOTALL)


def outside_in(text: str) -> list[str]:
    """Give what a text asks for from somewhere else."""
    return [found.group() for found in OUTSIDE.finditer(text)]


def inline_in(text: str) -> list[str]:
    """Give what would run as a script although it stands in the page."""
    return [found.group().strip() for found in INLINE.finditer(NO_PAGE.sub("", text))]


def of_the_terminal_in(text: str) -> list[str]:
    """Give words of the terminal among those that a page shows."""
    return [found.group() for found in TERMINAL.finditer(TAG.sub(" ", NO_PAGE.sub(" ", text)))]


@pytest.mark.parametrize("path", [*TEMPLATES, *CARRIED], ids=lambda path: path.name)
def test_nothing_is_asked_for_from_outside(path: Path) -> None:
    """The app works where there is no network, and tells nobody that it is used."""
    assert outside_in(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_no_page_carries_a_script(path: Path) -> None:
    """So that none that somebody smuggles in is ever run."""
    assert inline_in(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_no_page_speaks_of_the_terminal(path: Path) -> None:
    """Whoever uses the app may never have seen one."""
    assert of_the_terminal_in(path.read_text(encoding="utf-8")) == []


def test_there_are_pages_and_scripts_to_look_at() -> None:
    """Else nothing was looked at."""
    assert len(TEMPLATES) > 5
    assert {"htmx.min.js", "app.css", "app.js"} <= {path.name for path in CARRIED}


@pytest.mark.parametrize("path", CARRIED, ids=lambda path: path.name)
def test_what_is_carried_along_from_others_says_whose_it_is(path: Path) -> None:
    """Its licence stands beside it."""
    if path.name.endswith(".min.js"):
        assert path.name.partition(".")[0] in (WEB / "static" / "LICENCES.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "text",
    [
        '<script src="https://cdn.example.org/x.js">',
        '<link href="//cdn.example.org/x.css">',
        "fetch('http://example.org')",
        'new WebSocket("wss://example.org/")',
        "background: url(//example.org/a.png)",
        '@import "other.css";',
    ],
)
def test_what_comes_from_outside_is_found(text: str) -> None:
    """Every way to ask for it."""
    assert len(outside_in(text)) == 1


@pytest.mark.parametrize(
    "text",
    [
        '<svg xmlns="http://www.w3.org/2000/svg">',
        "// a comment",
        '<a href="/jobs">',
        "a // b.c",
        "url(/a.png)",
    ],
)
def test_what_is_our_own_is_let_pass(text: str) -> None:
    """Namespaces are only names."""
    assert outside_in(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "<script>run()</script>",
        '<script type="module">',
        '<b onclick="run()">',
        '<b hx-on:click="run()">',
        '<a href="javascript:run()">',
        "<b hx-vals='js:{a: 1}'>",
        '<b hx-trigger="click[ctrlKey]">',
    ],
)
def test_a_script_in_a_page_is_found(text: str) -> None:
    """Every way to smuggle one in."""
    assert len(inline_in(text)) == 1


@pytest.mark.parametrize(
    "text", ['<script src="/static/app.js" defer>', "one click = two", '<b hx-trigger="click delay:1s">']
)
def test_scripts_of_our_own_are_let_pass(text: str) -> None:
    """They come from files."""
    assert inline_in(text) == []


@pytest.mark.parametrize("text", ["Start it without “--alone”.", "with “plankwright now” again"])
def test_words_of_the_terminal_are_found(text: str) -> None:
    """Options and commands."""
    assert len(of_the_terminal_in(text)) == 1
    assert of_the_terminal_in(f"{{# {text} #}}") == []
