"""The JSON Schemas of the documents of this room, made from their definitions."""

import json
from types import MappingProxyType

from plankwright.files.document import Document, schema_of
from plankwright.files.job_document import JobDocument
from plankwright.files.layout_document import LayoutDocument
from plankwright.files.work_document import WorkDocument

_SCHEMAS: MappingProxyType[str, tuple[type[Document], str, str]] = MappingProxyType(
    {
        "job.schema.json": (
            JobDocument,
            "Job",
            "job.toml of a job folder, once it is read as TOML. docs/formats.md says what everything means.",
        ),
        "layout.schema.json": (
            LayoutDocument,
            "Layout",
            "Which piece goes where. docs/formats.md says what everything means.",
        ),
        "work.schema.json": (
            WorkDocument,
            "Work",
            "How far a job has come. docs/formats.md says what everything means.",
        ),
    }
)


def schemas() -> dict[str, str]:
    """Give the text of each schema by the name of its file."""
    return {
        name: json.dumps(schema_of(document, title=title, description=description), indent=2) + "\n"
        for name, (document, title, description) in _SCHEMAS.items()
    }
