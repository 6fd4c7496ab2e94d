"""Rule 8: a blemish shows only where the rules allow it."""

from collections.abc import Iterator

from plankwright.check.case import Hung, SurfaceCase
from plankwright.check.finding import Finding, FindingCode, found
from plankwright.check.frame import Extent
from plankwright.check.shapes import common, less, polygons
from plankwright.check.slack import exceeds
from plankwright.check.wording import tell
from plankwright.model import BlemishPolicy, Edge, Flaw, Severity


def check_blemishes(case: SurfaceCase) -> Iterator[Finding]:
    """Find blemishes on the face that shows which neither trim nor a fixture hides."""
    if case.rules.blemishes is BlemishPolicy.ANYWHERE:
        return
    for hung in case.judged:
        for flaw in hung.board.flaws if hung.board else ():
            stretch = _where_it_hangs(hung, flaw, case.surface.start)
            if flaw.severity is not Severity.BLEMISH or not flaw.shows_on(hung.piece.face) or stretch is None:
                continue
            place = common(common(case.frame.box(stretch), hung.shape), case.must_cover)
            showing = polygons(less(place, *case.concealed))
            if showing:
                seen = [case.frame.extent(*part.bounds) for part in showing]
                length = max(extent.u_to - extent.u_from for extent in seen)
                (long,) = tell(case.job.tape, length)
                message = (
                    f"{long} of a blemish ({flaw.what}) of board {hung.piece.board_id} show:"
                    " turn the board over, or hang it behind a fixture."
                )
                yield found(
                    FindingCode.BLEMISH_SHOWS,
                    hung.place,
                    message,
                    measured=length,
                    allowed=0,
                )


def _where_it_hangs(hung: Hung, flaw: Flaw, start_edge: Edge) -> Extent | None:
    """Give where a flaw comes to hang, over the whole width of its piece, or nothing when it is cut off."""
    start = max(flaw.start_nm, hung.piece.along_from_nm) - hung.piece.along_from_nm
    end = min(flaw.end_nm, hung.piece.along_to_nm) - hung.piece.along_from_nm
    if not exceeds(end, start):
        return None
    if hung.piece.marked_end_last(start_edge):
        start, end = (hung.u_to - hung.u_from) - end, (hung.u_to - hung.u_from) - start
    return Extent(u_from=hung.u_from + start, u_to=hung.u_from + end, v_from=hung.v_from, v_to=hung.v_to)
