"""What a definition says is what the surface is."""

import pytest

from builders import rectangle
from job_texts import JOB, framed, read, with_part
from plankwright.measure import INCH
from plankwright.model import Direction, Edge, Rectangle, Surface


def surface_of(text: str) -> Surface:
    """Read a job that must be right, and give its surface."""
    job = read(text)
    assert job.report.problems == ()
    return job.surfaces[0]


@pytest.mark.parametrize(
    ("framing", "centres"),
    [
        ("spacing = 60\nfirst_centre = 20", [20, 80, 140]),
        ("spacing = 72\nfirst_centre = 0", [0, 72, 144]),
        ("centres = [40, 9]", [9, 40]),
        ("spacing = 60\nfirst_centre = 20\ncentres = [0.75, 80]", [0.75, 20, 80, 140]),
        ("solid = true", []),
    ],
)
def test_framing_is_spaced_or_listed_or_both(framing: str, centres: list[float]) -> None:
    """Members stand in order, each once, as far as the surface goes."""
    surface = surface_of(framed(framing))
    assert [member.centre_nm / INCH for member in surface.framing.members] == centres
    assert surface.framing.solid is (not centres)
    assert {member.width_nm for member in surface.framing.members} <= {INCH * 3 // 2}


def test_strips_across_are_spaced_up_the_wall() -> None:
    """Horizontal framing is measured from the bottom, and vertical courses start at the left."""
    surface = surface_of(
        framed('spacing = 24\nfirst_centre = 12\nruns = "horizontal"').replace(
            "height", 'courses = "vertical"\nheight', 1
        )
    )
    assert [member.centre_nm / INCH for member in surface.framing.members] == [12, 36, 60, 84]
    assert (surface.courses_run, surface.start) == (Direction.VERTICAL, Edge.LEFT)


@pytest.mark.parametrize(
    ("part", "place"),
    [
        ("[[surface.cut_out]]\ncentre = [20, 30]\nwidth = 2\nheight = 4", rectangle(19, 28, 21, 32)),
        ("[[surface.cut_out]]\nleft = 20\nbottom = 30\nwidth = 2\nheight = 4", rectangle(20, 30, 22, 34)),
        ("[[surface.keep_out]]\nvertical = 20\nwidth = 2", rectangle(19, 0, 21, 96)),
        ("[[surface.keep_out]]\nhorizontal = 20\nwidth = 2", rectangle(0, 19, 144, 21)),
        ("[[surface.keep_out]]\nleft = 1\nbottom = 2\nwidth = 3\nheight = 4", rectangle(1, 2, 4, 6)),
        ("[[surface.concealed]]\nleft = 1\nbottom = 2\nwidth = 3\nheight = 4", rectangle(1, 2, 4, 6)),
        ("[[surface.opening]]\nleft = 1\nbottom = 2\nwidth = 3\nheight = 4\ntrim = 1", rectangle(1, 2, 4, 6)),
    ],
)
def test_parts_lie_where_they_are_said_to(part: str, place: Rectangle) -> None:
    """By corner, by centre, or as a strip over the whole surface."""
    surface = surface_of(with_part(part))
    parts = (surface.openings, surface.cut_outs, surface.concealed, surface.keep_outs)
    assert [found.place for kind in parts for found in kind] == [place]


def test_what_has_no_name_gets_its_kind_and_number() -> None:
    """Names are given in order; an own name stays."""
    box = "[[surface.concealed]]\nleft = 1\nbottom = 2\nwidth = 3\nheight = 4\n"
    surface = surface_of(JOB + box + box + "id = 'bench'\n")
    assert [zone.id for zone in surface.concealed] == ["concealed-1", "bench"]


def test_trim_is_what_the_file_says() -> None:
    """Sides that are not named have none."""
    trim = surface_of(with_part('[surface.trim]\nbottom = "3-1/2"\nleft = 1')).trim
    assert (trim.bottom, trim.top, trim.left, trim.right) == (INCH * 7 // 2, 0, INCH, 0)
