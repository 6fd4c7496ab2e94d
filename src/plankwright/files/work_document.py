"""The definition of the file in which it is kept how far a job has come: JSON, of our own."""

from typing import Annotated, Literal

from pydantic import Field

from plankwright.files.document import Document, Flag, Name, Text
from plankwright.files.layout_document import CourseDocument, Extent, PieceDocument
from plankwright.model import MarkKind

FORMAT = "plankwright work"
VERSION = 1


class HungDocument(Document):
    """A course of which some pieces hang, or all."""

    surface: Annotated[Name, Field(description="Id of the surface.")]
    course: Annotated[CourseDocument, Field(description="The pieces that hang, in their places.")]


class CutDocument(Document):
    """A piece that is cut and does not hang."""

    surface: Annotated[Name, Field(description="Id of the surface that it was cut for.")]
    piece: Annotated[PieceDocument, Field(description="As it was laid out; of its board, as it was cut.")]
    plain: Annotated[Flag, Field(description="Whether it has no slopes or notches, and is a rectangle.")] = (
        False
    )


class GoneDocument(Document):
    """A piece that there is no more."""

    surface: Annotated[Name, Field(description="Id of the surface.")]
    label: Annotated[Name, Field(description="Its label.")]


class PartDocument(Document):
    """A part that is left of a board."""

    along: Annotated[Extent, Field(description="Where it lay along the board, from the marked end.")]
    across: Annotated[Extent, Field(description="Where it lay across the board, from the reference edge.")]


class SawnDocument(Document):
    """A board that was sawn or broke."""

    board: Annotated[Name, Field(description="The board.")]
    left: Annotated[tuple[PartDocument, ...], Field(description="What is left of it besides pieces.")] = ()


class MarkDocument(Document):
    """One thing that happened, told by what is different since."""

    mark: Annotated[MarkKind, Field(description="What happened.")]
    what: Annotated[Text, Field(description="What was named, for people to read.")] = ""
    hung: Annotated[tuple[HungDocument, ...], Field(description="Courses as they hang since.")] = ()
    cut: Annotated[tuple[CutDocument, ...], Field(description="Pieces that are in hand since.")] = ()
    gone: Annotated[tuple[GoneDocument, ...], Field(description="Pieces that there are no more.")] = ()
    boards: Annotated[tuple[SawnDocument, ...], Field(description="Boards that were sawn or broke.")] = ()
    lost: Annotated[tuple[Name, ...], Field(description="Boards that are lost.")] = ()


class WorkDocument(Document):
    """How far a job has come."""

    format: Literal["plankwright work"]
    version: Literal[1]
    job: Annotated[Name, Field(description="Name of the job.")]
    boards: Annotated[tuple[Name, ...], Field(description="The tally's boards when work began.")] = ()
    marks: Annotated[tuple[MarkDocument, ...], Field(description="What happened, in order.")] = ()
