"""What goes wrong while one cuts and hangs: a piece broke or was cut wrong, a board is lost."""

from collections.abc import Iterable

from starlette.responses import Response
from starlette.routing import Route

from plankwright.errors import PlankwrightError
from plankwright.model import MarkKind
from plankwright.web.screens.working import mark, pieces_named, screen_of, to_mark_on, to_work_by, told_of
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.at_work import AtWork
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.pieces_at_hand import PieceAtHand, cut_wrong, what_broke
from plankwright.workshop.mark_work import Happened

_WHERE = ("board", "surface", "course", "only")
"""What the address of a page says of where one was."""


def ask_broke(visit: Visit) -> Response:
    """Ask which pieces broke."""
    return _ask(visit, "broke")


def ask_wrong(visit: Visit) -> Response:
    """Ask which piece was cut wrong, and what size it has now."""
    return _ask(visit, "wrong")


def ask_lost(visit: Visit) -> Response:
    """Ask which board is lost or of no use."""
    return _ask(visit, "lost")


def mark_broke(visit: Visit) -> Response:
    """Mark pieces that broke."""
    at = to_mark_on(visit)
    try:
        pieces = pieces_named(visit, at, ["piece", "other"])
        if not pieces:
            raise RefusedError("Say what broke: tick the piece, or several.")
        return mark(visit, what_broke(pieces, sawn=_sawn(visit)), **_back(visit))
    except PlankwrightError as trouble:
        return _again(visit, at, "broke", trouble)


def mark_wrong(visit: Visit) -> Response:
    """Mark a piece that was cut wrong, with the size that it has now."""
    at = to_mark_on(visit)
    try:
        return mark(visit, [_cut_wrong(visit, at)], **_back(visit))
    except PlankwrightError as trouble:
        return _again(visit, at, "wrong", trouble)


def mark_lost(visit: Visit) -> Response:
    """Mark a board of which nothing more can be used."""
    at = to_mark_on(visit)
    try:
        board_id = visit.text("lost")
        if not board_id:
            raise RefusedError("Say which board is lost: write its mark.")
        return mark(visit, [Happened(kind=MarkKind.LOST, names=(board_id,))], **_back(visit))
    except PlankwrightError as trouble:
        return _again(visit, at, "lost", trouble)


def _sawn(visit: Visit) -> bool | None:
    """Give the answer to whether what broke was sawn by then; nothing when there is none."""
    return {"yes": True, "no": False}.get(visit.text("sawn"))


def _cut_wrong(visit: Visit, at: AtWork) -> Happened:
    pieces = pieces_named(visit, at, ["piece"])
    if len(pieces) != 1:
        raise RefusedError("Say which piece was cut wrong: choose one.")
    length, width = (
        visit.reading.read_length(text) if (text := visit.text(name)) else None
        for name in ("length", "width")
    )
    return cut_wrong(pieces[0], length, width)


def _ask(visit: Visit, what: str) -> Response:
    at = to_work_by(visit)
    if isinstance(at, Response):
        return at
    where = {name: visit.asked(name) for name in _WHERE}
    offered = _offered(at, where, what)
    given = {"lost": _board_of(at, where["board"]), "piece": where["only"]}
    if len(offered) == 1:
        given["piece"] = offered[0].word
    return _form(visit, at, what, where, given, [])


def _again(visit: Visit, at: AtWork, what: str, trouble: PlankwrightError) -> Response:
    """Show the form again with all that was filled in, and why it will not do."""
    sentences = told_of(at, trouble)
    where = {name: visit.text(name) for name in _WHERE}
    return _form(visit, at, what, where, dict(visit.fields()), sentences)


def _form(
    visit: Visit, at: AtWork, what: str, where: dict[str, str], given: dict[str, str], problems: list[str]
) -> Response:
    offered = _offered(at, where, what)
    ticked = {value for name, value in visit.fields() if name == "piece"} | {given.get("piece", "")}
    return visit.show(
        "work_mishap.html",
        status=422 if problems else 200,
        screen=screen_of(visit),
        at=at,
        what=what,
        where=where,
        given=given,
        problems=problems,
        offered=offered,
        unsawn=what == "broke" and any(piece.not_cut for piece in offered),
        ticked=ticked,
        others=_choices(piece for piece in at.pieces.values() if piece.in_hand and piece not in offered),
        board_ids=[board.id for board in at.job.boards if board.id not in at.standing.lost],
    )


def _offered(at: AtWork, where: dict[str, str], what: str) -> list[PieceAtHand]:
    """Give the pieces that it is likely to be: those of the board at the saw, or of the course."""
    if where["only"] in at.pieces:
        named = {at.pieces[where["only"]].key}
    elif where["board"]:
        named = {
            key for step in at.boards if step.id == where["board"] and not step.done for key in step.pieces
        }
    else:
        named = {
            step.key
            for surface in at.surfaces
            if surface.id == where["surface"]
            for course in surface.courses
            if str(course.number) == where["course"]
            for step in course.pieces
        }
    offered = [piece for piece in at.pieces.values() if piece.key in named] or list(at.pieces.values())
    return [piece for piece in offered if what != "wrong" or not piece.hangs]


def _choices(pieces: Iterable[PieceAtHand]) -> list[tuple[str, str]]:
    """Give pieces as choices of a form, with none of them ahead; nothing when there is none."""
    named = [(piece.word, f"{piece.name}, {piece.size}") for piece in pieces]
    return [("", "none"), *named] if named else []


def _board_of(at: AtWork, step_id: str) -> str:
    """Give the board of the tally that a board at the saw is, or is left of."""
    keys = {key for step in at.boards if step.id == step_id for key in step.pieces}
    return next((piece.board_id for piece in at.pieces.values() if piece.key in keys), "")


def _back(visit: Visit) -> dict[str, str]:
    """Say where one goes on: where one was."""
    return {name: visit.text(name) for name in ("board", "surface", "course")}


def mishap_routes(screen: str) -> list[Route]:
    """Give the addresses under a screen where one says what went wrong."""
    asked = {
        "broke": (ask_broke, mark_broke),
        "wrong": (ask_wrong, mark_wrong),
        "lost": (ask_lost, mark_lost),
    }
    return [
        route
        for what, (ask, answer) in asked.items()
        for route in (
            page(f"/jobs/{{job_id}}/{screen}/{what}", ask),
            page(f"/jobs/{{job_id}}/{screen}/{what}", answer, "POST"),
        )
    ]
