"""Walls that meet at corners laid flat beside each other as one surface, and layouts of it folded back.

How, and why whatever holds for the flat surface holds for the walls, is written out in docs/how-it-works.md.
"""

from plankwright.layout.corners.flat_strips import LaidWall
from plankwright.layout.corners.unfolded import Unfolded, lay_flat, lay_one_flat, moved

__all__ = ["LaidWall", "Unfolded", "lay_flat", "lay_one_flat", "moved"]
