"""What somebody wishes of a layout: this piece stays, that board here, without those boards."""

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from plankwright.layout.parting import PieceKey
from plankwright.layout.sawing import name_on
from plankwright.model import Job


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceWish:
    """A piece that is to be of a certain board.

    Parameters
    ----------
    surface_id, label
        The piece.
    board_id
        The board.
    """

    surface_id: str
    label: str
    board_id: str

    @property
    def key(self) -> PieceKey:
        """Its surface and its label."""
        return self.surface_id, self.label


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldWish:
    """A single wish, to be listed and taken back.

    Parameters
    ----------
    key
        What it goes by in a form; `Wishes.less` takes it.
    words
        Such as "4b stays where it is", "board F12 for piece 3a" or "without board D7".
    wish
        What is wished of a piece, or the id of the board to be left out.
    """

    key: str
    words: str
    wish: PieceWish | str


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """All that is wished of a layout; of each piece and of each board one thing at the most.

    Parameters
    ----------
    kept
        Pieces that stay where they are, each with the board that it is of.
    put
        Pieces that are to come from another board.
    without
        Ids of boards that nothing more is to be cut from.
    """

    kept: tuple[PieceWish, ...] = ()
    put: tuple[PieceWish, ...] = ()
    without: tuple[str, ...] = ()

    @property
    def none(self) -> bool:
        """Whether nothing is wished."""
        return not (self.kept or self.put or self.without)

    @property
    def pieces(self) -> tuple[PieceWish, ...]:
        """What is wished of pieces: that they stay, then that they come from another board."""
        return (*self.kept, *self.put)

    def keeping(self, wish: PieceWish) -> "Wishes":
        """Give the same with a piece that stays; whatever was wished of it before is taken back."""
        others = self.less_piece(wish.key)
        return replace(others, kept=(*others.kept, wish))

    def putting(self, wish: PieceWish) -> "Wishes":
        """Give the same with a board for a piece; whatever was wished of the piece before is taken back."""
        others = self.less_piece(wish.key)
        return replace(others, put=(*others.put, wish))

    def leaving_out(self, board_id: str) -> "Wishes":
        """Give the same without a board."""
        return replace(self, without=tuple(dict.fromkeys((*self.without, board_id))))

    def less(self, key: str) -> "Wishes":
        """Take a single wish back; one that is not there, or no longer, is no matter.

        Parameters
        ----------
        key
            As `told` gives it.
        """
        return Wishes(
            kept=tuple(wish for wish in self.kept if _key("keep", wish) != key),
            put=tuple(wish for wish in self.put if _key("put", wish) != key),
            without=tuple(board for board in self.without if _key("without", board) != key),
        )

    def less_piece(self, key: PieceKey) -> "Wishes":
        """Take back whatever is wished of a piece."""
        return replace(
            self,
            kept=tuple(wish for wish in self.kept if wish.key != key),
            put=tuple(wish for wish in self.put if wish.key != key),
        )

    def told(self, job: Job) -> tuple[ToldWish, ...]:
        """Say each wish in words.

        Parameters
        ----------
        job
            Pieces are named with their surface where it has several.
        """
        return tuple(self._told(job))

    def to_json(self) -> str:
        """Write them as text; nothing at all when there are none."""
        if self.none:
            return ""
        table: dict[str, Any] = {
            "kept": [_cells(wish) for wish in self.kept],
            "put": [_cells(wish) for wish in self.put],
            "without": list(self.without),
        }
        return json.dumps(table, ensure_ascii=False)

    @staticmethod
    def from_json(text: str) -> "Wishes":
        """Read what `to_json` wrote."""
        if not text:
            return NO_WISHES
        table = json.loads(text)
        kept, put = (
            tuple(PieceWish(surface_id=cells[0], label=cells[1], board_id=cells[2]) for cells in table[name])
            for name in ("kept", "put")
        )
        return Wishes(kept=kept, put=put, without=tuple(table["without"]))

    def _told(self, job: Job) -> Iterator[ToldWish]:
        for wish in self.kept:
            name = name_on(job, *wish.key)
            yield ToldWish(key=_key("keep", wish), words=f"{name} stays where it is", wish=wish)
        for wish in self.put:
            name = name_on(job, *wish.key)
            words = f"board {wish.board_id} for piece {name}"
            yield ToldWish(key=_key("put", wish), words=words, wish=wish)
        for board in self.without:
            yield ToldWish(key=_key("without", board), words=f"without board {board}", wish=board)


NO_WISHES = Wishes()
"""Of whoever wishes nothing."""


def _cells(wish: PieceWish) -> list[str]:
    return [wish.surface_id, wish.label, wish.board_id]


def _key(kind: str, wish: PieceWish | str) -> str:
    cells = [wish] if isinstance(wish, str) else _cells(wish)
    return json.dumps([kind, *cells], ensure_ascii=False)
