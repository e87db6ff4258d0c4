"""A window placed in its wall: planes, depths, what carries it, and why it stands there."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.findings import Finding, Reason
from jambs.job.models.fields import Size
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Opening
from jambs.job.models.shop import Escape
from jambs.length import Grid
from jambs.place.reasons import BrokenLimit, PositionName
from jambs.place.swing import Obstacle
from jambs.wall.planes import WallPlanes


@dataclass(frozen=True, slots=True, kw_only=True)
class Sides:
    """One length for each side of an opening, left and right as seen from inside [in]."""

    left: float
    right: float
    head: float
    sill: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Buck:
    """What carries the window: kind, depth along the depth axis, board thickness, distance outside the opening [in].

    A liner reaches from the inside face of the studs to the flange plane, an outboard buck from the sheathing to it.
    """

    kind: BuckKind
    inner: float
    outer: float
    thickness: float
    stock: str
    set_back: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Swing:
    """How far the sash opens [degrees], what stops it there, and the clear passage it leaves, width × height [in]."""

    greatest_deg: float
    stopped_by: Obstacle
    clear: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class EscapeCheck:
    """What an escape opening has and what it needs.

    ``clear``: passage, width × height [in]. ``sill``: finished floor → bottom of the passage [in]; None where the job
    does not say. ``is_of_the_job``: the limits are the job's own, not those of the code.
    """

    clear: Size
    sill: float | None
    needed: Escape
    is_of_the_job: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitPlaced:
    """One unit of an opening, by its number, as an opening of its own: how it swings, what it weighs [lb]."""

    number: int
    opening: Opening
    swing: Swing | None
    weight: float
    weight_is_assumed: bool
    escape: EscapeCheck | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """A position that was weighed: its name, flange plane and depths [in], and what speaks against it."""

    name: PositionName
    flange_plane: float
    interior_depth: float
    exterior_depth: float
    against: tuple[BrokenLimit, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """A window in its wall. Depths along the depth axis from the finished face outward [in].

    ``interior_depth``: finished face → inside edge of the frame. ``exterior_depth``: outside edge of the frame →
    trim plane, negative where the frame stands proud. ``framing_opening``: width × height of the hole in the framing.
    ``framing_sill``: finished floor → bottom of that hole; None where nobody gave a height, and for a door.
    ``shims``: frame → rough opening on each side. ``overhang``: sheathing → flange plane. ``weight`` [lb].
    ``asked``: what the job should say before the window is ordered.
    ``units``: of a ganged opening, each by itself; ``weight`` is that of all, ``swing`` stands with the units.
    ``framed_to``: of a shape that is no rectangle, the marks out to which its hole in the framing is told.
    ``stands_as_measured``: it was found elsewhere than it was planned, and this is where it was found.
    ``off_by_grid``: how much deeper it was planned, inside and outside, on the shop's grid of when its depths were read
    [in]; none where that was the grid of now.
    """

    opening: Opening
    planes: WallPlanes
    flange_plane: float
    interior_depth: float
    exterior_depth: float
    share: float | None
    buck: Buck | None
    framing_opening: Size
    shims: Sides
    weight: float
    weight_is_assumed: bool
    swing: Swing | None
    reasons: tuple[Reason, ...]
    alternatives: tuple[Alternative, ...]
    findings: tuple[Finding, ...]
    escape: EscapeCheck | None = None
    asked: tuple[Finding, ...] = ()
    stands_as_measured: bool = False
    framing_sill: float | None = None
    units: tuple[UnitPlaced, ...] = ()
    framed_to: Grid | None = None
    off_by_grid: tuple[float, float] = (0.0, 0.0)

    @property
    def tightest(self) -> tuple[Opening, Swing] | None:
        """The sash that opens the least, with its opening: the only one, or one of several units; None without any."""
        found = [(unit.opening, unit.swing) for unit in self.units if unit.swing]
        if self.swing:
            return self.opening, self.swing
        return min(found, key=lambda one: one[1].greatest_deg) if found else None

    @property
    def inside_edge(self) -> float:
        """Depth of the frame's inside edge [in]."""
        return self.interior_depth

    @property
    def outside_edge(self) -> float:
        """Depth of the frame's outside edge [in]."""
        return self.planes.trim_plane - self.exterior_depth

    @property
    def overhang(self) -> float:
        """From the sheathing plane out to the flange plane [in]."""
        return self.flange_plane - self.planes.sheathing_plane
