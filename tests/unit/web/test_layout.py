"""The layout on a screen: the answer, the drawing, pieces, wishes, and layouts made before."""

from dataclasses import replace
from html import unescape

import pytest
from starlette.testclient import TestClient

from kept_jobs import bare_job, work_after
from page_forms import forms_of
from plankwright.model import MarkKind
from plankwright.web.desk import Desk
from plankwright.workshop.ask_enough import ask_enough
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.wishes import NO_WISHES, PieceWish, Wishes
from village import small_job, small_layout, small_result, spoilt_layout


def shown(client: TestClient, path: str) -> str:
    """Give a page as text, and demand that it is there."""
    answer = client.get(path)
    assert answer.status_code == 200
    return unescape(answer.text)


def piece_fields(desk: Desk, small: str, label: str, **more: str) -> dict[str, str]:
    """Give what the forms of a piece send."""
    return {"layout": str(desk.store.job(small).layout_id), "place": "0", "label": label, **more}


def begun(desk: Desk, small: str) -> None:
    """Mark that the first piece hangs."""
    work = work_after((MarkKind.HUNG, "1a"))
    desk.store.change(small, "1a hung", lambda kept: replace(kept, work=work))


def without_first_board(kept: KeptJob) -> KeptJob:
    """Take board A, which 1a comes from, out of the tally."""
    return replace(kept, boards=kept.boards[1:])


def test_what_is_missing_is_told_with_the_way_there(desk: Desk, client: TestClient) -> None:
    """Of a job that nobody has measured anything of."""
    job = desk.store.add(bare_job())
    page = shown(client, f"/jobs/{job.id}/layout")
    assert "No board is measured yet" in page
    assert f'href="/jobs/{job.id}/tally">Go to tally' in page
    assert f'href="/jobs/{job.id}/surfaces">Go to surfaces' in page
    assert "Lay it out" not in page


def test_a_whole_job_can_be_laid_out(client: TestClient, example: str) -> None:
    """With three efforts to choose among, and what each means."""
    page = client.get(f"/jobs/{example}/layout")
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/search")]
    assert {value for name, value in form.ticks if name == "effort"} == {"glance", "steady", "thorough"}
    assert dict(form.fields)["made"] == "searched"


def test_the_answer_comes_first_and_in_words(client: TestClient, small: str) -> None:
    """Also of a layout that came without one."""
    page = shown(client, f"/jobs/{small}/layout")
    assert page.index("Enough: a layout was found that covers wall.") < page.index("<svg")
    assert "Spare: one whole board, C" in page


def test_each_piece_of_the_drawing_leads_to_its_page(client: TestClient, small: str) -> None:
    """And stands in words below it, for those who cannot see it."""
    page = shown(client, f"/jobs/{small}/layout")
    for label, board in (("1a", "A"), ("2a", "B")):
        assert page.count(f'href="/jobs/{small}/layout/pieces/0/{label}"') == 2
        assert f"<b>{label}</b> board {board}" in page


def test_the_drawing_can_be_shown_larger_and_as_the_boards_look(client: TestClient, small: str) -> None:
    """By links that work without script; whatever else the address says is as if it said nothing."""
    assert "lot floor" in shown(client, f"/jobs/{small}/layout?look=boards")
    assert "--zoom: 3.0" in shown(client, f"/jobs/{small}/layout?zoom=4")
    for nonsense in ("99", "-1", "x", "²"):
        assert "--zoom: 1.0" in shown(client, f"/jobs/{small}/layout?zoom={nonsense}")


def test_a_layout_that_fits_no_longer_says_so_first(desk: Desk, client: TestClient, small: str) -> None:
    """With why, and with nothing to cut by."""
    desk.store.change(small, "board A taken out", without_first_board)
    page = shown(client, f"/jobs/{small}/layout")
    assert "It does not fit any more" in page
    assert "board A" in page
    assert "Go on to cutting" not in page
    assert 'value="again" checked' in page


def test_an_answer_that_holds_no_longer_is_told_as_of_then(
    desk: Desk, client: TestClient, small: str
) -> None:
    """Small, and not as the answer of this page."""
    answer = ask_enough(small_job(), small_result())
    laid = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.SEARCHED, answer=answer))
    desk.store.change(small, "another layout taken", lambda kept: work_by(kept, laid.id))
    assert f'class="answer">{answer.headline}' in shown(client, f"/jobs/{small}/layout")
    desk.store.change(small, "board A taken out", without_first_board)
    page = shown(client, f"/jobs/{small}/layout")
    assert f"When it was laid out: {answer.headline}" in page
    assert 'class="answer"' not in page


def test_a_surface_that_is_gone_or_another_is_not_drawn(desk: Desk, client: TestClient, small: str) -> None:
    """The page is there all the same."""

    def renamed(kept: KeptJob) -> KeptJob:
        (surface,) = kept.definition["surface"]
        return replace(kept, definition={**kept.definition, "surface": [{**surface, "id": "other"}]})

    desk.store.change(small, "the wall called otherwise", renamed)
    page = shown(client, f"/jobs/{small}/layout")
    assert "the job has no such surface any more" in page
    assert "<svg" not in page


def test_a_layout_is_kept_while_the_job_cannot_be_read(desk: Desk, client: TestClient, small: str) -> None:
    """Nothing is drawn, nothing is lost."""
    desk.store.change(small, "all boards taken out", lambda kept: replace(kept, boards=()))
    page = shown(client, f"/jobs/{small}/layout")
    assert "No board is measured yet" in page
    assert "The layout is kept as it is" in page


def test_once_work_has_begun_only_what_is_left_is_laid_out(
    desk: Desk, client: TestClient, small: str
) -> None:
    """A layout from scratch would not heed what hangs."""
    begun(desk, small)
    page = client.get(f"/jobs/{small}/layout")
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("/search")]
    assert dict(form.fields)["made"] == "again"
    assert "(hangs)" in page.text


def test_a_piece_shows_its_board_and_its_place(client: TestClient, small: str) -> None:
    """With the drawing of the board and what there is to do."""
    page = shown(client, f"/jobs/{small}/layout/pieces/0/1a")
    assert "Board A" in page
    assert "lot floor" in page
    assert "<svg" in page
    assert "Place:" in page
    assert "No other piece." in page


def test_a_piece_that_hangs_is_not_to_be_had_otherwise(desk: Desk, client: TestClient, small: str) -> None:
    """It says that it hangs, and what it was cut from."""
    begun(desk, small)
    page = shown(client, f"/jobs/{small}/layout/pieces/0/1a")
    assert "It hangs already." in page
    assert "Keep this piece here" not in page


def test_a_piece_of_a_layout_that_fits_no_longer_tells_no_cuts(
    desk: Desk, client: TestClient, small: str
) -> None:
    """Nobody is to cut by it."""
    desk.store.change(small, "board A taken out", without_first_board)
    page = shown(client, f"/jobs/{small}/layout/pieces/0/1a")
    assert "its cuts are not told" in page
    assert "<svg" not in page


@pytest.mark.parametrize(
    "path",
    [
        "layout/pieces/0/9z",
        "layout/pieces/7/1a",
        "layout/pieces/x/1a",
        "layout/boards/0/9z",
        "layout/kept/99",
        "layout/kept/x",
        "layout/kept/99999999999999999999",
        "layout/compare",
        "layout/compare?one=1&other=",
        "layout/kept/1/maps/9.svg",
        "layout/kept/1/maps/-1.svg",
    ],
)
def test_what_is_not_there_is_a_clear_sentence(client: TestClient, small: str, path: str) -> None:
    """Never a fault of ours."""
    answer = client.get(f"/jobs/{small}/{path}")
    assert answer.status_code == 404
    assert 'role="alert"' in answer.text


def test_layouts_that_were_made_are_listed(desk: Desk, client: TestClient, small: str) -> None:
    """With how they came about and what they come to; the one that is worked by is marked."""
    other = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.BROUGHT))
    page = shown(client, f"/jobs/{small}/layout/kept")
    assert "Brought along" in page
    assert "Laid out from scratch" in page
    assert "two pieces from two boards" in page
    assert page.count("worked by</span>") == 1
    assert f"Work by layout {other.id}" in page


def test_another_layout_is_worked_by_once_it_is_chosen(desk: Desk, client: TestClient, small: str) -> None:
    """And can be taken back."""
    before = desk.store.job(small).layout_id
    other = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.BROUGHT))
    assert "not the layout that the job is worked by" in shown(
        client, f"/jobs/{small}/layout/kept/{other.id}"
    )
    answer = client.post(f"/jobs/{small}/layout/kept/{other.id}/work-by", data={"seen": str(before)})
    assert answer.url.path == f"/jobs/{small}/layout"
    assert desk.store.job(small).layout_id == other.id
    desk.store.undo(small)
    assert desk.store.job(small).layout_id == before


def test_a_layout_that_breaks_a_rule_is_not_worked_by(desk: Desk, client: TestClient, small: str) -> None:
    """It says which, and the job stays as it is."""
    before = desk.store.job(small).layout_id
    spoilt = desk.store.keep_layout(small, KeptLayout(layout=spoilt_layout(), made=Made.BROUGHT))
    answer = client.post(f"/jobs/{small}/layout/kept/{spoilt.id}/work-by", data={"seen": str(before)})
    assert answer.status_code == 422
    assert "does not fit the job as it is now" in answer.text
    assert desk.store.job(small).layout_id == before


def test_whoever_chooses_sees_what_somebody_else_chose(desk: Desk, client: TestClient, small: str) -> None:
    """Nothing is written over."""
    other = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.BROUGHT))
    answer = client.post(f"/jobs/{small}/layout/kept/{other.id}/work-by", data={"seen": "12345"})
    assert answer.status_code == 409
    assert desk.store.job(small).layout_id != other.id


def test_two_layouts_stand_side_by_side(desk: Desk, client: TestClient, small: str) -> None:
    """With their figures, their drawings and what is different."""
    one = desk.store.job(small).layout_id
    other = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.BROUGHT)).id
    page = shown(client, f"/jobs/{small}/layout/compare?one={one}&other={other}")
    for what in ("Left bare", "Joints in sight", "Wood spent", "Cuts", "Pieces"):
        assert f'<th scope="row">{what}</th>' in page
    assert "stay as they were" in page
    (first, *_) = [part.split('"')[0] for part in page.split('<img src="')[1:]]
    drawing = client.get(first)
    assert drawing.headers["content-type"].startswith("image/svg+xml")
    assert drawing.text.startswith("<svg")


def test_a_layout_that_breaks_a_rule_can_be_compared(desk: Desk, client: TestClient, small: str) -> None:
    """It says so, and cannot be chosen there."""
    one = desk.store.job(small).layout_id
    other = desk.store.keep_layout(small, KeptLayout(layout=spoilt_layout(), made=Made.BROUGHT)).id
    page = shown(client, f"/jobs/{small}/layout/compare?one={one}&other={other}")
    assert "It does not fit the job as it is now" in page
    assert f"Work by layout {other}" not in page


def test_a_piece_can_be_asked_to_stay_and_the_wish_taken_back(
    desk: Desk, client: TestClient, small: str
) -> None:
    """It is told on the layout, with the way to have the rest laid out around it."""
    answer = client.post(f"/jobs/{small}/layout/wishes/keep", data=piece_fields(desk, small, "1a"))
    assert "1a stays where it is" in answer.text
    assert answer.text.index("Asked for</h2>") < answer.text.index('aria-label="The answer"')
    (wish,) = desk.store.job(small).wishes.kept
    assert (wish.label, wish.board_id) == ("1a", "A")
    (form,) = [
        one
        for one in forms_of(answer.text, str(answer.url))
        if one.action.endswith("take-back") and "wish" in dict(one.fields)
    ]
    client.post(form.action, data=form.data())
    assert desk.store.job(small).wishes == NO_WISHES


def test_a_board_is_chosen_among_those_that_can_give_the_piece(
    desk: Desk, client: TestClient, small: str
) -> None:
    """C is to spare, B is cut for the other piece."""
    page = client.get(f"/jobs/{small}/layout/boards/0/1a")
    (form,) = [one for one in forms_of(page.text, str(page.url)) if one.action.endswith("wishes/put")]
    assert {value for name, value in form.ticks if name == "board"} == {"B", "C"}
    answer = client.post(form.action, data=form.filled(board="C").data())
    assert "Board C for piece 1a" in answer.text
    assert desk.store.job(small).wishes.put == (PieceWish(surface_id="wall", label="1a", board_id="C"),)


def test_a_board_can_be_left_out_unless_a_wish_needs_it(desk: Desk, client: TestClient, small: str) -> None:
    """The refusal says what to do, and nothing is written."""
    fields = piece_fields(desk, small, "1a", board="A")
    assert "Without board A" in client.post(f"/jobs/{small}/layout/wishes/without", data=fields).text
    client.post(f"/jobs/{small}/layout/wishes/take-back")
    client.post(f"/jobs/{small}/layout/wishes/keep", data=fields)
    answer = client.post(f"/jobs/{small}/layout/wishes/without", data=fields)
    assert answer.status_code == 422
    assert "take that back first" in answer.text
    assert desk.store.job(small).wishes.without == ()


def test_two_boards_are_swapped_at_once_where_nothing_else_changes(
    desk: Desk, client: TestClient, small: str
) -> None:
    """The job is worked by the layout with just that swapped, and it can be taken back."""
    before = desk.store.job(small).layout_id
    fields = piece_fields(desk, small, "1a", other="0:2a")
    answer = client.post(f"/jobs/{small}/layout/wishes/swap", data=fields)
    assert answer.status_code == 200
    after = desk.store.job(small)
    assert after.layout_id is not None
    laid = desk.store.layout(small, after.layout_id)
    assert laid.made is Made.SWAPPED
    assert [piece.board_id for piece in laid.layout.pieces] == ["B", "A"]
    desk.store.undo(small)
    assert desk.store.job(small).layout_id == before


@pytest.mark.parametrize(
    ("wish", "more", "status"),
    [
        ("put", {"label": "1a", "board": "no such"}, 422),
        ("put", {"label": "1a"}, 422),
        ("without", {"label": "1a", "board": "no such"}, 422),
        ("swap", {"label": "1a", "other": "0:9z"}, 404),
        ("swap", {"label": "1a"}, 404),
        ("swap", {"label": "1a", "other": "0:1a"}, 422),
        ("keep", {"label": "9z"}, 404),
        ("keep", {"label": "1a", "layout": "98765"}, 404),
        ("keep", {"label": "1a", "place": "x"}, 404),
    ],
)
def test_a_wish_that_makes_no_sense_is_refused(
    desk: Desk, client: TestClient, small: str, wish: str, more: dict[str, str], status: int
) -> None:
    """With a sentence, and nothing is written."""
    before = desk.store.job(small)
    answer = client.post(
        f"/jobs/{small}/layout/wishes/{wish}", data={**piece_fields(desk, small, "1a"), **more}
    )
    assert answer.status_code == status
    assert 'role="alert"' in answer.text
    assert desk.store.job(small) == before


def test_a_wish_of_an_older_layout_is_refused(desk: Desk, client: TestClient, small: str) -> None:
    """Its pieces may be others by now."""
    fields = piece_fields(desk, small, "1a")
    other = desk.store.keep_layout(small, KeptLayout(layout=small_layout(), made=Made.BROUGHT))
    desk.store.change(small, "another taken", lambda kept: replace(kept, layout_id=other.id))
    assert client.post(f"/jobs/{small}/layout/wishes/keep", data=fields).status_code == 409
    assert desk.store.job(small).wishes == NO_WISHES


def test_a_wish_that_cannot_be_granted_any_more_says_why(desk: Desk, client: TestClient, small: str) -> None:
    """It stays in the list until somebody takes it back."""
    wishes = Wishes(put=(PieceWish(surface_id="wall", label="1a", board_id="gone"),))
    desk.store.change(small, "asked", lambda kept: replace(kept, wishes=wishes))
    page = shown(client, f"/jobs/{small}/layout")
    assert "Board gone for piece 1a" in page
    assert "no longer possible" in page


def test_what_is_asked_for_is_laid_out_around(desk: Desk, client: TestClient, small: str) -> None:
    """By a search of its own, which the layout that comes of it tells of."""
    client.post(f"/jobs/{small}/layout/wishes/put", data=piece_fields(desk, small, "1a", board="C"))
    answer = client.post(f"/jobs/{small}/search", data={"made": "around", "effort": "glance"})
    assert answer.url.path == f"/jobs/{small}/layout"
    kept = desk.store.job(small)
    assert kept.layout_id is not None
    laid = desk.store.layout(small, kept.layout_id)
    assert laid.made is Made.AROUND
    assert [piece.board_id for piece in laid.layout.pieces] == ["C", "B"]
    assert "(so it is now)" in answer.text
