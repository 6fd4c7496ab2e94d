"""Lay out salvaged boards on a surface: is it enough, which board goes where, and what to cut."""
