"""Drawings of a surface and of a board: composed as a scene, written as SVG."""
