"""Hanging: one course at a time, ticked off piece by piece, and measured where it came out otherwise."""

import pytest
from starlette.testclient import TestClient

from at_walls import form_to, send, standing_of, steps_of, words_of
from plankwright.web.desk import Desk
from two_walls import keep_walls, nm


@pytest.fixture
def walls(desk: Desk) -> str:
    """Keep the job of the two walls, with its layout; give its id."""
    return keep_walls(desk.store).id


def hang(client: TestClient, job_id: str, surface: str, *courses: int) -> None:
    """Hang whole courses."""
    for number in courses:
        page = client.get(f"/jobs/{job_id}/hanging", params={"surface": surface, "course": str(number)})
        form = form_to(page, "/hanging/course", course=str(number)).filled(edge="")
        assert send(client, form).status_code == 200


def test_a_course_is_shown_with_its_mark_and_its_pieces(client: TestClient, walls: str) -> None:
    """The first one that does not hang, with where to start and what to watch."""
    words = words_of(client.get(f"/jobs/{walls}/hanging"))
    assert "Hang course 1 north" in words
    assert 'Strike a line at 5"' in words
    assert "Courses run level, from the bottom up." in words
    assert "Starter: its lower edge at 0" in words
    assert '1a 96" × 5" 1a hangs Board A , not marked as cut' in words
    assert 'Place 0" to 96", marked end to the left.' in words
    assert "0 of 3 pieces hang." in words


def test_pieces_are_ticked_off_one_by_one(client: TestClient, desk: Desk, walls: str) -> None:
    """One stays at a course while anything of it is left, and goes on to the next then."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "2"})
    first = send(client, form_to(page, "/hanging/hung", piece="2b@north"))
    assert "Hang course 2" in words_of(first)
    assert "2b hangs already" in words_of(first)
    second = send(client, form_to(first, "/hanging/hung", piece="2a@north"))
    assert "Hang course 1" in words_of(second)
    assert standing_of(desk, walls).hung_labels("north") == {"2a", "2b"}
    assert steps_of(desk, walls)[:2] == ["2a on north hung", "2b on north hung"]
    assert desk.store.last_search(walls) is None


def test_the_next_course_opens_at_its_top(client: TestClient, walls: str) -> None:
    """While anything of a course is left, the page stays where it is; after its last piece it does not."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "2"})
    assert "show:none" in page.text
    last = send(client, form_to(page, "/hanging/hung", piece="2b@north"))
    assert "/hanging/hung" in last.text
    assert "show:none" not in last.text


def test_what_taking_down_does_is_said_before_it_is_done(client: TestClient, walls: str) -> None:
    """Next to the button."""
    hang(client, walls, "north", 1)
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    words = words_of(page)
    assert words.index("laid out anew at once") < words.index("Take 1a down")


def test_a_whole_course_is_ticked_off(client: TestClient, desk: Desk, walls: str) -> None:
    """In one step."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "2"})
    after = send(client, form_to(page, "/hanging/course", course="2").filled(edge=""))
    assert "Hang course 1" in words_of(after)
    assert steps_of(desk, walls)[0] == "course 2 on north hung"
    assert standing_of(desk, walls).hung_labels("north") == {"2a", "2b"}


def test_each_surface_has_its_courses(client: TestClient, walls: str) -> None:
    """One chooses, and goes on with the next surface when one is done."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "south"})
    assert "Hang course 1 south" in words_of(page)
    hang(client, walls, "north", 1, 2)
    done = client.get(f"/jobs/{walls}/hanging", params={"surface": "north"})
    assert "All of north hangs" in words_of(done)
    assert "Go on with south" in words_of(done)


def test_the_last_piece_leads_to_what_is_left_over(client: TestClient, walls: str) -> None:
    """That was all."""
    hang(client, walls, "north", 1, 2)
    hang(client, walls, "south", 1, 2)
    page = client.get(f"/jobs/{walls}/hanging")
    assert "everything hangs" in words_of(page)
    assert f"/jobs/{walls}/left" in page.text
    assert "Nothing is left to be sawn" in words_of(client.get(f"/jobs/{walls}/cutting"))


def test_a_course_that_came_out_higher_has_the_rest_laid_out_anew(
    client: TestClient, desk: Desk, walls: str
) -> None:
    """Its edge is where it was measured, and the page says what changed."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    after = send(client, form_to(page, "/hanging/course", edge=""), edge="5-1/4")
    words = words_of(after)
    assert words.index("What changed") < words.index("Hang course 2 north")
    assert standing_of(desk, walls).hung_on("north")[0].to_nm == nm(5.25)
    assert "course 1 on north hung as measured" in steps_of(desk, walls)


def test_a_course_where_it_was_planned_changes_nothing(client: TestClient, desk: Desk, walls: str) -> None:
    """It is measured and found right: no search is begun."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    after = send(client, form_to(page, "/hanging/course", edge=""), edge='5"')
    assert "Hang course 2" in words_of(after)
    assert desk.store.last_search(walls) is None


def test_a_course_that_hangs_can_be_measured_later(client: TestClient, desk: Desk, walls: str) -> None:
    """From the list of all courses."""
    hang(client, walls, "north", 1)
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    assert "All of it hangs." in words_of(page)
    after = send(client, form_to(page, "/hanging/course", edge=""), edge="5-1/4")
    assert "What changed" in words_of(after)
    assert standing_of(desk, walls).hung_on("north")[0].to_nm == nm(5.25)


@pytest.mark.parametrize(
    ("edge", "told"),
    [
        ("high", "“high” is not a length"),
        ("12", "a whole course away"),
        ("-3", "-3"),
    ],
)
def test_an_edge_that_cannot_be_is_refused(
    client: TestClient, desk: Desk, walls: str, edge: str, told: str
) -> None:
    """The course is shown again with what was typed."""
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    again = send(client, form_to(page, "/hanging/course", edge=""), edge=edge)
    assert again.status_code == 422
    assert told in words_of(again)
    assert dict(form_to(again, "/hanging/course", edge=edge).fields)["course"] == "1"
    assert desk.store.job(walls).work is None


def test_a_piece_that_hangs_can_be_taken_down(client: TestClient, desk: Desk, walls: str) -> None:
    """It is cut then and has only to be hung again; nothing is laid out anew for that."""
    hang(client, walls, "north", 1)
    page = client.get(f"/jobs/{walls}/hanging", params={"surface": "north", "course": "1"})
    after = send(client, form_to(page, "/hanging/down", piece="1a@north"))
    assert "Hang course 1" in words_of(after)
    assert "cut already" in words_of(after)
    assert standing_of(desk, walls).hung == ()
    assert desk.store.last_search(walls) is None


def test_a_piece_that_breaks_on_the_wall_is_laid_out_anew(client: TestClient, desk: Desk, walls: str) -> None:
    """What is offered is the course, each piece with how far it is."""
    hang(client, walls, "north", 1)
    params = {"surface": "north", "course": "1"}
    asked = client.get(f"/jobs/{walls}/hanging/broke", params=params)
    assert 'north 1a 8\' 0" × 5" board A, hangs' in words_of(asked)
    after = send(client, form_to(asked, "/hanging/broke"))
    assert "What changed" in words_of(after)
    assert standing_of(desk, walls).hung == ()


def test_one_piece_can_be_singled_out(client: TestClient, walls: str) -> None:
    """From its place in the course; it is ticked already."""
    params = {"surface": "north", "course": "2", "only": "2b@north"}
    form = form_to(client.get(f"/jobs/{walls}/hanging/wrong", params=params), "/hanging/wrong")
    assert form.ticks == (("piece", "2b@north"),)
    assert ("piece", "2b@north") in form.fields


def test_what_hangs_is_not_cut_wrong(client: TestClient, walls: str) -> None:
    """It is taken down first."""
    hang(client, walls, "north", 1)
    page = client.get(f"/jobs/{walls}/hanging/wrong", params={"surface": "north", "course": "1"})
    assert form_to(page, "/hanging/wrong").ticks == ()
    assert "what hangs is taken down first" in words_of(page)
    refused = client.post(
        f"/jobs/{walls}/hanging/wrong",
        data={
            "layout": dict(form_to(page, "/hanging/wrong").fields)["layout"],
            "piece": "1a@north",
            "length": "8",
        },
    )
    assert refused.status_code == 422
    assert "1a hangs: take it down first" in words_of(refused)


@pytest.mark.parametrize(
    ("path", "data", "told"),
    [
        ("hung", {}, "No piece was named"),
        ("hung", {"piece": "1a@attic"}, "There is no piece 1a in the layout"),
        ("down", {"piece": "1a@north"}, "1a is not marked as hung"),
        ("course", {}, "No course was named"),
        ("course", {"surface": "north", "course": "one"}, "No course was named"),
        ("course", {"surface": "north", "course": "9"}, "There is no course 9"),
        ("course", {"surface": "attic", "course": "1"}, "no surface attic"),
    ],
)
def test_a_tap_that_names_nothing_is_refused(
    client: TestClient, desk: Desk, walls: str, path: str, data: dict[str, str], told: str
) -> None:
    """A sentence says why, above the course, and nothing is marked."""
    number = str(desk.store.job(walls).layout_id)
    page = client.post(f"/jobs/{walls}/hanging/{path}", data={"layout": number, **data})
    assert page.status_code == 422
    assert told in words_of(page)
    assert "Hang course 1" in words_of(page)
    assert desk.store.job(walls).work is None


def test_a_lost_board_is_told_from_the_wall_too(client: TestClient, desk: Desk, walls: str) -> None:
    """One goes on hanging then."""
    form = form_to(client.get(f"/jobs/{walls}/hanging/lost"), "/hanging/lost")
    after = send(client, form, lost="D")
    assert "What changed" in words_of(after)
    assert "Hang course 1" in words_of(after)
    assert standing_of(desk, walls).lost == ("D",)


def test_where_to_start_is_open_at_the_first_course(client: TestClient, walls: str) -> None:
    """And folded later."""
    assert '<details class="intro" open>' in client.get(f"/jobs/{walls}/hanging").text
    hang(client, walls, "north", 1)
    assert '<details class="intro">' in client.get(f"/jobs/{walls}/hanging").text


def test_the_hanging_of_a_small_job_goes_to_its_end(client: TestClient, desk: Desk, small: str) -> None:
    """A single surface needs no choice."""
    page = client.get(f"/jobs/{small}/hanging")
    assert 'class="surfaces"' not in page.text
    for _ in range(2):
        page = send(client, form_to(page, "/hanging/hung"))
    assert "everything hangs" in words_of(page)
    assert len(standing_of(desk, small).hung) == 2
