"""The look of a plan: worst faces out of sight, tones spread, no patterns of joints, courses that interlock.

What counts, and by what moves it is made better, is written out in docs/how-it-works.md.
"""

from plankwright.layout.look.dressing import dress
from plankwright.layout.look.eye import Eye, Look
from plankwright.layout.look.laid import Milled, look_of, milled_of, narrow_closing_course

__all__ = ["Eye", "Look", "Milled", "dress", "look_of", "milled_of", "narrow_closing_course"]
