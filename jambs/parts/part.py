"""A part: a board, the cuts that make it, its finished outline and profile, and where it sits.

Board coordinates [in]: ``u`` along the grain from the start end, ``v`` across the width, ``w`` through the thickness
from the board's face (w = 0) to its back (w = thickness). The finished solid is *outline × profile less pockets*,
less the wedges of its end bevels:
the outline (u, v) swept through the thickness, met with the profile (v, w) swept along the grain, less boxes.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]
Vector = tuple[float, float, float]


class End(StrEnum):
    """The start (u = 0) or the finish (u = length) of a board."""

    START = "start"
    FINISH = "finish"


class Edge(StrEnum):
    """The near edge (v = 0) or the far edge (v = width) of a board."""

    NEAR = "near"
    FAR = "far"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rip:
    """Rip along the grain to a parallel width."""

    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Taper:
    """Rip the far edge to a taper: width at the start and at the finish end."""

    start_width: float
    finish_width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Crosscut:
    """Cut both ends square to a length."""

    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Miter:
    """Cut one end at an angle across the face, off square; ``long_edge`` keeps the full length."""

    end: End
    angle_deg: float
    long_edge: Edge


@dataclass(frozen=True, slots=True, kw_only=True)
class EndBevel:
    """Cut one end at an angle through the thickness, off square; the back is the short side unless ``face_short``."""

    end: End
    angle_deg: float
    face_short: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeBevel:
    """Plane or rip one edge at an angle through the thickness; ``face_short``: material goes at the face."""

    edge: Edge
    angle_deg: float
    face_short: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class EndRabbet:
    """Rabbet across one end, into the face: ``along`` the grain from the end, ``depth`` from the face."""

    end: End
    along: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRabbet:
    """Rabbet along one edge, into the face or the back: ``across`` from the edge, ``depth`` from that face."""

    edge: Edge
    across: float
    depth: float
    from_back: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """Cut a rectangle out of one corner: ``along`` the grain from the end, ``across`` from the edge."""

    end: End
    edge: Edge
    along: float
    across: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A kerf along the whole length in the back: its near side ``from_edge``, ``width`` wide, ``depth`` deep."""

    edge: Edge
    from_edge: float
    width: float
    depth: float


Cut = Rip | Taper | Crosscut | Miter | EndBevel | EdgeBevel | EndRabbet | EdgeRabbet | Notch | Groove


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A box taken out of the board: two corners (u, v, w)."""

    low: Vector
    high: Vector


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """Where a part sits: the wall coordinates (x, y, d) of its board's corner (0, 0, 0) and of its three directions.

    x right, y up, d outward; origin at the lower left corner of the window frame and the finished face.
    """

    origin: Vector
    along: Vector
    across: Vector
    through: Vector

    def at(self, u: float, v: float, w: float) -> Vector:
        """Return the wall coordinates of a point of the board."""
        o, a, b, c = self.origin, self.along, self.across, self.through
        x, y, d = (o[i] + u * a[i] + v * b[i] + w * c[i] for i in range(3))
        return (x, y, d)


class Where(StrEnum):
    """Which set a part belongs to."""

    INTERIOR = "interior"
    EXTERIOR = "exterior"
    BUCK = "buck"


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One board of an opening's kit.

    ``mark``: opening mark and a running number. ``name``: the part in trade words. ``position``: head, left leg, …
    ``thickness``, ``width``, ``length``: the finished board's greatest measures [in]; the rip is ``width``.
    ``ends``: how the two ends are cut, in words. ``work``: everything else that is done to it, one line each.
    ``strips``: widths to glue up where no board at hand is wide enough, else empty.
    """

    mark: str
    name: str
    position: str
    where: Where
    stock: str
    board: str
    thickness: float
    width: float
    length: float
    outline: tuple[Point, ...]
    profile: tuple[Point, ...]
    pockets: tuple[Pocket, ...] = ()
    cuts: tuple[Cut, ...]
    ends: str
    work: tuple[str, ...] = ()
    strips: tuple[float, ...] = ()
    seat: Seat
    is_wood: bool = True

    @property
    def is_plain(self) -> bool:
        """Say whether the part is a plain board: ripped parallel and cut square."""
        return not any(not isinstance(cut, Rip | Crosscut) for cut in self.cuts)
