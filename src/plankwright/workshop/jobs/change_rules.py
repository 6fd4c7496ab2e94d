"""The rules of a job, and what else is known of it: tools, lots, air, nails, times and prices."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from plankwright.errors import BadInputError
from plankwright.measure import TapeStyle, write_length
from plankwright.model import Board, Rules
from plankwright.model.board import lot_key
from plankwright.workshop.jobs.definition_types import typed
from plankwright.workshop.jobs.form_words import refusal_of, troubles_of
from plankwright.workshop.jobs.kept import Definition, KeptJob, StaleError
from plankwright.workshop.jobs.measure_surfaces import put_tables
from plankwright.workshop.jobs.tally_boards import fingerprint
from plankwright.workshop.ports import Files

_TABLES = ("rules", "saw", "house", "lot", "room", "nails", "task", "price", "currency")
_USUAL = Rules()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A rule as a form shows it.

    Parameters
    ----------
    key
        In the table of rules.
    label
        What it is called.
    meaning
        What it means, in a sentence.
    usual
        What holds where nothing is given.
    words
        What may be chosen, with the words for each; empty for a length or a number.
    is_length
        Whether it is a length.
    """

    key: str
    label: str
    meaning: str
    usual: str
    words: tuple[tuple[str, str], ...] = ()
    is_length: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleGroup:
    """Rules that belong together."""

    title: str
    rules: tuple[Rule, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The names of their fields in a form."""
        return tuple(f"rules.{rule.key}" for rule in self.rules)


_GROUPS = {
    "Joints": {
        "joints": "Butt joints in sight",
        "stagger": "Stagger",
        "bearing": "Bearing",
        "shim_up_to": "Thickest shim",
        "thickness_tolerance": "Step in thickness",
        "width_tolerance": "Difference in width",
        "gap_tolerance": "Widest gap",
    },
    "Sizes": {
        "shortest_piece": "Shortest piece",
        "narrowest_course": "Narrowest course",
        "expansion_gap": "Expansion gap",
    },
    "Blades, and what is lost": {
        "crosscut_kerf": "Kerf across",
        "rip_kerf": "Kerf along",
        "end_trim": "Off each end",
        "straight_edge_loss": "Off each long edge",
    },
    "Nails": {
        "nailing_points": "Nailed at",
        "nail_edge": "From the long edge",
        "nail_end": "From the end",
        "nail_clearance": "From a keep-out",
    },
    "Spares and blemishes": {
        "hold_back": "Boards to spare",
        "blemishes": "Blemishes",
    },
}

_WORDS = {
    "joints": (("stagger", "Few, and staggered"), ("count", "Few"), ("never", "None")),
    "blemishes": (("hidden", "Out of sight"), ("anywhere", "Anywhere")),
}


def rule_groups(tape: TapeStyle, meanings: Mapping[str, str]) -> tuple[RuleGroup, ...]:
    """Give every rule, in groups.

    Parameters
    ----------
    tape
        How lengths are written.
    meanings
        What each key means.
    """
    return tuple(
        RuleGroup(
            title=title,
            rules=tuple(_rule(key, label, meanings.get(key, ""), tape) for key, label in labels.items()),
        )
        for title, labels in _GROUPS.items()
    )


def rule_tables(definition: Definition) -> dict[str, Any]:
    """Give the part of a definition that is told here."""
    return {key: definition[key] for key in _TABLES if key in definition}


def lots_unsaid(boards: Sequence[Board], said: Sequence[str]) -> tuple[str, ...]:
    """Give the lots of a tally of which nothing is said yet, as they are written there first."""
    known = {lot_key(name) for name in said} | {""}
    found: dict[str, str] = {}
    for board in boards:
        if board.lot_key not in known:
            found.setdefault(board.lot_key, board.lot)
    return tuple(found.values())


def put_rules(kept: KeptJob, files: Files, given: Mapping[str, Any], seen: str) -> KeptJob:
    """Put what was filled in in place of what it was.

    Parameters
    ----------
    kept
        The job.
    files
        Who reads definitions.
    given
        The tables as filled in; one that is missing is emptied, and others are passed over.
    seen
        The fingerprint of the tables as they were shown.

    Raises
    ------
    BadInputError
        With everything that is wrong, in the words of the form and by its paths.
    StaleError
        If something in them was changed since they were shown.
    """
    if fingerprint(rule_tables(kept.definition)) != seen:
        raise StaleError
    tables = {key: typed(given[key]) if key in given else "" for key in _TABLES}
    try:
        return put_tables(kept, files, tables)
    except BadInputError as trouble:
        raise refusal_of(troubles_of(trouble.problems, given)) from trouble


def _rule(key: str, label: str, meaning: str, tape: TapeStyle) -> Rule:
    words = _WORDS.get(key, ())
    is_length = f"{key}_nm" in Rules.__dataclass_fields__
    value = getattr(_USUAL, f"{key}_nm" if is_length else key)
    usual = write_length(value, tape) if is_length else dict(words).get(value, str(value))
    return Rule(key=key, label=label, meaning=meaning, usual=usual, words=words, is_length=is_length)
