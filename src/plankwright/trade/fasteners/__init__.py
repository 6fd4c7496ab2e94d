"""Fasteners: which nail, how deep, how well it holds, and where to drill first."""
