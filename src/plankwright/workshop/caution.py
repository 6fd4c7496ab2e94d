"""The hazards of old wood, in one short paragraph and before each sort of work.

What stands behind each is told by the trade's own warnings, and in docs/hazards.md.
"""

from collections.abc import Mapping
from types import MappingProxyType

CAUTION = (
    "Before you saw: old boards hide nails and rust (is your tetanus shot current?), paint of unknown age "
    "may hold lead, what lies behind them may hold asbestos, and walls hold wires and pipes. Local codes "
    "and licensed trades decide what may be done."
)

BEFORE: Mapping[str, str] = MappingProxyType(
    {
        "pulling": (
            "Before you pull: old paint may hold lead, and what lies behind the boards may hold asbestos; "
            "have what you suspect tested, and leave it alone until then. Find wires and pipes and switch "
            "off. Nails, rust and dust: gloves, hard soles, eye protection, a mask."
        ),
        "cutting": (
            "Before you cut: pull every nail and pass a metal detector over the board; split and bowed "
            "boards bind and kick back. Eye protection, a mask, dust drawn off. No saw and no sander on "
            "paint that was not tested for lead."
        ),
        "nailing": (
            "Before you nail: find wires and pipes, switch off and test; only keep-outs that were entered "
            "are marked. Boards overhead want two people or a prop until they are nailed."
        ),
    }
)
"""What is said before each sort of work, shortly."""
