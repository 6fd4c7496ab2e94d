"""Phones are let in by a word, and by the old one no longer once there is another."""

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import WORD, make_desk
from plankwright.web.app import make_app
from plankwright.web.door import Door, new_word


def test_the_word_lets_in_and_no_other_does() -> None:
    """Not even one that is nearly the same."""
    door = Door(WORD)
    assert door.lets_in(WORD)
    assert not any(door.lets_in(word) for word in ("", WORD[:-1], f"{WORD} ", WORD.upper(), "é"))


@pytest.mark.parametrize("brought", ["", WORD])
def test_a_closed_door_lets_nobody_in(brought: str) -> None:
    """An empty word is none."""
    door = Door()
    door.change_word()
    assert not door.lets_in(brought)
    assert door.word == ""


def test_another_word_is_kept_and_the_old_one_is_done_with() -> None:
    """It still holds when the app is opened next."""
    kept: list[str] = []
    door = Door(WORD, kept.append)
    door.change_word()
    assert kept == [door.word]
    assert door.lets_in(door.word)
    assert not door.lets_in(WORD)


def test_no_two_words_are_alike() -> None:
    """And each is long enough not to be guessed."""
    words = {new_word() for _ in range(50)}
    assert len(words) == 50
    assert min(map(len, words)) >= 16


def test_a_phone_has_to_join_anew_by_another_code(tmp_path: Path) -> None:
    """Whoever joined by the old one is out until it scans the new one."""
    desk = make_desk(tmp_path, address="http://192.168.1.2:8642")
    app = make_app(desk, ["192.168.1.2"])
    address = "http://192.168.1.2:8642"
    with (
        TestClient(app, base_url=address, client=("192.168.1.7", 50_000)) as phone,
        TestClient(app, base_url="http://localhost", client=("127.0.0.1", 50_000)) as here,
    ):
        assert phone.get(f"/join/{WORD}").status_code == 200
        assert phone.get("/").status_code == 200
        shown = here.post("/phone", headers={"sec-fetch-site": "same-origin"})
        assert f"{address}/join/{desk.door.word}" in shown.text
        assert phone.get("/").status_code == 403
        assert phone.get(f"/join/{WORD}").status_code == 404
        assert phone.get(f"/join/{desk.door.word}").status_code == 200
