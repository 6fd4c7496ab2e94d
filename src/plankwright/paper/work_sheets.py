"""All sheets of a job as one PDF file: the answer, the maps, the cut list, the hanging sheets."""

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from plankwright.draw.svg import write_svg
from plankwright.draw.view import Page
from plankwright.draw.wall import wall_map
from plankwright.layout.done import done_on
from plankwright.layout.result import Verdict, verdict
from plankwright.model import NOTHING_DONE, Job, Layout, Standing, Treatment
from plankwright.paper.caution import CAUTIONS
from plankwright.paper.cut_list import LAY_AND_MARK, beyond_the_mark, cut_list
from plankwright.paper.hanging_sheet import PLAIN, hanging_sheet
from plankwright.paper.pack import NOTHING_BESIDES, Pack, printed, printed_sources
from plankwright.paper.press import press
from plankwright.paper.stickers import board_stickers, piece_stickers
from plankwright.trade.readying.telltale import has_insects

_SIDE_MARGIN = 12.0
_MAP_MARGINS = 21.0
"""At the sides of all sheets, and above and below a map, as the templates have them. [mm]"""


def work_sheets_pdf(
    job: Job,
    layout: Layout,
    page: Page,
    answer: Sequence[str] = (),
    remarks: Sequence[str] = (),
    *,
    standing: Standing = NOTHING_DONE,
    pack: Pack = NOTHING_BESIDES,
) -> bytes:
    """Print all sheets of a job.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    page
        What is printed on; maps lie across it, all else stands upright.
    answer
        Whether the pile is enough, in sentences; it stands on the first sheet.
    remarks
        What the checker leaves to the user's judgement, in sentences; they stand below the answer.
    standing
        How far the job has come: only what is still to be cut and hung is told.
    pack
        What is printed besides, what was planned for the pieces, and what to mind of it.

    Returns
    -------
    bytes
        A PDF file, the same for the same job and layout.
    """
    sources = pack.sources
    return press(
        "work_sheets",
        {
            "title": f"{job.name}: cut list and hanging sheet",
            "job": job.name,
            "paper": {"width": page.height, "height": page.width},
            "answer": answer,
            "remarks": [*remarks, *pack.mind],
            "order": _order_of_work(job, layout, begun=standing.begun, full=pack is not NOTHING_BESIDES),
            "maps": _maps(job, layout, page, standing),
            "cautions": [asdict(caution) for caution in CAUTIONS],
            "cuts": {
                "legend": _legend(job),
                "boards": [
                    asdict(block) for block in cut_list(job, layout, page.height - 2 * _SIDE_MARGIN, standing)
                ],
            },
            "hanging": [
                asdict(
                    hanging_sheet(
                        job,
                        part,
                        done_on(job, part, standing),
                        pack.planned.get(part.surface_id, PLAIN),
                    )
                )
                for part in layout.surfaces
            ],
            "before": [printed(section, sources) for section in pack.before],
            "at_the_wall": [printed(section, sources) for section in pack.at_the_wall],
            "after": [printed(section, sources) for section in pack.after],
            "sources": printed_sources(sources),
            "stickers": _stickers(job, layout, pack, standing) if pack is not NOTHING_BESIDES else [],
        },
    )


def _stickers(job: Job, layout: Layout, pack: Pack, standing: Standing) -> list[dict[str, object]]:
    sheets = (
        ("Labels for boards", board_stickers(job, layout, standing)),
        ("Labels for pieces", piece_stickers(job, layout, pack.planned, standing)),
    )
    return [{"name": name, "labels": [asdict(one) for one in these]} for name, these in sheets]


def _order_of_work(job: Job, layout: Layout, *, begun: bool, full: bool) -> list[str]:
    """Say what to do first, and what next."""
    nailed = any(not job.surface(part.surface_id).framing.solid for part in layout.surfaces)
    anew = "have what is left laid out anew" if begun else "lay it out anew before anything is cut"
    framing = ", the marks of the framing" if nailed else ""
    hazards = ", and “What can hurt you”" if full else ""
    labels = _LABELS if full else ""
    return [
        *_bare_first(layout, begun=begun, full=full),
        f"Read what stands under “Before you start” on the cut list and on the hanging sheet{hazards}.",
        (
            f"Compare each map with the real thing: outline, openings, boxes{framing}, what runs behind. "
            f"Where they differ, mend the job and {anew}."
        ),
        f"See that its id and an arrow at its marked end stand on every board.{labels}",
        *((_ready(job),) if full else ()),
        *((_BEGUN,) if begun else ()),
        (
            "Cut board by board as the cut list has them. Write its label on the back of each piece as it "
            "comes free, and tick what is done."
        ),
        "Hang course by course as the hanging sheet has them, and try each piece before you nail it.",
        (
            "When a board breaks or a course comes out wider or narrower than its mark, stop: most of the "
            "others are spoken for. Mark what happened and have what is left laid out anew (in the app, or "
            "with plankwright mark and plankwright now), or take a board that is told to be spare."
        ),
    ]


def _bare_first(layout: Layout, *, begun: bool, full: bool) -> Iterator[str]:
    """Bar the saw while something would stay bare: a layout that covers all may cut the boards otherwise."""
    if layout.covers_everything:
        return
    stop = "Cut no more for now" if begun else "Do not cut yet"
    short = any(verdict(part) is Verdict.NOT_ENOUGH for part in layout.surfaces)
    search = "" if short else "search longer, or "
    where = " (list: “To buy”)" if full else ""
    anew = "have what is left laid out anew" if begun else "lay it out anew"
    yield (
        f"{stop}: this layout leaves something bare. Unless that may stay so, {search}get the boards that "
        f"are missing{where}, add them to the tally and {anew}."
    )


_LABELS = (
    " Labels for boards and pieces are the last sheets, three by eight to a sheet: cut them out, or print "
    "them on stickers, at 100 %. A phone reads from the code what is to be done."
)


def _ready(job: Job) -> str:
    """Say what comes before the saw, where the pack has the lists for it."""
    wormy = any(has_insects(board) for board in job.boards if board.treatment is Treatment.NONE)
    heat = _HEAT if wormy else ""
    return (
        f"Buy what is listed under “To buy”. {heat}Have the boards in the room until they are dry enough, "
        "and take them through “Getting boards ready”, column by column. Trim and rip nothing on the way: "
        "that is on the cut list."
    )


_HEAT = (
    "Heat boards with signs of insects and their lots outside first, as “Getting boards ready” tells; only "
    "then take them into the room to dry. "
)
"""Told besides where boards have insects."""

_BEGUN = (
    "What hangs already is left out here; and of the cut list, what is cut already and is not cut again. "
    "Of a board that was sawn, what is left stands there as a board called after it, and is measured from "
    "the end that was nearer to its marked end: put an arrow there."
)
"""Told besides where work has begun."""


def _maps(job: Job, layout: Layout, page: Page, standing: Standing) -> list[dict[str, str]]:
    """Draw each surface to scale, as large as its sheet allows."""
    room = Page(
        name=page.name,
        width=page.width - 2 * _SIDE_MARGIN,
        height=page.height - _MAP_MARGINS - 0.5,
        margin=0.5,
    )
    return [
        {
            "surface": part.surface_id,
            "svg": write_svg(wall_map(job, part, room, done=done_on(job, part, standing))),
        }
        for part in layout.surfaces
    ]


def _legend(job: Job) -> list[str]:
    return [
        "Boards come in the order of hanging. The pieces of a course are equally wide: the fence stays put.",
        LAY_AND_MARK,
        (
            "An angled cut has two marks: “near” on the edge of the strip that is nearer to the reference "
            "edge, “far” on the other."
        ),
        beyond_the_mark(job),
        (
            "A piece held as it hangs is measured to the right from its left end and up from its lower "
            "edge. LP and SP are its lengths to the long and to the short point."
        ),
    ]
