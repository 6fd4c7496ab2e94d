"""What one would have otherwise: a piece that stays, another board for it, a swap, a board left out."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from starlette.responses import Response

from plankwright.errors import BadInputError
from plankwright.model import Job, Layout, Standing
from plankwright.web.mishaps import sentences_of
from plankwright.web.screens.layout_page import kept_layout, number_of
from plankwright.web.screens.layout_pieces import piece_named, piece_page, piece_url
from plankwright.web.visit import Visit
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, RefusedError, StaleError
from plankwright.workshop.jobs.make_wishes import keep_piece, leave_out_board, put_board
from plankwright.workshop.jobs.see_layout import standing_of
from plankwright.workshop.jobs.see_piece import find_piece
from plankwright.workshop.jobs.see_wishes import board_choices
from plankwright.workshop.jobs.swap_pieces import swap_pieces
from plankwright.workshop.jobs.wishes import NO_WISHES, Wishes

_LONGEST_MARK = 40

Make = Callable[[Job, Layout, Standing, Wishes], Wishes]
"""Makes a wish besides those that there are."""


def wish_to_keep(visit: Visit) -> Response:
    """Wish that a piece stays where it is."""
    laid, piece = _shown(visit)
    return _wish(visit, laid, f"{piece[1]} asked to stay", partial(keep_piece, piece=piece))


def wish_for_board(visit: Visit) -> Response:
    """Wish that a piece comes from another board."""
    laid, piece = _shown(visit)
    board = visit.text("board")[:_LONGEST_MARK]
    if not board:
        return _refused(visit, ["Choose a board first."])
    make = partial(put_board, piece=piece, board_id=board)
    return _wish(visit, laid, f"board {board} asked for {piece[1]}", make)


def wish_without(visit: Visit) -> Response:
    """Wish that nothing more is cut from a board."""
    laid, _ = _shown(visit)
    board = visit.text("board")[:_LONGEST_MARK]
    return _wish(visit, laid, f"board {board} left out", partial(leave_out_board, board_id=board))


def take_back(visit: Visit) -> Response:
    """Take a wish back, or all of them."""
    wish = visit.text("wish")

    def less(kept: KeptJob) -> KeptJob:
        return replace(kept, wishes=kept.wishes.less(wish) if wish else NO_WISHES)

    visit.change("what was asked for taken back", less)
    return visit.go_to_job("layout#asked")


def swap(visit: Visit) -> Response:
    """Swap the boards of two pieces: at once where nothing else has to change, else as a wish."""
    laid, piece = _shown(visit)
    place, _, label = visit.text("other").partition(":")
    before = visit.job
    try:
        other, _, _ = find_piece(laid.layout, number_of(place), label)
        swapped = swap_pieces(
            visit.reading.job, laid, before.work, before.wishes, (piece, (other.surface_id, label))
        )
    except (BadInputError, RefusedError) as trouble:
        return _refused(visit, sentences_of(trouble))
    if swapped.laid is None:
        visit.change(
            f"{piece[1]} and {label} asked to swap boards",
            lambda kept: replace(_as_before(kept, before), wishes=swapped.wishes),
        )
        return visit.go_to_job("layout#asked")
    stored = visit.desk.store.keep_layout(visit.job_id, swapped.laid)
    visit.change(
        f"boards of {piece[1]} and {label} swapped",
        lambda kept: replace(work_by(_as_before(kept, before), stored.id), wishes=swapped.wishes),
    )
    return visit.go_to_job("layout")


def choose_board(visit: Visit) -> Response:
    """Show the boards that could give a piece."""
    place, label = piece_named(visit)
    if visit.job.layout_id is None:
        return visit.go_to_job("layout")
    laid = visit.desk.store.layout(visit.job_id, visit.job.layout_id)
    surface, _, piece = find_piece(laid.layout, place, label)
    try:
        choices = board_choices(
            visit.reading.job,
            laid.layout,
            standing_of(visit.job),
            (surface.surface_id, label),
            visit.job.wishes,
        )
    except RefusedError as trouble:
        return piece_page(visit, place, label, status=422, problems=sentences_of(trouble))
    return visit.show(
        "layout_boards.html",
        place=place,
        label=label,
        board_id=piece.board_id,
        choices=choices,
        piece_url=partial(piece_url, visit.job_id),
    )


def _wish(visit: Visit, laid: KeptLayout, what: str, make: Make) -> Response:
    files = visit.desk.bench.files

    def wished(kept: KeptJob) -> KeptJob:
        if kept.layout_id != laid.id:
            raise StaleError
        job = files.read_definition(kept.definition, kept.boards).job
        return replace(kept, wishes=make(job, laid.layout, standing_of(kept), kept.wishes))

    try:
        visit.change(what, wished)
    except (BadInputError, RefusedError) as trouble:
        return _refused(visit, sentences_of(trouble))
    return visit.go_to_job("layout#asked")


def _shown(visit: Visit) -> tuple[KeptLayout, tuple[str, str]]:
    """Give the layout that was shown, and of the piece that was shown its surface and its label.

    Raises
    ------
    NotThereError
        If there is no such layout or piece.
    StaleError
        If the job is worked by another layout by now.
    """
    laid = kept_layout(visit, visit.text("layout"))
    if laid.id != visit.job.layout_id:
        raise StaleError
    label = visit.text("label")
    surface, _, _ = find_piece(laid.layout, number_of(visit.text("place")), label)
    return laid, (surface.surface_id, label)


def _refused(visit: Visit, problems: list[str]) -> Response:
    """Show the piece again, with why its wish was not taken."""
    return piece_page(
        visit, number_of(visit.text("place")), visit.text("label"), status=422, problems=problems
    )


def _as_before(kept: KeptJob, before: KeptJob) -> KeptJob:
    """Let a job pass that is as it was when the swap was tried."""
    if kept != before:
        raise StaleError
    return kept
