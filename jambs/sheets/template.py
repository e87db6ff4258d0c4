"""One template at full scale: what is cut along, what is only shown, and the words beside it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from jambs.geometry import Point

TITLE = 0.55
"""Height of a template's own title [in]."""
TURNED = "drawn turned to the left: what is above lies at the left, what is left lies below"
"""What is said of a template that fits the sheet in that way only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Template:
    """One template at full scale [in]: lines to cut along, broken lines, both from its lower left corner.

    ``ruled``: straight lines to cut along that need no paper where nothing else is: a straightedge draws them on.
    ``is_planned``: the depth that it follows is not measured yet. ``labels``: words, each at the right of its point.
    """

    title: str
    note: str
    size: Point
    cut: tuple[tuple[Point, ...], ...]
    broken: tuple[tuple[Point, ...], ...] = ()
    is_planned: bool = False
    labels: tuple[tuple[Point, str], ...] = ()
    ruled: tuple[tuple[Point, ...], ...] = ()

    @property
    def fits(self) -> Point:
        """The room it takes on one sheet, with its title [in]."""
        return (self.size[0], self.size[1] + TITLE)

    @property
    def turned(self) -> Template:
        """The template a quarter turn round, not mirrored."""
        high = self.size[1]
        cut, broken, ruled = (
            tuple(tuple((high - y, x) for x, y in line) for line in lines)
            for lines in (self.cut, self.broken, self.ruled)
        )
        labels = tuple(((high - y, x), words) for (x, y), words in self.labels)
        return replace(
            self,
            note=f"{self.note}; {TURNED}",
            size=(high, self.size[0]),
            cut=cut,
            broken=broken,
            labels=labels,
            ruled=ruled,
        )
