"""How the things on a drawing look.

Nothing is told by colour alone: whatever differs in meaning differs in line, hatch, mark or word too, so that
it survives a black-and-white printer. Sizes are millimetres on the printed sheet.
"""

from dataclasses import dataclass
from enum import StrEnum


class Style(StrEnum):
    """What a shape stands for."""

    PAPER = "paper"
    WOOD = "wood"
    OUTLINE = "outline"
    PIECE = "piece"
    HANGING = "hanging"
    CUT_ALREADY = "cut-already"
    TONE_PALE = "tone-pale"
    TONE_LIGHT = "tone-light"
    TONE_MID = "tone-mid"
    TONE_DARK = "tone-dark"
    TONE_BLACK = "tone-black"
    LOT_1 = "lot-1"
    LOT_2 = "lot-2"
    LOT_3 = "lot-3"
    LOT_4 = "lot-4"
    LOT_5 = "lot-5"
    LOT_6 = "lot-6"
    BARE = "bare"
    OPENING = "opening"
    OPENING_CROSS = "opening-cross"
    CUT_OUT = "cut-out"
    CONCEALED = "concealed"
    KEEP_OUT = "keep-out"
    FRAMING = "framing"
    FRAMING_CENTRE = "framing-centre"
    JOINT_GROUND = "joint-ground"
    JOINT_IN_SIGHT = "joint-in-sight"
    JOINT_CONCEALED = "joint-concealed"
    NAIL = "nail"
    FLAW_LOST = "flaw-lost"
    FLAW_BLEMISH = "flaw-blemish"
    OFFCUT = "offcut"
    BOARD = "board"
    REFERENCE = "reference"
    FINISHED = "finished"
    DIMENSION = "dimension"
    EXTENSION = "extension"
    LEADER = "leader"
    SOLID = "solid"
    TEXT = "text"
    NOTE = "note"
    TAP_AREA = "tap-area"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """Parallel lines that fill a shape.

    Parameters
    ----------
    spacing, width
        Of the lines. [mm]
    angle
        How they lean. [degrees]
    crossed
        Whether a second set stands square to the first.
    ink
        Colour of the lines.
    """

    spacing: float
    width: float
    angle: float
    crossed: bool = False
    ink: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """Ink of a style.

    Parameters
    ----------
    fill
        Colour inside, if any.
    opacity
        How much of it shows over what lies below, from 0 to 1.
    hatch
        Lines inside, if any.
    stroke
        Colour of the line, if any.
    width
        Of the line. [mm]
    dash
        Lengths of its dashes and gaps in turn. [mm]
    slanted
        For text: whether it leans.
    """

    fill: str = ""
    opacity: float = 1.0
    hatch: Hatch | None = None
    stroke: str = ""
    width: float = 0.0
    dash: tuple[float, ...] = ()
    slanted: bool = False


PAPER = "#ffffff"
WOOD = "#fbf5e9"
INK = "#000000"
GREY = "#595959"
RED = "#a30000"
BLUE = "#1f4e79"
BROWN = "#7a3b00"

LOOKS: dict[Style, Look] = {
    Style.PAPER: Look(fill=PAPER),
    Style.WOOD: Look(fill=WOOD),
    Style.OUTLINE: Look(stroke=INK, width=0.6),
    Style.PIECE: Look(stroke=INK, width=0.2),
    # Darker, not of another colour: narrow courses leave no room for a hatch.
    Style.HANGING: Look(fill="#d3cdbe"),
    Style.CUT_ALREADY: Look(hatch=Hatch(spacing=2.2, width=0.14, angle=-45, ink=GREY)),
    # As old boards look, from whitewashed to tarred: our own choice.
    Style.TONE_PALE: Look(fill="#f6ead0"),
    Style.TONE_LIGHT: Look(fill="#e5c993"),
    Style.TONE_MID: Look(fill="#c4955c"),
    Style.TONE_DARK: Look(fill="#8c5f3a"),
    Style.TONE_BLACK: Look(fill="#51402f"),
    Style.LOT_1: Look(hatch=Hatch(spacing=1.0, width=0.3, angle=0, ink=INK)),
    Style.LOT_2: Look(hatch=Hatch(spacing=0.8, width=0.25, angle=90, ink=INK)),
    Style.LOT_3: Look(hatch=Hatch(spacing=1.1, width=0.3, angle=45, ink=INK)),
    Style.LOT_4: Look(hatch=Hatch(spacing=1.1, width=0.3, angle=-45, ink=INK)),
    Style.LOT_5: Look(hatch=Hatch(spacing=1.2, width=0.3, angle=0, crossed=True, ink=INK)),
    Style.LOT_6: Look(hatch=Hatch(spacing=1.2, width=0.3, angle=45, crossed=True, ink=INK)),
    Style.BARE: Look(
        hatch=Hatch(spacing=1.6, width=0.2, angle=45, crossed=True, ink=INK), stroke=INK, width=0.4
    ),
    Style.OPENING: Look(fill=PAPER, stroke=INK, width=0.4),
    Style.OPENING_CROSS: Look(stroke=GREY, width=0.15),
    Style.CUT_OUT: Look(fill="#d0d0d0", stroke=INK, width=0.35),
    Style.CONCEALED: Look(
        hatch=Hatch(spacing=2.4, width=0.1, angle=45, ink=BLUE), stroke=BLUE, width=0.35, dash=(2.0, 1.0)
    ),
    Style.KEEP_OUT: Look(
        hatch=Hatch(spacing=1.0, width=0.15, angle=-60, ink=BROWN), stroke=BROWN, width=0.3, dash=(0.4, 0.6)
    ),
    Style.FRAMING: Look(fill=INK, opacity=0.08),
    Style.FRAMING_CENTRE: Look(stroke=GREY, width=0.12, dash=(3.0, 0.8, 0.4, 0.8)),
    Style.JOINT_GROUND: Look(stroke=PAPER, width=1.7),
    Style.JOINT_IN_SIGHT: Look(stroke=RED, width=0.9),
    Style.JOINT_CONCEALED: Look(fill=PAPER, stroke=INK, width=0.25),
    Style.NAIL: Look(fill=INK),
    Style.FLAW_LOST: Look(
        hatch=Hatch(spacing=1.2, width=0.2, angle=45, crossed=True, ink=INK), stroke=INK, width=0.2
    ),
    Style.FLAW_BLEMISH: Look(
        hatch=Hatch(spacing=1.4, width=0.15, angle=-60, ink=BROWN), stroke=BROWN, width=0.2
    ),
    Style.OFFCUT: Look(fill=PAPER, stroke=INK, width=0.25, dash=(1.2, 0.8)),
    Style.BOARD: Look(fill=PAPER, stroke=INK, width=0.3),
    Style.REFERENCE: Look(stroke=INK, width=0.9),
    Style.FINISHED: Look(stroke=INK, width=0.5),
    Style.DIMENSION: Look(stroke=INK, width=0.18),
    Style.EXTENSION: Look(stroke=GREY, width=0.1, dash=(0.5, 0.8)),
    Style.LEADER: Look(stroke=INK, width=0.12),
    Style.SOLID: Look(fill=INK, stroke=INK, width=0.18),
    Style.TEXT: Look(fill=INK),
    Style.NOTE: Look(fill=INK, slanted=True),
    Style.TAP_AREA: Look(),
}
