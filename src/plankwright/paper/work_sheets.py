"""All sheets of a job as one PDF file: the answer and the maps, the cut list, the hanging sheets."""

from collections.abc import Sequence
from dataclasses import asdict

from plankwright.draw.lettering import wrapped
from plankwright.draw.svg import write_svg
from plankwright.draw.view import Page
from plankwright.draw.wall import wall_map
from plankwright.measure import write_inches
from plankwright.model import Job, Layout
from plankwright.paper.caution import CAUTIONS
from plankwright.paper.cut_list import cut_list
from plankwright.paper.hanging_sheet import hanging_sheet
from plankwright.paper.press import press

_SIDE_MARGIN = 12.0
_TOP_AND_BOTTOM_MARGIN = 33.0
"""As the templates have them. [mm]"""

_BODY = 3.9
_LINE = 5.6
"""Size of the lettering of the answer, and height of a line of it, its share of the gaps included. [mm]"""


def work_sheets_pdf(job: Job, layout: Layout, page: Page, answer: Sequence[str] = ()) -> bytes:
    """Print all sheets of a job.

    Parameters
    ----------
    job
        The job.
    layout
        A layout of it that was checked.
    page
        What is printed on; maps lie across it, lists stand upright.
    answer
        Whether the pile is enough, in sentences; it stands on the first sheet.

    Returns
    -------
    bytes
        A PDF file, the same for the same job and layout.
    """
    return press(
        "work_sheets",
        {
            "title": f"{job.name}: cut list and hanging sheet",
            "job": job.name,
            "paper": {"width": page.height, "height": page.width},
            "maps": _maps(job, layout, page, answer),
            "cautions": [asdict(caution) for caution in CAUTIONS],
            "cuts": {
                "legend": _legend(job),
                "boards": [asdict(block) for block in cut_list(job, layout, page.height - 2 * _SIDE_MARGIN)],
            },
            "hanging": [asdict(hanging_sheet(job, part)) for part in layout.surfaces],
        },
    )


def _maps(job: Job, layout: Layout, page: Page, answer: Sequence[str]) -> list[dict[str, object]]:
    """Draw each surface to scale, as large as its sheet and the answer above the first allow."""
    maps: list[dict[str, object]] = []
    for part in layout.surfaces:
        said = () if maps else tuple(answer)
        width = page.width - 2 * _SIDE_MARGIN
        lines = sum(len(wrapped(sentence, width, _BODY)) for sentence in said)
        room = Page(
            name=page.name,
            width=width,
            height=page.height - _TOP_AND_BOTTOM_MARGIN - lines * _LINE,
            margin=0.5,
        )
        svg = write_svg(wall_map(job, part, room))
        maps.append({"surface": part.surface_id, "answer": said, "svg": svg})
    return maps


def _legend(job: Job) -> list[str]:
    crosscut, rip = (
        write_inches(kerf, job.tape) for kerf in (job.rules.crosscut_kerf_nm, job.rules.rip_kerf_nm)
    )
    return [
        "Boards come in the order of hanging. The pieces of a course are equally wide: the fence stays put.",
        (
            "Measure along from the marked end and across from the reference edge: the groove of a milled "
            "board, the straighter edge of a square one; in the drawings they are left and below. Make all "
            "marks before the first cut."
        ),
        (
            f"The blade goes beyond the mark: its kerf ({crosscut} crosscut, {rip} rip) comes out of what "
            "lies farther on. On sloping lines and notches it goes on the side of the waste."
        ),
        (
            "A piece held as it hangs is measured to the right from its left end and up from its lower edge. "
            "LP and SP are its lengths to the long and to the short point."
        ),
    ]
