"""Drawings of a surface and of a board: composed as a scene, written as SVG."""

from plankwright.draw.boards import board_drawing
from plankwright.draw.scene import Scene
from plankwright.draw.svg import write_svg
from plankwright.draw.view import A4, LETTER, Page
from plankwright.draw.wall import wall_map

__all__ = ["A4", "LETTER", "Page", "Scene", "board_drawing", "wall_map", "write_svg"]
