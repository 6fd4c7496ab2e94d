"""How long something took, on a machine that may have other work as well."""

import os
import time
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Moment:
    """A place in time: on the clock, and in the work of this process and of those that it has ended. [s]"""

    clock: float = field(default_factory=time.perf_counter)
    work: float = field(default_factory=lambda: sum(os.times()[:4]))

    def clock_s(self) -> float:
        """Give the time since on the clock. [s]"""
        return time.perf_counter() - self.clock

    def work_s(self) -> float:
        """Give the processor time since. [s]"""
        return sum(os.times()[:4]) - self.work

    def since_s(self) -> float:
        """Give the time since, as it would be on a machine with nothing else to do. [s]

        That is the clock's; or the processors', where those have worked for less time: then this process
        has waited for others. A search that works on several processors at once takes more of them than of
        the clock, and the clock counts.
        """
        return min(self.clock_s(), self.work_s())
