"""Cutting: one board at a time, marked with a tap, and what is laid out anew when something went wrong."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from at_desk import Waiting, make_desk, waiting_search
from at_walls import form_to, send, standing_of, steps_of, words_of
from builders import board
from page_forms import take_back
from plankwright.layout.result import Result
from plankwright.model import MarkKind
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptLayout, Made
from plankwright.workshop.jobs.mark_kept import happened_to, mark_kept
from plankwright.workshop.jobs.search_layout import Errand
from plankwright.workshop.jobs.tally_boards import board_of, change_board, fingerprint
from two_walls import keep_walls, short_layout, walls_by, walls_job


@pytest.fixture
def walls(desk: Desk) -> str:
    """Keep the job of the two walls, with its layout; give its id."""
    return keep_walls(desk.store).id


def test_a_board_is_shown_with_its_steps_and_labels(client: TestClient, walls: str) -> None:
    """The first one that is to be cut, with all that is to be known of it and its drawing."""
    page = client.get(f"/jobs/{walls}/cutting")
    words = words_of(page)
    assert page.status_code == 200
    assert "Cut board A" in words
    assert '8\' 1" × 5-1/4"' in words
    assert "lot floor" in words
    assert 'at 96-1/2" Crosscut Trim the other end' in words
    assert 'Free: north 1a 96" × 5"' in words
    assert "<svg" in page.text
    assert "0 of 4 boards are cut" in words


def test_cut_and_on_to_the_next_board(client: TestClient, desk: Desk, walls: str) -> None:
    """All of its pieces are marked, in one step that can be taken back."""
    page = client.get(f"/jobs/{walls}/cutting", params={"board": "L"})
    after = send(client, form_to(page, "/cutting/cut"))
    assert "Cut board D" in words_of(after)
    assert "Last step: 2b on north cut and 1a on south cut." in words_of(after)
    assert {cut.key for cut in standing_of(desk, walls).cut} == {("north", "2b"), ("south", "1a")}
    assert len(desk.store.layouts(walls)) == 1
    take_back(client, walls, "cutting")
    assert desk.store.job(walls).work is None


def test_a_second_tap_is_no_mistake(client: TestClient, desk: Desk, walls: str) -> None:
    """The same form sent twice marks once."""
    form = form_to(client.get(f"/jobs/{walls}/cutting"), "/cutting/cut")
    send(client, form)
    assert send(client, form).status_code == 200
    assert steps_of(desk, walls)[0] == "1a on north cut"
    assert steps_of(desk, walls).count("1a on north cut") == 1


def test_skipping_marks_nothing(client: TestClient, desk: Desk, walls: str) -> None:
    """It leads on to the next board, and from the last one back to the first that is left."""
    assert 'href="/jobs/' + walls + '/cutting?board=B">Skip' in client.get(f"/jobs/{walls}/cutting").text
    last = client.get(f"/jobs/{walls}/cutting", params={"board": "D"})
    assert 'cutting?board=A">Skip' in last.text
    assert desk.store.job(walls).work is None


def test_everything_cut_is_said(client: TestClient, walls: str) -> None:
    """And hanging goes on."""
    page = client.get(f"/jobs/{walls}/cutting")
    for _ in range(4):
        page = send(client, form_to(page, "/cutting/cut"))
    assert "Every board is cut" in words_of(page)
    assert f"/jobs/{walls}/hanging" in page.text


def test_a_piece_that_broke_is_laid_out_anew(client: TestClient, desk: Desk, walls: str) -> None:
    """The page says what changed before anything else, until it is put aside."""
    asked = client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"})
    form = form_to(asked, "/cutting/broke")
    assert [value for name, value in form.ticks if name == "piece"] == ["2b@north", "1a@south"]
    after = send(client, form, piece="1a@south", sawn="yes")
    words = words_of(after)
    assert "What changed" in words
    assert words.index("What changed") < words.index("Cut board")
    assert "instead of L" in words
    assert standing_of(desk, walls).sawn == ("L",)
    assert desk.store.job(walls).layout_id == desk.store.layouts(walls)[0].id
    assert desk.store.layouts(walls)[0].made is Made.AGAIN
    read = send(client, form_to(after, "/cutting/read"))
    assert "What changed" not in words_of(read)


def test_what_changed_is_told_until_the_next_mark(client: TestClient, walls: str) -> None:
    """Then it was read."""
    asked = client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"})
    send(client, form_to(asked, "/cutting/broke"), piece="1a@south", sawn="yes")
    page = client.get(f"/jobs/{walls}/hanging")
    assert "What changed" in words_of(page)
    assert "What changed" not in words_of(send(client, form_to(page, "/hanging/hung")))


def test_what_changed_is_read_before_anything_is_marked(client: TestClient, walls: str) -> None:
    """Until then nothing else is under the thumb, on both screens."""
    asked = client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"})
    after = send(client, form_to(asked, "/cutting/broke"), piece="1a@south", sawn="yes")
    for page, screen in ((after, "cutting"), (client.get(f"/jobs/{walls}/hanging"), "hanging")):
        (bar,) = re.findall(r'<div class="bar".*', page.text, re.DOTALL)
        assert re.findall(r"<button[^>]*>([^<]*)<", bar)[0] == "Read, go on"
        assert f"/{screen}/read" in bar
        assert "It broke" not in bar
        assert "/cutting/cut" not in page.text


def test_what_is_different_is_told_before_what_stays(client: TestClient, walls: str) -> None:
    """And that nothing of a surface hangs is no news."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/lost", params={"board": "A"}), "/cutting/lost")
    words = words_of(send(client, form))
    lost, other, stay = (words.index(part) for part in ("Lost: board A.", "instead of A", "still to be hung"))
    assert lost < other < stay
    assert "none of" not in words


def test_a_board_that_broke_before_it_was_sawn_is_lost(client: TestClient, desk: Desk, walls: str) -> None:
    """What is left of it is unknown until it is tallied anew."""
    asked = client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"})
    assert "tally it as a new board" in words_of(asked)
    after = send(client, form_to(asked, "/cutting/broke"), piece="1a@south", sawn="no")
    assert "Lost: board L." in words_of(after)
    assert standing_of(desk, walls).lost == ("L",)
    assert standing_of(desk, walls).left == ()


def test_a_piece_that_is_marked_as_cut_was_sawn(client: TestClient, desk: Desk, walls: str) -> None:
    """Nothing is asked then."""
    send(client, form_to(client.get(f"/jobs/{walls}/cutting", params={"board": "A"}), "/cutting/cut"))
    where = {"surface": "north", "course": "1"}
    asked = client.get(f"/jobs/{walls}/hanging/broke", params=where)
    assert "sawn" not in dict(form_to(asked, "/hanging/broke").fields)
    assert "Was it sawn" not in words_of(asked)
    send(client, form_to(asked, "/hanging/broke"), piece="1a@north")
    assert standing_of(desk, walls).sawn == ("A",)


def test_all_is_marked_before_the_first_cut(client: TestClient, walls: str) -> None:
    """Said above the cuts, with the side of the mark that the blade goes on."""
    words = words_of(client.get(f"/jobs/{walls}/cutting"))
    before = words[words.index("Before the first cut") : words.index("Cuts, in order")]
    assert "Make all marks first , measured from the marked end" in before
    assert "The blade goes beyond the mark: its kerf" in before


def test_a_rip_shows_what_the_fence_is_set_to(client: TestClient, walls: str) -> None:
    """Large; the mark stands small beside it."""
    page = client.get(f"/jobs/{walls}/cutting")
    large = re.findall(r'class="mark"[^>]*>([^<]*)<', page.text)
    assert [mark for mark in large if "ence at" in mark]
    assert all(mark.startswith("Fence at") for mark in large if "ence at" in mark)
    assert re.search(r'Rip</b> <span class="muted">mark at ', page.text)


def test_what_is_left_is_told_by_the_name_that_it_will_have(client: TestClient, walls: str) -> None:
    """Since it is called otherwise once the board is sawn."""
    page = client.get(f"/jobs/{walls}/cutting", params={"board": "B"})
    assert "it is called B rest here" in words_of(page)


def test_boards_that_are_too_damp_are_told_of(client: TestClient, desk: Desk, walls: str) -> None:
    """On both screens, with the way to the readings; nothing is said where none was read."""
    assert "too damp" not in client.get(f"/jobs/{walls}/cutting").text
    damp = replace(board_of(desk.store.job(walls), "A"), moisture_pct=19.0)
    seen = fingerprint(board_of(desk.store.job(walls), "A"))
    desk.store.change(walls, "board A changed", lambda kept: change_board(kept, "A", seen, damp))
    for screen in ("cutting", "hanging"):
        page = client.get(f"/jobs/{walls}/{screen}")
        assert "One board is too damp to be cut to size or hung yet." in words_of(page)
        assert f"/jobs/{walls}/trade/moisture" in page.text


def test_another_phone_is_told_too(client: TestClient, desk: Desk, walls: str) -> None:
    """Whoever did not mark it has to read what changed as well."""
    asked = client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"})
    after = send(client, form_to(asked, "/cutting/broke"), piece="1a@south", sawn="yes")
    send(client, form_to(after, "/cutting/read"))
    other = TestClient(make_app(desk), base_url="http://localhost", client=("127.0.0.1", 50_001))
    assert "What changed" in words_of(other.get(f"/jobs/{walls}/cutting"))


def test_a_board_of_one_piece_has_it_ticked(client: TestClient, walls: str) -> None:
    """There is nothing to choose."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/broke", params={"board": "A"}), "/cutting/broke")
    assert ("piece", "1a@north") in form.fields


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({}, "Say what broke"),
        ({"piece": "9z@north"}, "There is no piece 9z in the layout"),
        ({"piece": "1a"}, "There is no piece 1a in the layout"),
        ({"piece": "1a@south"}, "1a is not marked as cut: say whether it was sawn"),
        ({"piece": "1a@south", "sawn": "perhaps"}, "say whether it was sawn"),
    ],
)
def test_what_broke_must_be_said(
    client: TestClient, desk: Desk, walls: str, fields: dict[str, str], told: str
) -> None:
    """The form is shown again, with what is wrong, and nothing is marked."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/broke", params={"board": "L"}), "/cutting/broke")
    page = send(client, form, **fields)
    assert page.status_code == 422
    assert told in words_of(page)
    assert form_to(page, "/cutting/broke").names == form.names
    assert desk.store.job(walls).work is None


def test_a_piece_cut_wrong_is_used_elsewhere(client: TestClient, desk: Desk, walls: str) -> None:
    """With the size that it has; one length is enough."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/wrong", params={"board": "B"}), "/cutting/wrong")
    after = send(client, form, length="4'")
    assert "What changed" in words_of(after)
    (cut,) = standing_of(desk, walls).cut
    assert cut.plain
    assert cut.part.length_nm == 48 * 25_400_000


@pytest.mark.parametrize(
    ("fields", "told"),
    [
        ({}, "Say what size the piece has now"),
        ({"length": "0"}, "say that it broke"),
        ({"length": "long"}, "“long” is not a length"),
        ({"length": "20'"}, "too long, cut it again"),
        ({"width": "4 ft"}, "too wide, cut it again"),
        ({"length": "3'", "piece": ""}, "Say which piece was cut wrong"),
    ],
)
def test_a_size_that_cannot_be_is_refused(
    client: TestClient, desk: Desk, walls: str, fields: dict[str, str], told: str
) -> None:
    """What was typed stays in the form, and no command is told of."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/wrong", params={"board": "B"}), "/cutting/wrong")
    page = send(client, form, **fields)
    assert page.status_code == 422
    assert told in words_of(page)
    assert "--" not in words_of(page)
    assert fields.items() - {("piece", "")} <= dict(form_to(page, "/cutting/wrong").fields).items()
    assert desk.store.job(walls).work is None


def test_a_lost_board_that_is_needed_is_laid_out_around(client: TestClient, desk: Desk, walls: str) -> None:
    """The board at the saw is proposed."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/lost", params={"board": "A"}), "/cutting/lost")
    assert dict(form.fields)["lost"] == "A"
    assert "Lost: board A." in words_of(send(client, form))
    assert standing_of(desk, walls).lost == ("A",)


def test_a_lost_board_that_is_not_needed_changes_nothing(client: TestClient, desk: Desk, walls: str) -> None:
    """No search is begun for it."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/lost"), "/cutting/lost")
    after = send(client, form, lost="f")
    assert "Last step: board f lost." in words_of(after)
    assert desk.store.last_search(walls) is None
    assert standing_of(desk, walls).lost == ("F",)


@pytest.mark.parametrize(("lost", "told"), [("", "Say which board is lost"), ("Z9", "There is no board Z9")])
def test_a_board_that_is_not_there_cannot_be_lost(
    client: TestClient, walls: str, lost: str, told: str
) -> None:
    """It is asked for again."""
    form = form_to(client.get(f"/jobs/{walls}/cutting/lost"), "/cutting/lost")
    page = send(client, form, lost=lost)
    assert page.status_code == 422
    assert told in words_of(page)


def test_nothing_named_marks_nothing(client: TestClient, walls: str) -> None:
    """The board is shown again."""
    form = form_to(client.get(f"/jobs/{walls}/cutting"), "/cutting/cut")
    page = client.post(form.action, data={"layout": dict(form.fields)["layout"], "board": "A"})
    assert page.status_code == 422
    assert "Nothing was named that is cut" in words_of(page)
    assert "Cut board A" in words_of(page)


def test_a_mark_against_another_layout_is_refused(client: TestClient, desk: Desk, walls: str) -> None:
    """Its labels may be of other pieces; the way to what is to be done now is shown."""
    form = form_to(client.get(f"/jobs/{walls}/cutting"), "/cutting/cut")
    other = desk.store.keep_layout(walls, replace(walls_by(), id=0))
    desk.store.change(walls, "another layout taken", lambda kept: work_by(kept, other.id))
    page = send(client, form)
    assert page.status_code == 409
    assert "The layout is another one since" in words_of(page)
    assert f"/jobs/{walls}/cutting" in page.text
    assert desk.store.job(walls).work is None


@pytest.mark.parametrize("layout", ["", "999", "-1", "one", "9" * 40])
def test_a_layout_that_never_was_is_not_there(client: TestClient, walls: str, layout: str) -> None:
    """Whatever the form says."""
    page = client.post(f"/jobs/{walls}/cutting/cut", data={"layout": layout, "piece": "1a@north"})
    assert page.status_code == 404


def test_without_a_layout_the_way_to_one_is_shown(client: TestClient, example: str) -> None:
    """And a mark is refused."""
    page = client.get(f"/jobs/{example}/cutting")
    assert "There is no layout to work by yet" in words_of(page)
    assert f"/jobs/{example}/layout" in page.text
    assert client.post(f"/jobs/{example}/cutting/cut", data={"piece": "1a@wall"}).status_code == 422


def test_no_cut_is_shown_by_a_layout_that_does_not_fit(client: TestClient, desk: Desk, walls: str) -> None:
    """Since a board was measured shorter; what is left is laid out anew with a tap."""
    shorter = board("A", 90, 5.25, lot="floor")
    seen = fingerprint(board_of(desk.store.job(walls), "A"))
    desk.store.change(walls, "board A changed", lambda kept: change_board(kept, "A", seen, shorter))
    page = client.get(f"/jobs/{walls}/cutting")
    assert "does not fit any more" in words_of(page)
    assert "Cut board" not in words_of(page)
    after = send(client, form_to(page, "/cutting/anew"))
    assert "What changed" in words_of(after)
    assert "Cut board" in words_of(after)


def test_a_job_that_is_none_any_more_shows_why(client: TestClient, desk: Desk, walls: str) -> None:
    """Such as one without a surface."""
    desk.store.change(
        walls, "surfaces taken out", lambda kept: replace(kept, definition={**kept.definition, "surface": []})
    )
    page = client.get(f"/jobs/{walls}/cutting")
    assert page.status_code == 200
    assert "no longer all right" in words_of(page)


@pytest.mark.parametrize("brought", [False, True])
def test_what_is_missing_is_told(client: TestClient, desk: Desk, walls: str, *, brought: bool) -> None:
    """When the rest cannot be covered, with the way to tally boards that turned up."""
    answer = ask_enough(walls_job(), Result(layout=short_layout()))
    laid = desk.store.keep_layout(
        walls, KeptLayout(layout=short_layout(), made=Made.AGAIN, answer=None if brought else answer)
    )
    desk.store.change(walls, "what is left laid out anew", lambda kept: work_by(kept, laid.id))
    page = client.get(f"/jobs/{walls}/cutting")
    assert ("This layout leaves something bare." if brought else answer.headline) in words_of(page)
    assert f"/jobs/{walls}/tally" in page.text


def test_a_search_under_way_is_waited_for(tmp_path: Path) -> None:
    """No board is shown meanwhile; what was tapped just before counts, and the search begins anew with it."""
    running: list[Waiting] = []

    def begin(_errand: Errand) -> Waiting:
        running.append(waiting_search())
        return running[-1]

    desk = make_desk(tmp_path, begin=begin)
    walls = keep_walls(desk.store).id
    with TestClient(make_app(desk), base_url="http://localhost", client=("127.0.0.1", 50_000)) as client:
        tapped = form_to(client.get(f"/jobs/{walls}/cutting"), "/cutting/cut")
        client.post(f"/jobs/{walls}/cutting/anew")
        page = client.get(f"/jobs/{walls}/cutting")
        assert "being laid out anew" in words_of(page)
        assert "Cut board" not in words_of(page)
        send(client, tapped)
        assert steps_of(desk, walls)[0] == "1a on north cut"
        assert len(running) == 2
        assert running[0].given_up


def test_marks_made_elsewhere_show(client: TestClient, desk: Desk, walls: str) -> None:
    """Whoever cuts sees what whoever hangs has marked."""
    client.get(f"/jobs/{walls}/cutting")
    by = desk.store.layouts(walls)[0]
    hung = happened_to(MarkKind.HUNG, [("north", "1a")])
    desk.store.change(walls, "1a hung", lambda kept: mark_kept(kept, walls_job(), by, hung))
    words = words_of(client.get(f"/jobs/{walls}/cutting"))
    assert "Cut board B" in words
    assert "1 of 4 boards is cut" in words


def test_the_screen_is_to_stay_awake(client: TestClient, walls: str) -> None:
    """Without a script, the page says what the phone must be set to."""
    page = client.get(f"/jobs/{walls}/cutting")
    assert "data-awake" in page.text
    assert "Set your phone to keep its screen on" in words_of(page)


def test_what_can_hurt_is_open_at_the_first_board(client: TestClient, walls: str) -> None:
    """And folded once work has begun."""
    page = client.get(f"/jobs/{walls}/cutting")
    assert 'class="care"' not in page.text
    assert f"/jobs/{walls}/hazards" in page.text
    after = send(client, form_to(page, "/cutting/cut"))
    assert 'class="care"' in after.text
