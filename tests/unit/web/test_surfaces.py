"""The surfaces on their screens: added, drawn while being filled in, changed, linked, taken out."""

import re
from dataclasses import replace
from html import unescape
from typing import Any

import pytest
from httpx2 import Response
from starlette.testclient import TestClient

from kept_jobs import work_after
from page_forms import Form, forms_of
from plankwright import files
from plankwright.files.job_document import JobDocument
from plankwright.model import MarkKind
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.kept import KeptJob
from plankwright.workshop.jobs.start_job import start_job

WALL = {
    "outline": "plain",
    "width": "12 ft",
    "height": "8 ft",
    "backing": "studs",
    "framing.first_centre": "16",
    "framing.spacing": "16",
}
DOOR = {
    "opening.0.left": "3 ft",
    "opening.0.bottom": "0",
    "opening.0.width": "2 ft 8",
    "opening.0.height": "6 ft 8",
}
SOCKET = {
    "cut_out.0.centre.0": "8 ft",
    "cut_out.0.centre.1": "14",
    "cut_out.0.width": "2-1/4",
    "cut_out.0.height": "3-3/4",
    "cut_out.0.what": "socket",
}


@pytest.fixture
def bare(desk: Desk) -> str:
    """Keep a job without surfaces; give its id."""
    return desk.store.add(start_job(files, "back room", "inches")).id


def surfaces_of(desk: Desk, job: str) -> list[dict[str, Any]]:
    """Give the surfaces of a job as they are kept."""
    return list(desk.store.job(job).definition["surface"])


def form_of(page: Response, ends: str) -> Form:
    """Give the form of a page whose address ends so."""
    return next(form for form in forms_of(page.text, str(page.url)) if form.action.endswith(ends))


def alerts(page: Response) -> list[str]:
    """Give what is told to be wrong."""
    found = re.search(r'role="alert">.*?</section>', page.text, re.DOTALL)
    told = re.findall(r"<li>(.*?)</li>", found[0]) if found else []
    return [unescape(re.sub("<[^>]+>", "", one)) for one in told]


def add(client: TestClient, job: str, **more: str) -> Response:
    """Add a wall."""
    return client.post(f"/jobs/{job}/surfaces/new", data=WALL | more)


def test_a_wall_with_a_door_and_a_socket_is_added(client: TestClient, desk: Desk, bare: str) -> None:
    """As somebody with a phone fills it in; the list shows it."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | DOOR | SOCKET)
    assert page.status_code == 200
    assert str(page.url).endswith("/surfaces")
    (wall,) = files.read_definition(desk.store.job(bare).definition).surfaces
    assert (len(wall.openings), len(wall.cut_outs), len(wall.framing.members)) == (1, 1, 9)
    assert "Wall, 12&#39; 0&#34; wide, 8&#39; 0&#34; high: 96.0 sq ft." in page.text
    assert [change.what for change in desk.store.changes(bare, 1)] == ["surface wall added"]


def test_an_empty_form_says_what_is_still_to_be_filled_in(client: TestClient, bare: str) -> None:
    """Nothing about the studs is assumed."""
    page = client.get(f"/jobs/{bare}/surfaces/new")
    assert page.status_code == 200
    assert "What the nails go into is not filled in yet" in page.text
    assert all(not value for name, value in form_of(page, "/new").fields if name.startswith("framing."))


def test_a_wall_that_lacks_something_is_shown_again(client: TestClient, desk: Desk, bare: str) -> None:
    """With all that was typed, and each field that is to be mended marked."""
    empty = {"opening.3.bottom": "", "opening.3.width": "", "cut_out.0.centre.0": "", "cut_out.0.width": ""}
    page = add(client, bare, height="tall", **empty | {"opening.3.left": "3 ft", "cut_out.0.what": "socket"})
    assert page.status_code == 422
    given = dict(form_of(page, "/new").fields)
    assert (given["width"], given["height"], given["opening.3.left"]) == ("12 ft", "tall", "3 ft")
    assert any(told.startswith("Height “tall” is not a length") for told in alerts(page))
    assert all(told.endswith(".") for told in alerts(page))
    marked = set(re.findall(r'name="([^"]+)"[^>]*aria-invalid="true"', page.text))
    assert {"height", "opening.3.width", "cut_out.0.width"} <= marked
    for name in marked:
        described = re.search(rf'name="{re.escape(name)}"[^>]*aria-describedby="([^"]+)"', page.text)
        assert described is not None
        assert all(f'id="{one}"' in page.text for one in described[1].split())
    assert surfaces_of(desk, bare) == []


def test_a_row_is_added_by_a_plain_button(client: TestClient, bare: str) -> None:
    """All that was typed stays, and what is asked first comes next."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"add": "cut_out.centre.0"})
    assert page.status_code == 200
    given = dict(form_of(page, "/new").fields)
    assert given["width"] == "12 ft"
    assert {"cut_out.0.centre.0", "cut_out.0.centre.1", "cut_out.0.width", "cut_out.0.what"} <= set(given)
    assert "cut_out.0.left" not in given
    assert re.search(r'name="cut_out.0.centre.0"[^>]*autofocus', page.text)
    again = client.post(f"/jobs/{bare}/surfaces/new", data=given | {"add": "cut_out.left"})
    assert "cut_out.1.left" in dict(form_of(again, "/new").fields)


@pytest.mark.parametrize(
    ("row", "asked"),
    [
        ("keep_out.vertical", {"keep_out.0.vertical", "keep_out.0.width"}),
        ("keep_out.horizontal", {"keep_out.0.horizontal", "keep_out.0.width"}),
        ("keep_out.left", {"keep_out.0.left", "keep_out.0.bottom", "keep_out.0.width", "keep_out.0.height"}),
        ("concealed.left", {"concealed.0.left", "concealed.0.height"}),
        ("between.what", {"between.0.what", "between.0.thickness"}),
        ("heights.at", {"heights.0.at", "heights.1.at"}),
    ],
)
def test_each_sort_of_row_asks_for_what_it_needs(
    client: TestClient, bare: str, row: str, asked: set[str]
) -> None:
    """And a strip asks for one number of its place."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"add": row})
    assert asked <= set(form_of(page, "/new").names)
    assert page.status_code == 200


def test_a_row_is_taken_out_by_a_plain_button(client: TestClient, bare: str) -> None:
    """The others keep what was typed."""
    window = {name.replace(".0.", ".1."): value for name, value in DOOR.items()}
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | DOOR | window | {"remove": "opening.0"})
    given = dict(form_of(page, "/new").fields)
    assert "opening.0.left" not in given
    assert given["opening.1.left"] == "3 ft"


def test_the_drawing_follows_what_is_typed(client: TestClient, bare: str) -> None:
    """It never refuses: it says what is missing."""
    url = f"/jobs/{bare}/surfaces/new/preview"
    nothing = client.post(url, data={})
    assert nothing.status_code == 200
    assert "<svg" not in nothing.text
    drawn = client.post(url, data={"outline": "plain", "width": "12 ft", "height": "8 ft"})
    assert "<svg" in drawn.text
    assert "<html" not in drawn.text
    assert "What the nails go into is not filled in yet" in drawn.text
    wrong = client.post(url, data=WALL | {"opening.0.left": "far"})
    assert wrong.status_code == 200
    assert "is not a length" in unescape(wrong.text)


def test_without_scripts_the_drawing_comes_by_a_button(client: TestClient, bare: str) -> None:
    """And nothing is kept by it."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"draw": "draw"})
    assert page.status_code == 200
    assert "<svg" in page.text
    assert alerts(page) == []
    first = re.search(r"<button[^>]*>", page.text[page.text.index('id="surface"') :])
    assert first is not None
    assert 'name="draw"' in first[0]


@pytest.mark.parametrize(
    ("row", "x", "y"),
    [
        ("opening.left", "opening.0.left", "opening.0.bottom"),
        ("cut_out.centre.0", "cut_out.0.centre.0", "cut_out.0.centre.1"),
        ("keep_out.vertical", "keep_out.0.vertical", ""),
        ("keep_out.horizontal", "", "keep_out.0.horizontal"),
    ],
)
def test_a_tap_fills_in_the_place_of_what_was_added(
    client: TestClient, bare: str, row: str, x: str, y: str
) -> None:
    """The drawing says which fields, and how long it is in life."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"add": row})
    tapped = dict(re.findall(r'data-tap-([\w-]+)="([^"]*)"', page.text))
    assert (tapped["x"], tapped["y"], tapped["unit"]) == (x, y, "in")
    assert (float(tapped["x-length"]), float(tapped["y-length"])) == (144, 96)
    assert "tap-area" in page.text
    assert (
        "data-tap-x"
        not in client.post(f"/jobs/{bare}/surfaces/new", data=WALL | DOOR | {"draw": "draw"}).text
    )


def test_a_surface_is_changed(client: TestClient, desk: Desk, bare: str) -> None:
    """In its place, in one step that can be taken back."""
    add(client, bare)
    form = form_of(client.get(f"/jobs/{bare}/surfaces/0"), "/0")
    page = client.post(form.action, data=form.filled(height="7 ft").data())
    assert page.status_code == 200
    assert surfaces_of(desk, bare)[0]["height"] == "7' 0\""
    desk.store.undo(bare)
    assert surfaces_of(desk, bare)[0]["height"] == "8' 0\""


def test_a_surface_that_is_saved_as_it_is_shown_stays_as_it_is(
    client: TestClient, desk: Desk, example: str
) -> None:
    """Whatever came with a job folder."""
    before = desk.store.job(example)
    form = form_of(client.get(f"/jobs/{example}/surfaces/0"), "/0")
    assert client.post(form.action, data=form.data()).status_code == 200
    assert desk.store.job(example) == before


def test_every_key_of_a_surface_has_a_field(client: TestClient, bare: str) -> None:
    """Else what a job folder says of it would be lost by changing it here."""
    rows = [
        *("opening.left", "cut_out.centre.0", "cut_out.left", "concealed.left", "between.what"),
        *("keep_out.vertical", "keep_out.horizontal", "keep_out.left"),
    ]
    given: dict[str, str] = dict(WALL)
    for row in rows:
        page = client.post(f"/jobs/{bare}/surfaces/new", data=given | {"add": row})
        form = form_of(page, "/new")
        given = dict.fromkeys(form.names, "") | dict(form.fields)
    names = {re.sub(r"\.\d+", "", name) for name in given}
    assert keys_of(JobDocument.model_json_schema(), "SurfaceDocument") - names - {"framing.solid"} == set()


def keys_of(schema: dict[str, Any], table: str, before: str = "") -> set[str]:
    """Give the names of fields, without numbers, for every key of a table."""
    keys: set[str] = set()
    for key, value in schema["$defs"][table]["properties"].items():
        inner = re.findall(r"#/\$defs/(\w+Document)", str(value))
        keys |= keys_of(schema, inner[0], f"{before}{key}.") if inner else {f"{before}{key}"}
    return keys


def test_a_surface_that_somebody_else_changed_is_shown_beside_mine(
    client: TestClient, desk: Desk, bare: str
) -> None:
    """Nothing is written over before I say so, and nothing that I typed is lost."""
    add(client, bare)
    form = form_of(client.get(f"/jobs/{bare}/surfaces/0"), "/0")
    client.post(form.action, data=form.filled(height="7 ft").data())
    refused = client.post(form.action, data=form.filled(width="20 ft").data())
    assert refused.status_code == 409
    assert surfaces_of(desk, bare)[0]["width"] == "12' 0\""
    assert "7&#39; 0&#34; high" in refused.text
    again = form_of(refused, "/0")
    assert dict(again.fields)["width"] == "20 ft"
    (over,) = [value for name, value in again.buttons if name == "over"]
    assert client.post(again.action, data=again.data() | {"over": over}).status_code == 200
    assert surfaces_of(desk, bare)[0]["width"] == "20' 0\""


def test_a_surface_that_was_taken_out_meanwhile_can_be_added_again(
    client: TestClient, desk: Desk, bare: str
) -> None:
    """What was typed is still there."""
    add(client, bare)
    form = form_of(client.get(f"/jobs/{bare}/surfaces/0"), "/0")
    client.post(f"{form.action}/out", data={"seen": dict(form.fields)["seen"]})
    gone = client.post(form.action, data=form.filled(width="20 ft").data())
    assert gone.status_code == 404
    again = form_of(gone, "/new")
    assert client.post(again.action, data=again.data()).status_code == 200
    assert surfaces_of(desk, bare)[0]["width"] == "20' 0\""


def test_a_form_that_is_sent_twice_adds_one_surface(client: TestClient, desk: Desk, bare: str) -> None:
    """A thumb is quick."""
    form = form_of(client.get(f"/jobs/{bare}/surfaces/new"), "/new")
    for _ in range(2):
        client.post(form.action, data=form.filled(**WALL).data())
    assert len(surfaces_of(desk, bare)) == 1


def test_surfaces_are_put_in_order_and_taken_out(client: TestClient, desk: Desk, bare: str) -> None:
    """By the forms of the list."""
    add(client, bare, id="north")
    page = add(client, bare, id="east")
    up = form_of(page, "/1/up")
    page = client.post(up.action, data=up.data())
    assert [surface["id"] for surface in surfaces_of(desk, bare)] == ["east", "north"]
    stale = client.post(up.action, data=up.data())
    assert stale.status_code == 409
    assert alerts(stale)
    out = form_of(page, "/0/out")
    client.post(out.action, data=out.data())
    assert [surface["id"] for surface in surfaces_of(desk, bare)] == ["north"]


def test_a_surface_that_pieces_hang_on_stays(client: TestClient, desk: Desk, small: str) -> None:
    """It is neither taken out nor called otherwise, and the screens say why."""
    work = work_after((MarkKind.HUNG, "1a"))
    desk.store.change(small, "1a hung", lambda kept: replace(kept, work=work))
    seen = dict(form_of(client.get(f"/jobs/{small}/surfaces/0"), "/0").fields)["seen"]
    refused = client.post(f"/jobs/{small}/surfaces/0/out", data={"seen": seen})
    assert refused.status_code == 422
    assert alerts(refused) == ["Pieces hang on wall or are cut for it: it stays in the job."]
    form = form_of(client.get(f"/jobs/{small}/surfaces/0"), "/0")
    renamed = client.post(form.action, data=form.filled(id="north").data())
    assert renamed.status_code == 422
    assert dict(form_of(renamed, "/0").fields)["id"] == "north"
    assert surfaces_of(desk, small)[0]["id"] == "wall"


def test_walls_are_linked_from_left_to_right(client: TestClient, desk: Desk, bare: str) -> None:
    """And a wall that is called otherwise stays linked."""
    add(client, bare, id="north")
    page = add(client, bare, id="east")
    form = form_of(page, "/links")
    page = client.post(
        form.action, data=form.filled(**{"linked.0.wall.0": "north", "linked.0.wall.1": "east"}).data()
    )
    assert desk.store.job(bare).definition["linked"] == [["north", "east"]]
    changed = form_of(client.get(f"/jobs/{bare}/surfaces/1"), "/1")
    assert client.post(changed.action, data=changed.filled(id="garden side").data()).status_code == 200
    assert desk.store.job(bare).definition["linked"] == [["north", "garden side"]]


def test_a_link_that_makes_no_corner_is_refused(client: TestClient, bare: str) -> None:
    """What was chosen stays."""
    add(client, bare, id="north")
    form = form_of(add(client, bare, id="east"), "/links")
    refused = client.post(form.action, data=form.filled(**{"linked.0.wall.0": "north"}).data())
    assert refused.status_code == 422
    assert alerts(refused)
    assert dict(form_of(refused, "/links").fields)["linked.0.wall.0"] == "north"


def test_a_metric_job_reads_bare_numbers_and_commas_as_it_writes_them(client: TestClient, desk: Desk) -> None:
    """Centimetres with a decimal comma, centres parted by semicolons."""
    kept = KeptJob(
        id="",
        definition=files.settled({"name": "Stube", "units": "cm", "decimal_comma": True, "surface": []}),
    )
    job = desk.store.add(kept).id
    given = {"outline": "plain", "width": "362,5", "height": "241", "backing": "studs"}
    page = client.post(f"/jobs/{job}/surfaces/new", data=given | {"framing.centres": "2,5; 62,5\n122,5"})
    assert page.status_code == 200
    (wall,) = files.read_definition(desk.store.job(job).definition).surfaces
    assert wall.width_nm == 3_625_000_000
    assert [member.centre_nm for member in wall.framing.members] == [25_000_000, 625_000_000, 1_225_000_000]
    shown = dict(form_of(client.get(f"/jobs/{job}/surfaces/0"), "/0").fields)
    assert shown["width"] == "3625 mm"


@pytest.mark.parametrize("place", ["7", "-1", "x", "٣", "9" * 5_000])
def test_a_surface_that_is_not_there_is_not_found(client: TestClient, bare: str, place: str) -> None:
    """Whatever the address says."""
    assert client.get(f"/jobs/{bare}/surfaces/{place}").status_code == 404
    assert client.get(f"/jobs/{bare}/surfaces/{place}/drawing").status_code == 404
    assert client.post(f"/jobs/{bare}/surfaces/{place}/up", data={}).status_code == 404


def test_the_list_shows_a_drawing_of_each(client: TestClient, example: str) -> None:
    """A picture of its own."""
    page = client.get(f"/jobs/{example}/surfaces")
    source = re.search(r'<img src="([^"]+)"', page.text)
    assert source is not None
    picture = client.get(unescape(source[1]))
    assert picture.headers["content-type"].startswith("image/svg+xml")
    assert picture.text.startswith("<svg")


def test_the_caution_stands_where_pipes_and_wires_are_entered(client: TestClient, bare: str) -> None:
    """Only what somebody entered is known."""
    page = client.get(f"/jobs/{bare}/surfaces/new").text
    caution = "Pipes and wires are known only where somebody entered them: find them before you cut or nail."
    assert caution in page[page.index('id="part-keep_out"') : page.index('id="part-concealed"')]


def test_a_surface_is_taken_out_after_being_asked_and_brought_back(
    client: TestClient, desk: Desk, bare: str
) -> None:
    """The list says what became of it, with the way back."""
    out = form_of(add(client, bare, id="entry wall"), "/0/out")
    page = client.get(f"/jobs/{bare}/surfaces").text
    assert "Take out entry wall, with all that was measured of it?" in page
    assert page.index("<details") < page.index("/0/out")
    assert "was taken out" not in page
    after = client.post(out.action, data=out.data())
    assert "entry wall was taken out." in after.text
    back = [form for form in forms_of(after.text, str(after.url)) if form.action.endswith("/undo")][-1]
    assert client.post(back.action, data=back.data()).status_code == 200
    assert [surface["id"] for surface in surfaces_of(desk, bare)] == ["entry wall"]
    assert "was taken out" not in client.get(f"/jobs/{bare}/surfaces?out=1").text


def test_forms_that_were_left_can_be_put_back(client: TestClient, bare: str) -> None:
    """Both are kept under a key of their own, with what puts it back hidden until there is something."""
    for page, key in (("surfaces/new", f"surface:{bare}:new"), ("rules", f"rules:{bare}")):
        shown = client.get(f"/jobs/{bare}/{page}").text
        assert f'data-unsaved="{key}"' in shown
        assert re.search(rf'data-unsaved-panel="{key}"[^>]*hidden', shown)
        assert "data-unsaved-again" not in shown
        again = client.post(f"/jobs/{bare}/{page}", data={"draw": "draw", "currency": "$", "width": "9 ft"})
        assert again.status_code == 200
        assert "data-unsaved-again" in again.text


def test_a_ceiling_is_asked_for_in_its_own_words(client: TestClient, bare: str) -> None:
    """It has no height and no studs."""
    page = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"kind": "ceiling", "draw": "draw"}).text
    for word in ("Depth", "Along the depth", "Joists or strips", "Courses run along the width"):
        assert word in page
    for word in (">Height<", ">Level<", ">Upright<", "Studs or"):
        assert word not in page
    wall = client.post(f"/jobs/{bare}/surfaces/new", data=WALL | {"draw": "draw"}).text
    assert ">Height<" in wall
    assert "Studs or strips" in wall


def test_examples_of_a_metric_job_are_metric(client: TestClient, desk: Desk) -> None:
    """But for what is bought by the inch."""
    job = desk.store.add(start_job(files, "Stube", "mm")).id
    page = client.get(f"/jobs/{job}/surfaces/new").text
    assert "2226 mm" in page
    assert not re.search(r"\d ft\b|\d&#39;|\d in\b", page)


def test_a_tap_places_what_was_added_last(client: TestClient, bare: str) -> None:
    """Though something else still waits for its place; then that comes."""
    url = f"/jobs/{bare}/surfaces/new"
    both = WALL | {"cut_out.0.centre.0": "", "cut_out.0.centre.1": ""}
    page = client.post(url, data=both | {"add": "keep_out.vertical", "next": "cut_out.0"})
    assert 'data-tap-x="keep_out.0.vertical"' in page.text
    given = dict(form_of(page, "/new").fields)
    assert given["next"] == "keep_out.0"
    drawn = client.post(f"{url}/preview", data=given | {"keep_out.0.width": "2"})
    assert 'data-tap-x="keep_out.0.vertical"' in drawn.text
    placed = client.post(f"{url}/preview", data=given | {"keep_out.0.vertical": "5 ft"})
    assert 'data-tap-x="cut_out.0.centre.0"' in placed.text


def test_a_door_that_is_tapped_near_the_floor_stands_on_it(client: TestClient, bare: str) -> None:
    """A socket does not."""
    url = f"/jobs/{bare}/surfaces/new"
    assert 'data-tap-snap="3"' in client.post(url, data=WALL | {"add": "opening.left"}).text
    assert "data-tap-snap" not in client.post(url, data=WALL | {"add": "cut_out.centre.0"}).text


def test_an_end_without_framing_is_asked_for(client: TestClient, bare: str) -> None:
    """It is no more than a hint: the wall is saved all the same."""
    drawn = unescape(client.post(f"/jobs/{bare}/surfaces/new/preview", data=WALL).text)
    assert 'Nothing is there to nail to within 15-1/4" of the left end' in drawn
    assert add(client, bare).status_code == 200
