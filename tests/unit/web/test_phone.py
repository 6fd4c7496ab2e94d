"""A phone joins by the code that this machine shows, and by nothing else."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pymupdf
import pytest
import zxingcpp
from starlette.testclient import TestClient

from at_desk import WORD, make_desk
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.guard import COOKIE

ADDRESS = "http://192.168.1.2:8642"


@pytest.fixture
def shared(tmp_path: Path) -> Desk:
    """Give a desk that phones find."""
    return make_desk(tmp_path, address=ADDRESS)


def asked_from(desk: Desk, where: str) -> TestClient:
    """Ask it from some machine."""
    return TestClient(
        make_app(desk, ["192.168.1.2"]),
        base_url=ADDRESS,
        client=(where, 50_000),
        follow_redirects=True,
        raise_server_exceptions=False,
    )


@pytest.fixture
def phone(shared: Desk) -> Iterator[TestClient]:
    """Ask from a phone on the same network."""
    with asked_from(shared, "192.168.1.7") as asking:
        yield asking


def test_this_machine_shows_the_code(shared: Desk) -> None:
    """With the address in words for whoever cannot scan, and what it means to have it."""
    with asked_from(shared, "127.0.0.1") as here:
        page = here.get("/phone").text
    assert f"{ADDRESS}/join/{WORD}" in page
    assert "<svg" in page
    assert "Whoever has this code can see and change every job here" in page


def test_a_phone_joins_by_the_code(phone: TestClient, shared: Desk) -> None:
    """From then on it is let in everywhere."""
    assert phone.get("/").status_code == 403
    joined = phone.get(f"/join/{WORD}")
    assert joined.status_code == 200
    assert joined.url.path == "/"
    assert phone.get("/").status_code == 200
    begun = phone.post(
        "/jobs", data={"name": "porch", "units": "inches"}, headers={"sec-fetch-site": "same-origin"}
    )
    assert begun.status_code == 200
    assert [card.name for card in shared.store.cards()] == ["porch"]


def test_the_cookie_is_out_of_reach_for_scripts_and_other_pages(phone: TestClient) -> None:
    """It lasts, so that nobody scans every morning."""
    cookie = phone.get(f"/join/{WORD}", follow_redirects=False).headers["set-cookie"].lower()
    assert cookie.startswith(f"{COOKIE}=")
    for part in ("httponly", "samesite=lax", "path=/", "max-age=31536000"):
        assert part in cookie


@pytest.mark.parametrize("word", ["", "let-me", "LET-ME-IN", "let-me-in2", "%00", "é", "x" * 5_000])
def test_another_word_lets_nobody_in(phone: TestClient, word: str) -> None:
    """It may be of another time; nothing is set by it."""
    answer = phone.get(f"/join/{word}")
    assert answer.status_code in {403, 404}
    assert "set-cookie" not in answer.headers
    assert phone.get("/").status_code == 403


def test_a_code_of_another_time_is_told(phone: TestClient) -> None:
    """With what to do."""
    assert (
        "This code is of another time: scan the one that the computer shows now."
        in phone.get("/join/old").text
    )


@pytest.mark.parametrize(("address", "word"), [("", WORD), (ADDRESS, ""), ("", "")])
def test_for_one_machine_there_is_no_code(tmp_path: Path, address: str, word: str) -> None:
    """It is said why, without a word of commands."""
    desk = make_desk(tmp_path, address=address, word=word)
    with asked_from(desk, "127.0.0.1") as here:
        page = here.get("/phone").text
    assert "<svg" not in page.partition("<main")[2]
    assert "no phone can join" in page
    assert "--" not in page.partition("<main")[2]
    with asked_from(desk, "192.168.1.7") as phone:
        assert phone.get("/join/").status_code in {403, 404}
        assert phone.get("/join/x").status_code in {403, 404}
        assert phone.get("/").status_code == 403


def test_the_code_holds_the_address(shared: Desk) -> None:
    """A phone reads it as it stands there in words, also where the page is dark."""
    with asked_from(shared, "127.0.0.1") as here:
        figure = here.get("/phone").text.partition("<figure")[2]
    drawing = figure[figure.index("<svg") : figure.index("</svg>")] + "</svg>"
    page = pymupdf.open(stream=drawing.encode(), filetype="svg")[0]
    pixels = page.get_pixmap(dpi=300)
    image = np.frombuffer(pixels.samples, np.uint8).reshape(pixels.height, pixels.width, pixels.n)
    (code,) = zxingcpp.read_barcodes(image)
    assert code.text == f"{ADDRESS}/join/{WORD}"
    assert (image[0, 0, :3] == 255).all()
