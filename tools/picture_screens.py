"""Take a picture of every screen of the app: on a phone and on a laptop, light and dark.

    python -m tools.picture_screens OUT

The app is opened on a store of its own, with the example job laid out and partly hung; that takes a minute.
Whoever changes a screen looks at its pictures.
"""

import contextlib
import re
import socket
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import replace
from http.client import HTTPConnection
from itertools import product
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, sync_playwright

from plankwright import files
from plankwright.bootstrap import do_search
from plankwright.model import Job, Layout, MarkKind, Work
from plankwright.store import open_book
from plankwright.workshop.jobs.bring_job import example_job
from plankwright.workshop.jobs.kept import KeptJob, KeptLayout, Made
from plankwright.workshop.jobs.search_layout import Errand
from plankwright.workshop.mark_work import Happened, begin_work, mark_work
from tools.find_browser import ARGUMENTS, find_browser
from tools.walk_screens import walk_screens

SIZES = {390: 844, 1280: 900}
"""Widths of a phone and of a laptop, each with its height. [CSS px]"""

SCHEMES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
HUNG = 3
"""Courses that hang. [courses]"""

_PATIENCE_S = 60


def main() -> None:
    """Take the pictures that the command line asks for."""
    program = find_browser()
    if len(sys.argv) != 2 or program is None:  # noqa: PLR2004 - the script, and the folder
        sys.exit("\n".join((__doc__ or "", "" if program else "There is no browser: tools/find_browser.py")))
    out = Path(sys.argv[1])
    out.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        store = Path(folder) / "jobs.db"
        print("Laying out the example …", flush=True)
        job_id = keep_example(store)
        browser = playwright.chromium.launch(executable_path=program, args=list(ARGUMENTS))
        with app_open(store) as url:
            for path in take_pictures(browser, url, ("/", f"/jobs/{job_id}"), out):
                print(path, flush=True)
        browser.close()


def keep_example(store: Path) -> str:
    """Keep the example, laid out twice and partly hung; give its id."""
    book = open_book(store, files)
    kept = book.add(example_job(files))
    job = files.read_definition(kept.definition, kept.boards).job
    if job is None:
        sys.exit("The example job cannot be read.")
    book.keep_layout(kept.id, laid_out(job, "1s"))
    laid = book.keep_layout(kept.id, laid_out(job, "glance"))
    work = hung(job, laid.layout)

    def worked_by(before: KeptJob) -> KeptJob:
        return replace(before, layout_id=laid.id, work=work)

    book.change(kept.id, "a new layout taken", worked_by)
    return kept.id


def laid_out(job: Job, effort: str) -> KeptLayout:
    """Lay a job out."""
    errand = Errand(job=job, made=Made.SEARCHED, effort=effort)
    return do_search(errand, lambda _sight: None, lambda: False)


def hung(job: Job, layout: Layout) -> Work:
    """Give what is marked when the first courses hang."""
    work = begin_work(job)
    for course in layout.surfaces[0].courses[:HUNG]:
        for piece in course.pieces:
            work = mark_work(job, layout, work, Happened(kind=MarkKind.HUNG, names=(piece.label,)))
    return work


@contextlib.contextmanager
def app_open(store: Path) -> Iterator[str]:
    """Have the app open for this machine, and give where."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = (
        *(sys.executable, "-m", "plankwright", "app", "--alone", "--no-browser"),
        "--store",
        str(store),
    )
    app = subprocess.Popen((*command, "--port", str(port)), stdout=subprocess.DEVNULL)
    try:
        end = time.monotonic() + _PATIENCE_S
        while not _answers(port):
            if app.poll() is not None or time.monotonic() > end:
                sys.exit("The app did not open.")
            time.sleep(0.1)
        yield f"http://localhost:{port}"
    finally:
        app.terminate()
        app.wait()


def take_pictures(browser: Browser, url: str, starts: tuple[str, ...], out: Path) -> Iterator[Path]:
    """Take a picture of every screen at every size and in every scheme; give the file of each."""
    screens = walk_screens(url, *starts)
    for scheme, (width, height) in product(SCHEMES, SIZES.items()):
        context = browser.new_context(
            base_url=url,
            color_scheme=scheme,
            viewport={"width": width, "height": height},
            has_touch=width < height,
            is_mobile=width < height,
        )
        page = context.new_page()
        for route, path in screens.items():
            page.goto(path)
            picture = out / f"{_name(route)}-{width}-{scheme}.png"
            page.screenshot(path=picture, full_page=True)
            yield picture
        context.close()


def _name(route: str) -> str:
    """Give a file name for the screen of a route."""
    words = re.sub(r"\{[^}]*\}", "one", route.removeprefix("/jobs/{job_id}")).strip("/")
    return words.replace("/", "-") or ("jobs" if route == "/" else "job")


def _answers(port: int) -> bool:
    asking = HTTPConnection("localhost", port)
    try:
        asking.request("GET", "/")
        asking.getresponse()
    except OSError:
        return False
    finally:
        asking.close()
    return True


if __name__ == "__main__":
    main()
