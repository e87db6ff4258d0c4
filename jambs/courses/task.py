"""The question of the courses in whole grid steps, and its answer."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """A height that a course line should meet, above the start line, and how many openings want it [steps]."""

    at: int
    weight: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """What is asked, in whole grid steps; positions are heights above the start line.

    ``top``: the eave; a last course that runs past it is cut; one that shows less than ``least_top`` is a sliver.
    ``exposures``: allowed, ascending. ``unseen``: a change between neighbors that costs nothing;
    ``greatest_change``: none is more. ``tolerance``: a line this near to a target meets it.
    """

    top: int
    targets: tuple[Target, ...]
    exposures: tuple[int, ...]
    wanted: int
    unseen: int
    greatest_change: int
    tolerance: int
    least_top: int

    @property
    def least(self) -> int:
        """The least exposure [steps]."""
        return self.exposures[0]

    @property
    def span(self) -> int:
        """How many steps the exposures reach over, both ends counted."""
        return self.exposures[-1] - self.exposures[0] + 1

    @property
    def weight(self) -> int:
        """All that could be met: the weights of the targets."""
        return sum(target.weight for target in self.targets)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ladder:
    """The best courses: course lines above the start line, first one at 0 [steps], and what they cost.

    The cost is taken in this order: ``missed`` weight of targets, a sliver under the eave counted as one; the
    greatest ``change`` between neighbors; ``seen``: sum of the changes past the unseen one; ``off``: sum of the
    distances from the wanted exposure and from the targets met within the tolerance; ``unrest``: sum of all changes.
    ``missed_with_less``: missed weight if the greatest change were one step less; None where no change is seen.
    """

    lines: tuple[int, ...]
    missed: int
    change: int
    seen: int
    off: int
    unrest: int
    missed_with_less: int | None

    @property
    def exposures(self) -> tuple[int, ...]:
        """From line to line [steps]; the last one whole, even where the eave cuts it."""
        return tuple(above - below for below, above in pairwise(self.lines))
