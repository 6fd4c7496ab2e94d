"""A printed job, read back from its pages."""

import re
from collections.abc import Iterator

import pymupdf

POINTS_A_MM = 72 / 25.4
BODY = 10.9
"""Lettering is at least eleven points, less what rounding takes."""


class Sheets:
    """A printed job, page by page."""

    def __init__(self, pdf: bytes) -> None:
        self.document = pymupdf.open(stream=pdf, filetype="pdf")
        self.pages = [self.document[number] for number in range(self.document.page_count)]

    def headed(self, head: str) -> list[pymupdf.Page]:
        """Give the pages of a list, by what stands at their heads."""
        return [page for page in self.pages if words(page).startswith(head)]


def lettering(page: pymupdf.Page) -> Iterator[tuple[str, float, pymupdf.Rect]]:
    """Give each run of letters with its size and place."""
    for block in page.get_text("dict")["blocks"]:
        for line in block.get("lines", ()):
            for span in line["spans"]:
                yield span["text"], span["size"], pymupdf.Rect(span["bbox"])


def words(page: pymupdf.Page) -> str:
    """Give what a page says in lettering of its own, drawings left out, on one line."""
    said = " ".join(text for text, size, _ in lettering(page) if size >= BODY)
    return re.sub(r"\s+", " ", said)
