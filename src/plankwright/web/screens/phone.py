"""Let a phone join: a code to scan on this machine, and the door that it leads to."""

from starlette.responses import Response
from starlette.routing import Route

from plankwright.draw.code import code_svg
from plankwright.web.guard import COOKIE, JOIN
from plankwright.web.visit import Visit, page
from plankwright.workshop.jobs.kept import NotThereError

_A_YEAR_S = 365 * 24 * 60 * 60


def show_code(visit: Visit) -> Response:
    """Show the code that a phone scans."""
    desk = visit.desk
    word = desk.door.word
    link = f"{desk.address}{JOIN}{word}" if desk.address and word else ""
    return visit.show("phone.html", link=link, code=code_svg(link, ground="#ffffff") if link else "")


def join(visit: Visit) -> Response:
    """Let in whoever brings the word."""
    word = str(visit.request.path_params["word"])
    if not visit.desk.door.lets_in(word):
        raise NotThereError("This code is of another time: scan the one that the computer shows now.")
    answer = visit.go("/")
    answer.set_cookie(COOKIE, word, max_age=_A_YEAR_S, httponly=True, samesite="lax")
    return answer


def change_code(visit: Visit) -> Response:
    """Make another code, and have every phone that joined by the old one join anew."""
    visit.desk.door.change_word()
    return visit.go("/phone")


ROUTES: list[Route] = [
    page("/phone", show_code),
    page("/phone", change_code, "POST"),
    page(f"{JOIN}{{word}}", join),
]
