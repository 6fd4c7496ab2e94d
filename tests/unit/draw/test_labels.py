"""Finding room for lettering."""

import pytest
import shapely

from plankwright.draw.labels import Block, Room, Spot
from plankwright.draw.lettering import LINE, text_width
from plankwright.draw.scene import Rect, Span, Text
from plankwright.draw.styles import Style

SPAN = Span(text="4b · B17")
BLOCK = Block(lines=((SPAN,),), size=2.0)
WIDTH = text_width([SPAN], 2.0)
EMPTY = shapely.Polygon()


def _box(spot: Spot) -> shapely.Polygon:
    """Give where a block stands."""
    (x, y), (width, height) = spot.centre, spot.block.extent
    return shapely.box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)


def _found(spot: Spot | None) -> Spot:
    assert spot is not None
    return spot


def test_a_block_is_as_large_as_its_lines() -> None:
    """As wide as the widest, as high as all of them, and the other way round when it is turned."""
    both = Block(lines=((SPAN,), (Span(text="4"),)), size=2.0)
    assert both.extent == (WIDTH, 2 * LINE * 2.0)
    assert Block(lines=both.lines, size=2.0, turned=True).extent == both.extent[::-1]


def test_a_text_stands_in_the_middle_of_a_free_shape() -> None:
    """With nothing in the way a label is centred."""
    spot = _found(Room(EMPTY).inside([shapely.box(0, 0, 60, 8)], [BLOCK]))
    assert spot.centre == (30.0, 4.0)


def test_the_first_wording_that_fits_is_taken() -> None:
    """A shape too narrow for the whole text takes the short one, and one too small for both takes none."""
    short = Block(lines=((Span(text="4b"),),), size=2.0)
    spot = _found(Room(EMPTY).inside([shapely.box(0, 0, WIDTH - 1, 8)], [BLOCK, short]))
    assert spot.block is short
    assert Room(EMPTY).inside([shapely.box(0, 0, 1, 8)], [BLOCK, short]) is None
    assert Room(EMPTY).inside([EMPTY], [BLOCK]) is None


def test_two_texts_never_share_a_place() -> None:
    """The second goes beside the first, and a third finds no room any more."""
    room, cell = Room(EMPTY), shapely.box(0, 0, 2 * WIDTH + 8, 4)
    near = (WIDTH / 2 + 1, 2.0)
    first = _found(room.inside([cell], [BLOCK], near=near))
    second = _found(room.inside([cell], [BLOCK], near=near))
    assert not _box(first).intersects(_box(second))
    assert cell.contains(_box(second))
    assert room.inside([cell], [BLOCK]) is None


def test_a_text_stays_off_what_is_kept_clear() -> None:
    """A joint in the middle of the shape moves the text aside."""
    room, joint = Room(EMPTY), shapely.box(29, 0, 31, 8)
    room.keep_clear(joint)
    spot = _found(room.inside([shapely.box(0, 0, 60, 8)], [BLOCK]))
    assert not _box(spot).intersects(joint)


def test_a_text_prefers_clear_ground_but_takes_a_hatch_if_it_must() -> None:
    """Beside the hatched half while there is room, else over it."""
    hatch = shapely.box(25, 0, 60, 8)
    aside = _found(Room(hatch).inside([shapely.box(0, 0, 60, 8)], [BLOCK]))
    assert not _box(aside).intersects(hatch)
    over = _found(Room(hatch).inside([shapely.box(26, 0, 60, 8)], [BLOCK]))
    assert hatch.contains(_box(over))


def test_a_text_keeps_inside_a_sloping_shape() -> None:
    """Under a rafter it stands where the triangle is high enough."""
    triangle = shapely.Polygon([(0, 12), (60, 12), (60, 0)])
    spot = _found(Room(EMPTY).inside([triangle], [BLOCK]))
    assert triangle.contains(_box(spot))


def test_a_name_stands_beside_its_thing_on_a_leader() -> None:
    """Next to a socket that is too small to hold it, and the leader ends within the socket."""
    socket = shapely.box(30, 10, 33, 16)
    spot = _found(Room(EMPTY).beside([shapely.box(0, 0, 100, 40)], [BLOCK], socket, 20.0))
    assert not _box(spot).intersects(socket)
    assert _box(spot).distance(socket) < 5.0
    assert spot.leader is not None
    assert socket.contains(shapely.Point(spot.leader[1]))


def test_a_leader_crosses_no_lettering() -> None:
    """A text in the way sends the name to the other side."""
    room, socket = Room(EMPTY), shapely.box(30, 10, 33, 16)
    room.keep_clear(shapely.box(34, 0, 36, 40))
    spot = _found(
        room.beside([shapely.box(34, 0, 100, 40), shapely.box(0, 0, 29, 40)], [BLOCK], socket, 25.0)
    )
    assert spot.cell == 1


def test_a_name_that_finds_no_room_near_by_finds_none() -> None:
    """It does not wander over the sheet."""
    socket = shapely.box(30, 10, 33, 16)
    assert Room(EMPTY).beside([shapely.box(80, 0, 120, 40)], [BLOCK], socket, 20.0) is None
    assert Room(EMPTY).beside([shapely.box(0, 0, 2, 2)], [BLOCK], socket, 20.0) is None


@pytest.mark.parametrize("turned", [False, True])
def test_lines_are_drawn_around_their_place_on_their_ground(turned: bool) -> None:  # noqa: FBT001
    """The ground is as large as the block, and the lines stand evenly within it, in reading order."""
    block = Block(lines=((SPAN,), (Span(text="4"),)), size=2.0, turned=turned)
    ground, first, second = block.drawn((50.0, 20.0), ground=Style.WOOD)
    assert isinstance(ground, Rect)
    assert isinstance(first, Text)
    assert isinstance(second, Text)
    assert (ground.width, ground.height) == block.extent
    assert (ground.x + ground.width / 2, ground.y + ground.height / 2) == (50.0, 20.0)
    across = [text.x - 50.0 if turned else text.y - 20.0 for text in (first, second)]
    along = [text.y if turned else text.x for text in (first, second)]
    assert across == pytest.approx([-1.2, 1.2])
    assert along == [20.0, 20.0] if turned else along == [50.0, 50.0]
    assert len(block.drawn((50.0, 20.0), ground=None)) == 2
