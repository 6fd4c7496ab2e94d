"""A layout of which one piece after the other comes to be cut from another board."""

from collections.abc import Collection, Iterator
from dataclasses import replace

from plankwright.layout.capacity import capacity_of
from plankwright.layout.ground import Ground
from plankwright.layout.nailing import nail_places
from plankwright.layout.offcuts import Stretch
from plankwright.layout.parting import PieceKey, apart
from plankwright.layout.regions import extent_in_course
from plankwright.layout.strips import Span, Strips
from plankwright.measure import Nm
from plankwright.model import Board, Course, EdgeTreatment, Job, Layout, Part, Piece, Standing, part_of
from plankwright.workshop.jobs.butted_row import Pairs, pairs_in_sight, shims_between
from plankwright.workshop.jobs.kept import RefusedError
from plankwright.workshop.jobs.laid_piece import LaidPiece, laid_pieces
from plankwright.workshop.jobs.wood_on_board import Asked, Wood, wood_on
from plankwright.workshop.wording import listed


class Recut:
    """A layout in the making.

    Parameters
    ----------
    job, layout, standing
        The job, the layout that it is worked by, and how far it has come.
    staying
        Surface and label of pieces that keep their wood.
    leaving
        Those of pieces that are to come from other boards, and take nothing until they do.
    """

    def __init__(
        self,
        job: Job,
        layout: Layout,
        standing: Standing,
        staying: Collection[PieceKey] = (),
        leaving: Collection[PieceKey] = (),
    ) -> None:
        self._job, self._layout, self._standing = job, layout, standing
        self._pieces = laid_pieces(job, layout, standing)
        self._staying, self._leaving = set(staying), set(leaving)
        self._taken: dict[PieceKey, Part] = {}
        self._boards = {board.id: board for board in job.boards}
        self._strips: dict[str, Strips] = {}
        self._pairs: dict[tuple[str, int], Pairs] = {}

    @property
    def staying(self) -> frozenset[PieceKey]:
        """The pieces that keep their wood, and those that came to be of another board."""
        return frozenset(self._staying)

    @property
    def losing(self) -> frozenset[PieceKey]:
        """The pieces whose wood was taken, or is of a board that the tally does not have."""
        others = ((key, place.piece) for key, place in self._pieces.items() if key not in self._staying)
        return frozenset(
            key for key, piece in others if piece.board_id not in self._boards or self._is_taken(piece)
        )

    @property
    def layout(self) -> Layout:
        """The layout with every piece as it is cut now; those that lose their wood are still there."""
        return replace(
            self._layout,
            surfaces=tuple(
                replace(laid, courses=tuple(self._recut(laid.surface_id, course) for course in laid.courses))
                for laid in self._layout.surfaces
            ),
        )

    def wood(self, key: PieceKey, board_id: str) -> Wood:
        """Give the best wood for a piece on a board.

        Parameters
        ----------
        key, board_id
            The piece, which must be one that does not hang, and the board.

        Raises
        ------
        RefusedError
            If the board cannot give it: one sentence why.
        """
        place, board = self._pieces[key], self._boards.get(board_id)
        if board is None:
            raise RefusedError(f"There is no board {board_id} in the tally, or no longer.")
        on_board = {
            other: part_of(each.piece)
            for other, each in self._pieces.items()
            if each.piece.board_id == board_id and other != key and other not in self._leaving
        }
        asked = Asked(
            place=place,
            concealed=self._concealed(place),
            staying=[part for other, part in on_board.items() if other in self._staying],
            others={other: part for other, part in on_board.items() if other not in self._staying},
        )
        wood = wood_on(self._job, self._standing, board, asked)
        self._demand_level(place, board)
        return wood

    def take(self, key: PieceKey, wood: Wood) -> None:
        """Cut a piece from other wood from now on; it stays so."""
        place = self._pieces[key]
        piece = _from(place.piece, wood)
        strips = self._strips_of(place)
        start, end, low, _ = extent_in_course(place.surface, piece.place)
        blank, ground = Span(start, end, low, low + part_of(piece).width_nm), Ground(strips)
        nails = tuple(ground.point(*at) for at in nail_places(ground, blank))
        self._pieces[key] = replace(place, piece=replace(piece, place=strips.rectangle(blank), nails=nails))
        self._taken[key] = wood.part
        self._staying.add(key)
        self._leaving.discard(key)

    def _is_taken(self, piece: Piece) -> bool:
        part = part_of(piece)
        return any(
            part.board_id == taken.board_id and not apart(part, taken, self._job.rules)
            for taken in self._taken.values()
        )

    def _strips_of(self, place: LaidPiece) -> Strips:
        name = place.surface.id
        if name not in self._strips:
            self._strips[name] = Strips(place.surface, self._job.rules, capacity_of(self._job))
        return self._strips[name]

    def _concealed(self, place: LaidPiece) -> list[Stretch]:
        runs = self._strips_of(place).runs(place.course.from_nm, place.course.to_nm)
        return sorted({stretch for run in runs for stretch in run.concealed})

    def _demand_level(self, place: LaidPiece, board: Board) -> None:
        """Refuse a board that does not go with what it would butt in sight and what stays."""
        piece = replace(place.piece, board_id=board.id)
        hanging, pairs = self._hanging(place.surface.id), self._pairs_in(place.surface.id, place.course)
        beside = [
            other for other in self._fixed_in(place.surface.id, place.course) if other.label != piece.label
        ]
        fixed = {other.label for other in beside}
        labels = [label for pair in pairs if piece.label in pair for label in pair if label in fixed]
        if labels and shims_between(self._job, [*beside, piece], pairs, hanging) is None:
            raise RefusedError(
                f"Board {board.id} does not go with {listed(labels)} beside {place.name}, which "
                f"{'stays' if len(labels) == 1 else 'stay'}: pieces that butt in sight need like edges, and "
                "faces that can be levelled."
            )

    def _hanging(self, surface_id: str) -> frozenset[str]:
        return self._standing.hung_labels(surface_id)

    def _pairs_in(self, surface_id: str, course: Course) -> Pairs:
        at = surface_id, course.number
        if at not in self._pairs:
            laid = next(one for one in self._layout.surfaces if one.surface_id == surface_id)
            self._pairs[at] = pairs_in_sight(self._job, laid, course)
        return self._pairs[at]

    def _fixed_in(self, surface_id: str, course: Course) -> list[Piece]:
        """Give the pieces of a course that hang or keep their wood, as they are cut now."""
        hanging = self._hanging(surface_id)
        return [
            piece
            for piece in self._now(surface_id, course)
            if piece.label in hanging or (surface_id, piece.label) in self._staying
        ]

    def _now(self, surface_id: str, course: Course) -> Iterator[Piece]:
        for piece in course.pieces:
            place = self._pieces.get((surface_id, piece.label))
            yield piece if place is None else place.piece

    def _recut(self, surface_id: str, course: Course) -> Course:
        if not any((surface_id, piece.label) in self._taken for piece in course.pieces):
            return course
        pieces = tuple(self._now(surface_id, course))
        shims = self._shims(surface_id, course)
        return replace(
            course,
            pieces=tuple(replace(piece, shim_nm=shims.get(piece.label, piece.shim_nm)) for piece in pieces),
        )

    def _shims(self, surface_id: str, course: Course) -> dict[str, Nm]:
        """Give the shims of a course in which a piece has come to be of another board.

        They are those of all pieces that can stay if these go together, else of those alone that do stay:
        what is laid out anew beside them goes by them.
        """
        hanging, pairs, losing = self._hanging(surface_id), self._pairs_in(surface_id, course), self.losing
        staying = [
            piece for piece in self._now(surface_id, course) if (surface_id, piece.label) not in losing
        ]
        for pieces in (staying, self._fixed_in(surface_id, course)):
            shims = shims_between(self._job, pieces, pairs, hanging)
            if shims is not None:
                return shims
        return {}


def _from(piece: Piece, wood: Wood) -> Piece:
    """Give a piece cut from other wood, its edges and its shim still to be seen to."""
    return replace(
        piece,
        board_id=wood.part.board_id,
        along_from_nm=wood.part.along_from_nm,
        along_to_nm=wood.part.along_to_nm,
        across_from_nm=wood.part.across_from_nm,
        across_to_nm=wood.part.across_to_nm,
        face=wood.face,
        turned=wood.turned,
        near=EdgeTreatment.AS_FOUND,
        far=EdgeTreatment.AS_FOUND,
        shim_nm=0,
    )
