"""Everything that the trade knows of a job, at one go."""

from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.leaf import Leaf
from plankwright.workshop.advice.fit_edges import edges_leaf, fit_edges
from plankwright.workshop.advice.go_shopping import go_shopping, shopping_leaf
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.advice.measure_lumber import measure_lumber
from plankwright.workshop.advice.plan_nails import plan_nails
from plankwright.workshop.advice.ready_boards import ready_boards, readying_leaf
from plankwright.workshop.advice.tell_lumber import lumber_leaf
from plankwright.workshop.advice.tell_moisture import moisture_leaf
from plankwright.workshop.advice.tell_nails import nails_leaf
from plankwright.workshop.advice.watch_out import hazards_leaf, watch_out


def ask_trade(job: Job, layout: Layout | None = None, standing: Standing = NOTHING_DONE) -> dict[str, Leaf]:
    """Ask what the trade knows of a job: each answer with its sentences, tables and sources.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked; without one, what needs none is answered.
    standing
        How far the job has come.

    Returns
    -------
    dict
        By the name of the command that tells the same: hazards, moisture, prepare and lumber; with a layout
        nails, edges and buy as well.
    """
    told = {
        "hazards": hazards_leaf(watch_out(job)),
        "moisture": moisture_leaf(job, judge_moisture(job, layout, standing)),
        "prepare": readying_leaf(job, ready_boards(job, layout, standing)),
        "lumber": lumber_leaf(job, measure_lumber(job, layout)),
    }
    if layout is not None:
        told |= {
            "nails": nails_leaf(job, plan_nails(job, layout, standing)),
            "edges": edges_leaf(job, fit_edges(job, layout)),
            "buy": shopping_leaf(go_shopping(job, layout, standing=standing)),
        }
    return told
