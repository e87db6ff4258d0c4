"""How a frame with panels is laid out on the board that it takes the place of: lengths of rails, sizes of panels.

The stiles run along the jamb, one at its frame edge and one at its room edge, as long as the jamb; the rails go between
them, at the ends and between the panels. From edge to edge of a jamb: stile, opening, stile. A rail is as long as the
opening is wide and a tenon at each end; a panel fills the opening and both grooves, less the room that it moves in.
That is how the trade reckons a frame and panel: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.panels import MOST_PANELS, PanelsEntry
from jambs.length import ROUND_OFF, Grid


@dataclass(frozen=True, slots=True, kw_only=True)
class JambFace:
    """The face of a jamb as a frame with panels is laid out on it, along its grain from its start [in].

    ``seen``: where its face comes out from behind its neighbors at both ends. ``length``: of the board, long point to
    long point; ``width``: of the board, and ``slant`` of its face where that is narrowest.
    """

    length: float
    seen: Point
    width: float
    slant: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelLayout:
    """A frame with panels laid out on its board [in]: along the grain from its start, across it from the frame edge.

    ``across``: where every opening begins and ends across the grain. ``openings``: where each one begins and ends along
    it. ``rail_length``: shoulder to shoulder and both tenons. ``panel_width``: across the grain of the panel, which
    runs with the stiles; ``room``, ``end_room``: what both grooves leave it across and along its grain.
    """

    length: float
    width: float
    across: Point
    openings: tuple[Point, ...]
    rail_length: float
    panel_width: float
    panel_length: float
    room: float
    end_room: float

    @property
    def rails(self) -> tuple[Point, ...]:
        """Where each rail begins and ends along the jamb: those at its ends as far as the board goes."""
        starts = (0.0, *(finish for _, finish in self.openings))
        finishes = (*(start for start, _ in self.openings), self.length)
        return tuple(zip(starts, finishes, strict=True))

    @property
    def opening_width(self) -> float:
        """Between the stiles [in]."""
        return self.across[1] - self.across[0]

    @property
    def opening_length(self) -> float:
        """Between two rails [in]."""
        return self.openings[0][1] - self.openings[0][0]


def panel_count(span: float, rail: float, longest: float) -> int | None:
    """Return how many panels a length needs so that none of their openings is longer than allowed; None: too many.

    ``span``: of the face that is seen, a rail at each end of it [in].
    """
    counts = range(1, MOST_PANELS + 1)
    return next((one for one in counts if opening_between(span, rail, one) <= longest + ROUND_OFF), None)


def opening_between(span: float, rail: float, count: int) -> float:
    """Length of each of so many openings between one rail more than they are [in]."""
    return (span - (count + 1) * rail) / count


def opening_width(face: JambFace, entry: PanelsEntry, grid: Grid) -> float:
    """Width of the openings between the stiles, on the grid; what is left goes to the stile at the room [in]."""
    return grid.down(face.slant - 2 * entry.stiles)


def lay_out(face: JambFace, entry: PanelsEntry, count: int, room: float, grid: Grid) -> PanelLayout:
    """Lay a frame with so many panels out on the face of a jamb; ``room``: for them to swell across the grain [in].

    Openings are alike and on the grid; what that leaves along the jamb goes to the rails at its ends, half to each.
    """
    wide = opening_width(face, entry, grid)
    seen = face.seen[1] - face.seen[0]
    long = grid.down(opening_between(seen, entry.rails, count))
    rest = seen - (count + 1) * entry.rails - count * long
    first = face.seen[0] + entry.rails + rest / 2
    starts = [first + number * (long + entry.rails) for number in range(count)]
    return PanelLayout(
        length=face.length,
        width=face.width,
        across=(entry.stiles, entry.stiles + wide),
        openings=tuple((start, start + long) for start in starts),
        rail_length=wide + 2 * entry.tenon,
        panel_width=grid.down(wide + 2 * entry.groove.depth - room),
        panel_length=grid.down(long + 2 * entry.groove.depth - entry.panel.end_room),
        room=room,
        end_room=entry.panel.end_room,
    )
