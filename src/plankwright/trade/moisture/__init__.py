"""Moisture and movement: what the air of a room does to a board."""
