"""A browser is found where there is one, brought where there is none, and missed aloud where that fails."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tools import find_browser


@pytest.fixture
def bare(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """Have a machine on which no program is found but those put into a folder; give the folder."""
    for name in ("CHROMIUM", "CI", "PLANKWRIGHT_NEED_BROWSER"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(find_browser, "_of_playwright", lambda: None)
    return tmp_path


def program(folder: Path, name: str) -> Path:
    """Put a program into a folder."""
    path = folder / name
    shutil.copy("/bin/true" if os.name == "posix" else os.environ["COMSPEC"], path)
    return path


def on(monkeypatch: pytest.MonkeyPatch, *, root: bool, debian: bool) -> None:
    """Have a machine of some kind."""
    monkeypatch.setattr(find_browser, "_is_root", lambda: root)
    monkeypatch.setattr(find_browser, "_is_debian", lambda: debian)


def test_an_installed_browser_is_found(bare: Path) -> None:
    """By the names that it goes by, the plainest first."""
    assert find_browser.find_browser() is None
    chrome = program(bare, "google-chrome")
    assert find_browser.find_browser() == chrome
    chromium = program(bare, "chromium")
    assert find_browser.find_browser() == chromium


def test_the_named_browser_goes_before_all(bare: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """And when it is not there, no other is taken in its place."""
    program(bare, "chromium")
    own = program(bare, "own")
    monkeypatch.setenv("CHROMIUM", str(own))
    assert find_browser.find_browser() == own
    monkeypatch.setenv("CHROMIUM", str(bare / "gone"))
    assert find_browser.find_browser() is None


def test_debian_is_asked_only_as_root(bare: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Everybody else has Playwright fetch one."""
    program(bare, "apt-get")
    on(monkeypatch, root=True, debian=True)
    assert [command[0] for command in find_browser.ways_to_bring()][:2] == ["apt-get", "apt-get"]
    assert set(find_browser.PACKAGES) <= set(find_browser.ways_to_bring()[1])
    on(monkeypatch, root=False, debian=True)
    assert [command[-2:] for command in find_browser.ways_to_bring()] == [("install", "chromium")]
    on(monkeypatch, root=True, debian=False)
    assert [command[-2:] for command in find_browser.ways_to_bring()] == [("--with-deps", "chromium")]


def test_nothing_is_done_where_a_browser_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """Not even a word is said."""
    monkeypatch.setattr(find_browser, "ready", lambda: True)
    monkeypatch.setattr(find_browser, "ways_to_bring", lambda: pytest.fail("nothing was to be brought"))
    find_browser.main()


@pytest.mark.usefixtures("bare")
def test_ways_are_tried_until_one_brings_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """One that fails is followed by the next."""
    ran = monkeypatch_runs(monkeypatch, brings=lambda command: command == ("second",))
    find_browser.main()
    assert ran == [("first",), ("second",)]


@pytest.mark.usefixtures("bare")
def test_without_a_browser_the_tests_are_skipped(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """And it is said how to have one."""
    monkeypatch_runs(monkeypatch, brings=lambda _command: False)
    find_browser.main()
    told = capsys.readouterr().out
    assert "CHROMIUM" in told
    assert "skipped" in told


@pytest.mark.usefixtures("bare")
@pytest.mark.parametrize("name", ["CI", "PLANKWRIGHT_NEED_BROWSER"])
def test_where_one_is_needed_a_missing_browser_is_a_failure(
    monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    """With the same words."""
    monkeypatch.setenv(name, "1")
    monkeypatch_runs(monkeypatch, brings=lambda _command: False)
    with pytest.raises(SystemExit, match="CHROMIUM"):
        find_browser.main()


def monkeypatch_runs(
    monkeypatch: pytest.MonkeyPatch, brings: Callable[[tuple[str, ...]], bool]
) -> list[tuple[str, ...]]:
    """Have three commands to try, and no browser until one of them brings it; give those that were run."""
    ran: list[tuple[str, ...]] = []

    def run(command: tuple[str, ...], *, quiet: bool = True) -> bool:
        assert not quiet
        ran.append(command)
        return brings(command)

    monkeypatch.setattr(find_browser, "ways_to_bring", lambda: [("first",), ("second",), ("third",)])
    monkeypatch.setattr(find_browser, "_runs", run)
    monkeypatch.setattr(find_browser, "ready", lambda: any(map(brings, ran)))
    return ran
