"""A board as a row of its table."""

import json
from collections.abc import Mapping
from typing import Any, TypeAlias

from plankwright.model import (
    Board,
    EdgeKind,
    EdgeProfile,
    Face,
    Flaw,
    NailsLeft,
    Severity,
    Treatment,
)

BoardRow: TypeAlias = dict[str, Any]
"""The columns of a board besides its job and its place."""

COLUMNS = (
    *("id", "length_nm", "width_start_nm", "width_end_nm", "thickness_nm", "edge", "reach_nm", "flaws"),
    *("lot", "species", "tone", "note", "moisture_pct", "nails", "treatment", "untreated"),
)


def row_of(board: Board) -> BoardRow:
    """Write a board as a row."""
    return {
        "id": board.id,
        "length_nm": board.length_nm,
        "width_start_nm": board.width_start_nm,
        "width_end_nm": board.width_end_nm,
        "thickness_nm": board.thickness_nm,
        "edge": board.profile.kind.value,
        "reach_nm": board.profile.reach_nm,
        "flaws": json.dumps([_flaw_written(flaw) for flaw in board.flaws], ensure_ascii=False),
        "lot": board.lot,
        "species": board.species,
        "tone": board.tone,
        "note": board.note,
        "moisture_pct": board.moisture_pct,
        "nails": None if board.nails is None else board.nails.value,
        "treatment": board.treatment.value,
        "untreated": int(board.untreated),
    }


def board_of(row: Mapping[str, Any]) -> Board:
    """Read a board from its row."""
    return Board(
        id=row["id"],
        length_nm=row["length_nm"],
        width_start_nm=row["width_start_nm"],
        width_end_nm=row["width_end_nm"],
        thickness_nm=row["thickness_nm"],
        profile=EdgeProfile(kind=EdgeKind(row["edge"]), reach_nm=row["reach_nm"]),
        flaws=tuple(map(_flaw, json.loads(row["flaws"]))),
        lot=row["lot"],
        species=row["species"],
        tone=row["tone"],
        note=row["note"],
        moisture_pct=row["moisture_pct"],
        nails=None if row["nails"] is None else NailsLeft(row["nails"]),
        treatment=Treatment(row["treatment"]),
        untreated=bool(row["untreated"]),
    )


def _flaw_written(flaw: Flaw) -> dict[str, Any]:
    return {
        "start_nm": flaw.start_nm,
        "end_nm": flaw.end_nm,
        "what": flaw.what,
        "severity": flaw.severity.value,
        "face": None if flaw.face is None else flaw.face.value,
    }


def _flaw(written: Mapping[str, Any]) -> Flaw:
    return Flaw(
        start_nm=written["start_nm"],
        end_nm=written["end_nm"],
        what=written["what"],
        severity=Severity(written["severity"]),
        face=None if written["face"] is None else Face(written["face"]),
    )
