"""A surface as its boards look: each piece filled by the tone of its board, its lot marked at one end.

Tones are the users' own words, so only those are filled that say light or dark in words that most people use;
how they are ranked is our own choice. Lots differ in hatch, and the key says each tone and each lot in words.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import shapely
from shapely.geometry.base import BaseGeometry

from plankwright.draw.key import Entry, swatch
from plankwright.draw.scene import Item, Line
from plankwright.draw.styles import Style
from plankwright.draw.subject import HungRow, Subject
from plankwright.draw.view import View, polygons
from plankwright.model import Board, Direction, Framing

_BRIGHTNESS = {
    Style.TONE_PALE: ("pale", "bleached", "whitewashed", "blond", "blonde"),
    Style.TONE_LIGHT: ("light", "lighter", "bright"),
    Style.TONE_MID: ("mid", "middle", "medium", "middling"),
    Style.TONE_DARK: ("dark", "darker", "deep"),
    Style.TONE_BLACK: ("black", "blackened", "charred", "tarred", "darkest"),
}
_COLOURS = {
    Style.TONE_PALE: ("white", "cream", "ivory"),
    Style.TONE_LIGHT: ("yellow", "straw", "golden", "gold", "silver"),
    Style.TONE_MID: ("honey", "amber", "orange", "grey", "gray", "red", "tan"),
    Style.TONE_DARK: ("brown", "russet"),
}
"""Words of tones. What says how bright a board is counts before what says its colour: "dark red" is dark."""

_LOTS = (Style.LOT_1, Style.LOT_2, Style.LOT_3, Style.LOT_4, Style.LOT_5, Style.LOT_6)

_TAB = 2.2
"""Width of the mark of a lot, at one end of a piece. [mm]"""


@dataclass(frozen=True, slots=True)
class Tones:
    """How the boards of a surface look.

    Parameters
    ----------
    boards
        Those that pieces of it come from, by their ids.
    lots
        How each lot is marked, by what it goes by; the most frequent first.
    """

    boards: Mapping[str, Board]
    lots: Mapping[str, Style]

    def ground(self, what: Subject, view: View) -> Iterator[Item]:
        """Fill the pieces whose tones are known, and mark lots."""
        for row in what.rows:
            board = self.boards.get(row.piece.board_id)
            if board is None:
                continue
            style = shade(board.tone)
            if style is not None:
                yield from polygons(shapely.Polygon(view.ring(row.hung.shape)), style)
            lot = self.lots.get(board.lot_key)
            if lot is not None:
                tab = _tab(what, view, row)
                yield from polygons(tab, Style.BOARD)
                yield from polygons(tab, lot)

    def tabs(self, what: Subject, view: View) -> Iterator[BaseGeometry]:
        """Give where lots are marked, which lettering is to leave free. [mm]"""
        for row in what.rows:
            board = self.boards.get(row.piece.board_id)
            if board is not None and board.lot_key in self.lots:
                yield _tab(what, view, row)

    def say(self, board_id: str) -> str:
        """Say the lot and the tone of a board, as far as they are known."""
        board = self.boards.get(board_id)
        said = () if board is None else (f"lot {board.lot}" if board.lot else "", board.tone)
        return ", ".join(part for part in said if part)

    def entries(self) -> Iterator[Entry]:
        """Give what the key says of tones and lots."""
        words: dict[Style | None, dict[str, None]] = {}
        for board in self.boards.values():
            plain = " ".join(board.tone.casefold().split())
            words.setdefault(shade(board.tone), {}).setdefault(plain, None)
        for style in (*_BRIGHTNESS, None):
            said = [word or "no tone told" for word in sorted(words.get(style, ()))]
            if said:
                over = () if style is None else (style,)
                yield Entry(width=7.0, sample=swatch(Style.WOOD, *over, Style.PIECE), text=", ".join(said))
        names: dict[str, str] = {}
        for board in self.boards.values():
            names.setdefault(board.lot_key, board.lot)
        for style, keys in _by_style(self.lots).items():
            text = f"lot {names[keys[0]]}" if len(keys) == 1 else "other lots"
            yield Entry(width=_TAB, sample=swatch(Style.BOARD, style, width=_TAB), text=text)


def tones_of(what: Subject) -> Tones:
    """Gather how the boards of a surface look.

    Parameters
    ----------
    what
        The surface and its layout.
    """
    known = {board.id: board for board in what.job.boards}
    used = [row.piece.board_id for row in what.rows if row.piece.board_id in known]
    boards = {name: known[name] for name in dict.fromkeys(used)}
    return Tones(boards=boards, lots=_mark_lots([known[name] for name in used]))


def shade(tone: str) -> Style | None:
    """Give the fill for a tone in the user's own words; nothing where they tell us nothing.

    Parameters
    ----------
    tone
        Such as "dark" or "mid brown".
    """
    words = re.findall(r"[^\W\d_]+", tone.casefold())
    for ranked in (_BRIGHTNESS, _COLOURS):
        for style, known in ranked.items():
            if any(word in known for word in words):
                return style
    return None


def boards_alone(what: Subject) -> Subject:
    """Give a surface without what is behind its boards, which nobody sees once they hang."""
    return replace(what, surface=replace(what.surface, framing=Framing(solid=True), keep_outs=()))


def set_off_joints(what: Subject, view: View) -> Iterator[Item]:
    """Set joints in sight off against dark boards."""
    for joint in what.joints:
        if joint.in_sight:
            yield Line(places=(view.place(joint.start), view.place(joint.end)), style=Style.JOINT_GROUND)


def _mark_lots(boards: Iterable[Board]) -> dict[str, Style]:
    """Give each lot a mark of its own, as far as there are any; those with the most pieces come first."""
    counts: dict[str, int] = {}
    for board in boards:
        if board.lot_key:
            counts[board.lot_key] = counts.get(board.lot_key, 0) + 1
    ordered = sorted(counts, key=lambda key: (-counts[key], key))
    return {key: _LOTS[min(place, len(_LOTS) - 1)] for place, key in enumerate(ordered)}


def _by_style(lots: Mapping[str, Style]) -> dict[Style, Sequence[str]]:
    found: dict[Style, list[str]] = {}
    for key, style in lots.items():
        found.setdefault(style, []).append(key)
    return dict(found)


def _tab(what: Subject, view: View, row: HungRow) -> BaseGeometry:
    """Give the end of a piece where its course begins. [mm]"""
    shape = shapely.Polygon(view.ring(row.hung.shape))
    left, top, right, bottom = shape.bounds
    if what.surface.courses_run is Direction.HORIZONTAL:
        end = shapely.box(left, top, min(right, left + _TAB), bottom)
    else:
        end = shapely.box(left, max(top, bottom - _TAB), right, bottom)
    return shape.intersection(end)
