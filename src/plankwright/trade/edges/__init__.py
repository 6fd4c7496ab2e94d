"""Boxes and edges: what the thickness of the boards does to boxes, jambs and trim."""
