"""What is dear in a look at some courses: what is bare, then joints, then wood."""

from collections.abc import Sequence

from plankwright.layout.choose import Prices
from plankwright.layout.plan import PlannedCourse
from plankwright.layout.strips import Strips
from plankwright.measure import Nm


def prices_for(strips: Strips, courses: Sequence[PlannedCourse], grid: Nm, *, saving: bool = False) -> Prices:
    """Price each measure so that it outweighs all that the later ones can save on these courses.

    Parameters
    ----------
    strips
        The surface.
    courses
        To be laid out anew.
    grid
        Step of the model. [nm]
    saving
        Whether wood counts before joints, so that what is bare may be covered with it.
    """
    length = (strips.right - strips.left) // grid
    area = max(1, length * sum(course.height for course in courses) // grid)
    return Prices(
        bare=max(1000, area // 100),
        joint=area // 1000 if saving else area,
        wood=1,
        piece=max(1, area // 2000),
        new=area,
        new_wood=10,
    )
