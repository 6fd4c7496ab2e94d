"""Print a layout as one PDF: answer, maps, cut list for the saw and hanging sheet for the wall."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from plankwright.layout.again import links_kept
from plankwright.layout.result import Result
from plankwright.model import NOTHING_DONE, Job, Layout, Standing
from plankwright.paper.pack import Pack
from plankwright.paper.work_sheets import work_sheets_pdf
from plankwright.workshop.advice.fill_pack import fill_pack
from plankwright.workshop.ask_enough import Answer, ask_enough, describe_wanted
from plankwright.workshop.check_layout import check_layout
from plankwright.workshop.paper_size import PaperSize, page_of
from plankwright.workshop.tell_remarks import tell_remarks


def print_sheets(
    job: Job,
    layout: Layout,
    paper: PaperSize | None = None,
    *,
    answer: Answer | None = None,
    standing: Standing = NOTHING_DONE,
    news: Sequence[str] = (),
    reword: Callable[[Pack], Pack] = lambda pack: pack,
) -> bytes:
    """Print the sheets of a layout.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it.
    paper
        What is printed on; the size that goes with the job's tape when left out.
    answer
        Whether the pile is enough; when left out, as much of it as the layout alone can say, which knows
        neither of boards held back nor of boards wanted.
    standing
        How far the job has come: only what is still to be cut and hung is told.
    news
        What is different from the layout before, in sentences.
    reword
        Puts what the trade says into other words, for readers who know neither files nor commands.

    Returns
    -------
    bytes
        A PDF file.
    """
    told = answer or ask_enough(job, Result(layout=layout), standing)
    remarks = [
        *tell_remarks(check_layout(job, layout, standing).warnings),
    ]
    page = page_of(job.tape, paper)
    headline, *rest = str(told).splitlines()
    job = replace(job, linked=links_kept(job, standing))
    wanted = tuple(describe_wanted(one, job.tape) for one in told.wanted)
    pack = reword(fill_pack(job, layout, wanted, standing))
    return work_sheets_pdf(job, layout, page, (headline, *news, *rest), remarks, standing=standing, pack=pack)
