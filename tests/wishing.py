"""Wishes of a layout, and whether they hold in another."""

from collections.abc import Iterator

from plankwright.layout.parting import PieceKey
from plankwright.model import Layout, Piece, Standing, part_of
from plankwright.workshop.jobs.wishes import Wishes


def piece_at(layout: Layout, key: PieceKey) -> Piece:
    """Give the one piece of that surface and label."""
    (piece,) = (
        piece
        for laid in layout.surfaces
        if laid.surface_id == key[0]
        for piece in laid.pieces
        if piece.label == key[1]
    )
    return piece


def broken(wishes: Wishes, before: Layout, after: Layout, standing: Standing) -> Iterator[str]:
    """Give what of some wishes does not hold in a layout that was made of another."""
    for wish in wishes.pieces:
        was, now = piece_at(before, wish.key), piece_at(after, wish.key)
        if now.board_id != wish.board_id:
            yield f"{wish.label} is of board {now.board_id}, not of {wish.board_id}"
        if wish in wishes.kept and part_of(was) != part_of(now):
            yield f"{wish.label} is not the wood that it was"
    in_hand = [cut.part for cut in standing.cut]
    for laid in after.surfaces:
        for piece in laid.pieces:
            hangs = piece.label in standing.hung_labels(laid.surface_id)
            cut = any(part.holds(part_of(piece)) for part in in_hand)
            if piece.board_id in wishes.without and not (hangs or cut):
                yield f"{piece.label} is cut from board {piece.board_id}"
