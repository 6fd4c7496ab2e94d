"""When it is sure that no layout covers everything, however long somebody searches."""

from plankwright.layout.bounds import bound
from plankwright.layout.capacity import capacity_of
from plankwright.layout.corners import lay_flat
from plankwright.model import Job, Standing


def surely_too_little(job: Job, standing: Standing) -> bool:
    """Say whether a bound proves that the wood there is cannot cover all.

    Parameters
    ----------
    job
        The job.
    standing
        How far it has come. Once something hangs nothing is proven: the bounds hold for layouts that keep
        the rules, and what hangs is held to none.

    Returns
    -------
    bool
        Whether one of the surfaces alone, or linked ones together, cannot be covered from all boards that are
        not lost, taken as whole. Where it is not so, nothing is said.
    """
    if standing.hung:
        return False
    in_hand = {cut.piece.board_id for cut in standing.cut}
    boards = [board for board in job.boards if board.id not in standing.lost or board.id in in_hand]
    capacity = capacity_of(job)
    return any(bound(surface.strips, boards, job.rules).bare_nm2 > 0 for surface in lay_flat(job, capacity))
