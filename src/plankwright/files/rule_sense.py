"""What is doubtful about rules that can be read: sizes that look like a slip or another unit.

The limits are common practice, no source: nobody who covers a wall takes or leaves more.
"""

from plankwright.files.report import Report
from plankwright.measure import INCH, Nm
from plankwright.model import Rules

_LARGEST_USUAL: tuple[tuple[str, Nm], ...] = (
    ("straight_edge_loss", 12 * INCH),
    ("end_trim", 12 * INCH),
    ("expansion_gap", 2 * INCH),
    ("nail_edge", 12 * INCH),
    ("nail_end", 12 * INCH),
    ("nail_clearance", 12 * INCH),
)


def remark_rules(rules: Rules, report: Report) -> None:
    """Remark on rules that are larger than anybody means them to be.

    Parameters
    ----------
    rules
        The rules.
    report
        Where remarks go.
    """
    for key, largest_nm in _LARGEST_USUAL:
        if getattr(rules, f"{key}_nm") > largest_nm:
            report.remark(
                ("rules", key),
                f"{key} is more than {largest_nm // INCH} in ({largest_nm // INCH * 25.4:g} mm): "
                "check the number and its unit",
            )
