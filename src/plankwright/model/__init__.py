"""What exists in the trade of hanging salvaged boards: frozen values, valid from birth."""

from plankwright.model.board import Board, EdgeKind, EdgeProfile, Face, Flaw, Severity
from plankwright.model.cutting import BoardCuts, Cut, CutKind, HungPiece, Offcut
from plankwright.model.job import Job
from plankwright.model.layout import Bound, Course, EdgeTreatment, Layout, Piece, Score, SurfaceLayout
from plankwright.model.rules import BlemishPolicy, JointPolicy, Rules, Saw, SawKind
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
    "BlemishPolicy",
    "Board",
    "BoardCuts",
    "Bound",
    "ConcealedZone",
    "Course",
    "Cut",
    "CutKind",
    "CutOut",
    "Direction",
    "Edge",
    "EdgeKind",
    "EdgeProfile",
    "EdgeTreatment",
    "EdgeTrim",
    "Face",
    "Flaw",
    "Framing",
    "FramingMember",
    "HungPiece",
    "InvalidValueError",
    "Job",
    "JointPolicy",
    "KeepOut",
    "Layout",
    "Offcut",
    "Opening",
    "Piece",
    "Point",
    "Rectangle",
    "Rules",
    "Saw",
    "SawKind",
    "Score",
    "Severity",
    "Surface",
    "SurfaceKind",
    "SurfaceLayout",
]
