"""Wood by its name: how much a species moves, and how heavy it is."""
