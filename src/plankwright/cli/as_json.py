"""Answers as JSON: the contract of docs/json.md, one function an answer.

Lengths are whole nanometres (`_nm`). Areas are square millimetres (`_mm2`), rounded: the square nanometres of
a wall are more than many readers of JSON can hold exactly.
"""

from collections.abc import Iterable

from plankwright.check import Finding
from plankwright.cli.json_text import Json, problems_as_json
from plankwright.errors import Problem
from plankwright.layout.again import Change
from plankwright.layout.result import Wanted
from plankwright.measure import MILLIMETRE
from plankwright.model import Bound, Job, Layout, Work
from plankwright.workshop.ask_enough import Answer, SurfaceAnswer
from plankwright.workshop.judge_tally import LotTotals, TallyJudgement
from plankwright.workshop.keep_left_over import LeftOver
from plankwright.workshop.tell_risk import headline, tell_risk
from plankwright.workshop.tell_work import found_since
from plankwright.workshop.weigh_risk import Risk


def findings_as_json(findings: Iterable[Finding]) -> Json:
    """Give what the checker found."""
    return [
        {
            "code": found.code.value,
            "severity": found.severity.value,
            "surface": found.surface_id,
            "where": found.where,
            "message": found.message,
            "measured": found.measured,
            "allowed": found.allowed,
        }
        for found in findings
    ]


def tally_as_json(judged: TallyJudgement, remarks: Iterable[Problem]) -> Json:
    """Give what a tally comes to."""
    return {
        "pile": _totals(judged.pile),
        "lots": [{"lot": lot.lot, **_totals(lot)} for lot in judged.lots],
        "longest_clear_runs": [
            {
                "board": run.board_id,
                "from_nm": run.from_nm,
                "to_nm": run.to_nm,
                "length_nm": run.length_nm,
                "width_nm": run.width_nm,
            }
            for run in judged.longest
        ],
        "width_classes": [
            {
                "from_nm": found.from_nm,
                "below_nm": found.below_nm,
                "boards": found.boards,
                "clear_nm": found.clear_nm,
                "longest_nm": found.longest_nm,
            }
            for found in judged.widths
        ],
        "useless_boards": list(judged.useless),
        "remarks": problems_as_json(remarks),
        "to_cover_mm2": None if judged.to_cover_nm2 is None else _mm2(judged.to_cover_nm2),
    }


def answer_as_json(answer: Answer) -> dict[str, Json]:
    """Give whether the pile is enough."""
    return {
        "verdict": answer.verdict.value,
        "headline": answer.headline,
        "surfaces": [_surface(surface) for surface in answer.surfaces],
        "spare_boards": list(answer.untouched),
        "held_back_boards": list(answer.held_back),
        "offcuts": answer.offcuts,
        "wanted": [_wanted(wanted) for wanted in answer.wanted],
        "wanted_closes": answer.wanted_closes,
        "stopped": answer.stopped,
    }


def work_as_json(job: Job, layout: Layout, work: Work) -> dict[str, Json]:
    """Give how far a job has come."""
    standing = work.standing
    return {
        "marks": [{"mark": mark.kind.value, "what": mark.what} for mark in work.marks],
        "surfaces": [
            {
                "surface": laid.surface_id,
                "pieces": len(laid.pieces),
                "hung": sorted(standing.hung_labels(laid.surface_id)),
                "courses": [
                    {"number": course.number, "from_nm": course.from_nm, "to_nm": course.to_nm}
                    for course in standing.hung_on(laid.surface_id)
                ],
            }
            for laid in layout.surfaces
        ],
        "in_hand": [
            {
                "surface": cut.surface_id,
                "label": cut.piece.label,
                "board": cut.piece.board_id,
                "length_nm": cut.part.length_nm,
                "width_nm": cut.part.width_nm,
            }
            for cut in standing.cut
        ],
        "left": [
            {
                "board": part.board_id,
                "along_from_nm": part.along_from_nm,
                "length_nm": part.length_nm,
                "width_nm": part.width_nm,
            }
            for part in standing.left
        ],
        "lost_boards": list(standing.lost),
        "found_boards": list(found_since(job, work)),
    }


def changes_as_json(changes: Iterable[Change]) -> Json:
    """Give what becomes of pieces that do not hang yet."""
    return [
        {
            "change": change.kind.value,
            "surface": change.surface_id,
            "before": None if change.before is None else change.before.label,
            "after": None if change.after is None else change.after.label,
            "board_before": None if change.before is None else change.before.board_id,
            "board_after": None if change.after is None else change.after.board_id,
            "cut": change.cut,
            "shifted_nm": change.shifted_nm,
        }
        for change in changes
    ]


def left_over_as_json(left: LeftOver) -> dict[str, Json]:
    """Give what is left of a pile."""
    return {
        "boards": [
            {
                "board": board.id,
                "whole": board.id in left.whole,
                "lot": board.lot,
                "length_nm": board.length_nm,
                "width_nm": board.narrowest_width_nm,
                "thickness_nm": board.thickness_nm,
            }
            for board in left.boards
        ],
        "length_nm": left.length_nm,
    }


def risk_as_json(risk: Risk) -> dict[str, Json]:
    """Give what a layout survives."""
    learnt = risk.learnt
    survival = learnt.survival
    return {
        "headline": headline(risk),
        "whole": risk.whole,
        "needed": [{"board": each.board_id, "proven": each.proven} for each in learnt.needed],
        "can_be_lost": list(learnt.spared),
        "not_tried": list(learnt.untried),
        "at_risk": list(risk.at_risk),
        "losses_survived": None
        if survival is None
        else {
            "least": survival.least,
            "middle": survival.middle,
            "most": survival.most,
            "draws": list(survival.draws),
        },
        "cut_first": [
            {
                "board": one.board_id,
                "needed": one.needed,
                "longest_nm": one.longest_nm,
                "stand_ins": one.stand_ins,
                "spare_stand_ins": one.spare_stand_ins,
            }
            for one in risk.order
        ],
        "sentences": list(tell_risk(risk)),
        "stopped": risk.stopped,
    }


def _totals(totals: LotTotals) -> dict[str, Json]:
    return {
        "boards": totals.boards,
        "length_nm": totals.length_nm,
        "face_mm2": _mm2(totals.face_nm2),
        "usable_mm2": _mm2(totals.usable_nm2),
        "recovery": round(totals.recovery, 4),
    }


def _surface(surface: SurfaceAnswer) -> Json:
    return {
        "surface": surface.surface_id,
        "verdict": surface.verdict.value,
        "to_cover_mm2": _mm2(surface.to_cover_nm2),
        "bare_mm2": _mm2(surface.score.bare_nm2),
        "joints_in_sight": surface.score.joints_in_sight,
        "wood_spent_mm2": _mm2(surface.score.wood_spent_nm2),
        "cuts": surface.score.cuts,
        "no_layout_beats": _bound(surface.bound),
        "sentences": list(surface.sentences),
    }


def _bound(bound: Bound) -> Json:
    return {
        "bare_mm2": _mm2(bound.bare_nm2),
        "joints_in_sight": bound.joints_in_sight,
        "wood_spent_mm2": _mm2(bound.wood_spent_nm2),
    }


def _wanted(wanted: Wanted) -> Json:
    return {
        "count": wanted.count,
        "length_nm": wanted.length_nm,
        "width_nm": wanted.width_nm,
        "thickness_nm": wanted.thickness_nm,
        "edge": None
        if wanted.profile is None
        else {"kind": wanted.profile.kind.value, "reach_nm": wanted.profile.reach_nm},
    }


def _mm2(nm2: int) -> int:
    return round(nm2 / MILLIMETRE**2)
