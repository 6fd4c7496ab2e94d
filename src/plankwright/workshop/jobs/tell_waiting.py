"""Say in one sentence that boards are to wait before they are cut to size or hung."""

from plankwright.model import Job, Layout, Standing
from plankwright.workshop.advice.judge_moisture import judge_moisture
from plankwright.workshop.wording import capital, counted


def tell_waiting(job: Job, layout: Layout, standing: Standing) -> str:
    """Say how many boards are too far off the moisture of their room.

    Parameters
    ----------
    job, layout, standing
        The job with its readings, the layout that it is worked by, and how far it has come.

    Returns
    -------
    str
        A sentence; empty when no reading says so, or there are none.
    """
    far = judge_moisture(job, layout, standing).far
    if not far:
        return ""
    off = (
        "too damp" if all(reading.off_pct > 0 for reading in far) else "too far off the moisture of the room"
    )
    tallied = {board.id for board in job.boards}
    if all(reading.of in tallied for reading in far):
        which = f"{capital(counted(len(far), 'board'))} {'is' if len(far) == 1 else 'are'}"
    else:
        # The spread of a lot tells of its boards, but not of how many.
        which = "Boards are"
    return f"{which} {off} to be cut to size or hung yet."
