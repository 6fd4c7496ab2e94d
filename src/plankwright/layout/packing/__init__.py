"""Which stick gives which piece, once the pieces are given: cutting stock, by patterns and column generation.

The model is written out in docs/how-it-works.md.
"""

from plankwright.layout.packing.packer import LengthPrices, Need, Packing, lost_besides, pack

__all__ = ["LengthPrices", "Need", "Packing", "lost_besides", "pack"]
