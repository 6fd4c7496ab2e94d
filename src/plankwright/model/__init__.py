"""What exists in the trade of hanging salvaged boards: frozen values, valid from birth."""

from plankwright.model.board import Board, EdgeKind, EdgeProfile, Face, Flaw, Severity
from plankwright.model.corners import Link, corner_heights, demand_corners, runs_all_round, walls_of
from plankwright.model.cutting import BoardCuts, Cut, CutKind, HungPiece, Offcut
from plankwright.model.fastening import Fastening, Layer
from plankwright.model.job import Job
from plankwright.model.layout import Bound, Course, EdgeTreatment, Layout, Piece, Score, SurfaceLayout
from plankwright.model.marks import Mark, MarkKind, SawnBoard, Work
from plankwright.model.means import WOOD_UNITS, Per, Price, Task
from plankwright.model.origin import Lot, NailsLeft, Paint, Treatment
from plankwright.model.room import Air, Room
from plankwright.model.rules import BlemishPolicy, JointPolicy, Rules, Saw, SawKind
from plankwright.model.standing import NOTHING_DONE, CutPiece, HungCourse, Part, Standing, part_of
from plankwright.model.surface import (
    ConcealedZone,
    CutOut,
    Direction,
    Edge,
    EdgeTrim,
    Framing,
    FramingMember,
    KeepOut,
    Opening,
    Point,
    Rectangle,
    Surface,
    SurfaceKind,
)
from plankwright.model.validity import InvalidValueError

__all__ = [
    "NOTHING_DONE",
    "WOOD_UNITS",
    "Air",
    "BlemishPolicy",
    "Board",
    "BoardCuts",
    "Bound",
    "ConcealedZone",
    "Course",
    "Cut",
    "CutKind",
    "CutOut",
    "CutPiece",
    "Direction",
    "Edge",
    "EdgeKind",
    "EdgeProfile",
    "EdgeTreatment",
    "EdgeTrim",
    "Face",
    "Fastening",
    "Flaw",
    "Framing",
    "FramingMember",
    "HungCourse",
    "HungPiece",
    "InvalidValueError",
    "Job",
    "JointPolicy",
    "KeepOut",
    "Layer",
    "Layout",
    "Link",
    "Lot",
    "Mark",
    "MarkKind",
    "NailsLeft",
    "Offcut",
    "Opening",
    "Paint",
    "Part",
    "Per",
    "Piece",
    "Point",
    "Price",
    "Rectangle",
    "Room",
    "Rules",
    "Saw",
    "SawKind",
    "SawnBoard",
    "Score",
    "Severity",
    "Standing",
    "Surface",
    "SurfaceKind",
    "SurfaceLayout",
    "Task",
    "Treatment",
    "Work",
    "corner_heights",
    "demand_corners",
    "part_of",
    "runs_all_round",
    "walls_of",
]
