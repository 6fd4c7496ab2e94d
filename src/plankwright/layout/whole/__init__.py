"""The whole surface at once, by patterns: ways along runs and cuts of sticks, found by column generation.

The model is written out in docs/how-it-works.md.
"""

from plankwright.layout.whole.cover import Covering, mended
from plankwright.layout.whole.question import Question

__all__ = ["Covering", "Question", "mended"]
