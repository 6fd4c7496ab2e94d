"""An entry wall as people have one, with a door, a socket and a bench; it is laid out in seconds.

All of it is invented: boards out of a demolished village hall.
"""

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from plankwright import files
from plankwright.bootstrap import do_search
from plankwright.model import MarkKind
from plankwright.workshop.jobs.choose_layout import work_by
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.ports import Store
from plankwright.workshop.jobs.search_layout import Errand
from plankwright.workshop.mark_work import Happened, begin_work, mark_work

JOB_TOML = """
name = "entry wall"
units = "inches"

[[surface]]
id = "entry"
kind = "wall"
width = "12 ft"
height = "8 ft"
framing = { spacing = 16, first_centre = 16 }

[[surface.opening]]
id = "door"
left = 100
bottom = 0
width = 32
height = 80

[[surface.cut_out]]
id = "socket"
left = 20
bottom = 14
width = 2
height = 4

[[surface.concealed]]
id = "bench"
left = 30
bottom = 0
width = 48
height = 18
"""
KINDS = (("floor", "12' 6", 14), ("stage", "8' 8", 12), ("floor", "6' 2", 8))
"""Lot, length in feet and inches, and how many boards there are of it."""

HUNG = ("1", "2")
"""Courses that hang."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidOut:
    """The job with its layout, not kept yet."""

    job: KeptJob
    layout: KeptLayout

    def keep(self, store: Store) -> str:
        """Keep it as it is worked by before anything is cut; give its id."""
        kept = store.add(self.job)
        laid = store.keep_layout(kept.id, self.layout)
        store.change(kept.id, "a new layout taken", lambda job: work_by(job, laid.id))
        return kept.id

    def keep_begun(self, store: Store) -> str:
        """Keep it as one leaves it in the evening: with another layout, and courses hung; give its id."""
        job_id = self.keep(store)
        store.keep_layout(job_id, self.layout)
        kept = store.job(job_id)
        job = files.read_definition(kept.definition, kept.boards).job
        assert job is not None
        work = begin_work(job)
        for course in HUNG:
            work = mark_work(job, self.layout.layout, work, Happened(kind=MarkKind.HUNG, names=(course,)))
        store.change(job_id, "two courses hung", lambda job: replace(job, work=work))
        return job_id


def tally_csv() -> str:
    """Give the tally as a file."""
    lengths = [(lot, length) for lot, length, count in KINDS for _ in range(count)]
    rows = [f"{number},{lot},{length},7-1/4,3/4" for number, (lot, length) in enumerate(lengths, start=1)]
    return "\n".join(("id,lot,length,width,thickness", *rows, ""))


@cache
def laid_out() -> LaidOut:
    """Lay the job out, once for all tests of a process."""
    with TemporaryDirectory() as made:
        folder = Path(made)
        (folder / "job.toml").write_text(JOB_TOML, encoding="utf-8")
        (folder / "tally.csv").write_text(tally_csv(), encoding="utf-8")
        reading = files.read_job(folder)
        definition = files.definition_of(folder)
    errand = Errand(job=reading.job, made=Made.SEARCHED, effort="glance")
    found = do_search(errand, lambda _sight: None, lambda: False)
    return LaidOut(job=KeptJob(id="", definition=definition, boards=reading.job.boards), layout=found)
