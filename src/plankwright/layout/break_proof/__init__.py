"""What a layout survives when boards break: pure questions, and how the answers to them add up.

Which boards can be lost and what there is without one (`losing`), what is tried (`trials`), when it is sure
that nothing can be found (`proving`), what all trials come to (`adding_up`), and what is best cut first
(`cutting_order`). The trials themselves lay out what is left and have it checked; the workshop runs them.
"""

from plankwright.layout.break_proof.adding_up import Learnt, Needed, Survival, add_up
from plankwright.layout.break_proof.cutting_order import CutFirst, cutting_order
from plankwright.layout.break_proof.losing import boards_at_risk, boards_to_cut, without
from plankwright.layout.break_proof.proving import surely_too_little
from plankwright.layout.break_proof.trials import Outcome, Trial, one_by_one, random_losses

__all__ = [
    "CutFirst",
    "Learnt",
    "Needed",
    "Outcome",
    "Survival",
    "Trial",
    "add_up",
    "boards_at_risk",
    "boards_to_cut",
    "cutting_order",
    "one_by_one",
    "random_losses",
    "surely_too_little",
    "without",
]
