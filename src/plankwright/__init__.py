"""Lay out salvaged boards on a surface: is it enough, which board goes where, and what to cut.

The Python interface is a handful of functions, named below and shown in docs/python.md. They load when first
used, because the solvers behind them take a second, and `plankwright --help` needs none of them.
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from plankwright.bootstrap import (
        ask_enough,
        hand_out,
        judge_tally,
        lay_out,
        left_over,
        mark_work,
        read_job,
        read_layout,
        read_work,
        weigh_risk,
        what_now,
    )
    from plankwright.check import check_layout
    from plankwright.workshop.ask_trade import ask_trade
    from plankwright.workshop.draw_map import draw_map
    from plankwright.workshop.print_sheets import print_sheets

__all__ = [
    "ask_enough",
    "ask_trade",
    "check_layout",
    "draw_map",
    "hand_out",
    "judge_tally",
    "lay_out",
    "left_over",
    "mark_work",
    "print_sheets",
    "read_job",
    "read_layout",
    "read_work",
    "weigh_risk",
    "what_now",
]

_ELSEWHERE = {
    "ask_trade": "plankwright.workshop.ask_trade",
    "check_layout": "plankwright.check",
    "draw_map": "plankwright.workshop.draw_map",
    "print_sheets": "plankwright.workshop.print_sheets",
}


def __getattr__(name: str) -> object:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(_ELSEWHERE.get(name, "plankwright.bootstrap")), name)


def __dir__() -> list[str]:
    return sorted((*globals(), *__all__))
