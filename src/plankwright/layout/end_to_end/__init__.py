"""Boards laid end to end, whole but for the last, where backing lets them butt wherever they end.

The model is written out in docs/how-it-works.md.
"""

from plankwright.layout.end_to_end.laying import Found, laid_end_to_end

__all__ = ["Found", "laid_end_to_end"]
