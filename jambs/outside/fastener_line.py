"""One line of the fastener table of an opening: computed from what the fastener goes through, or as a maker says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from jambs.fasten.furring import Verdict
from jambs.fasten.reach import Through, find_sold, next_length
from jambs.length import MM_PER_INCH, ROUND_OFF, Units
from jambs.parts.kit.kit import Kit
from jambs.sides import Side

Penetration = Mapping[Units, float]
JAMB_PENETRATION = {Units.INCH: 1.25, Units.MM: 30 / MM_PER_INCH}
"""Of a trim screw through jamb and shims, into framing or buck [in]; common practice, no source."""
CASING_PENETRATION = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""Of a nail through casing and wall finish, into framing [in]; common practice, no source."""
JAMB_FASTENER, CASING_FASTENER = "trim screw", "casing nail"


class Fastened(Enum):
    """What a line of fasteners holds."""

    JAMB = "extension jamb"
    INTERIOR_CASING = "interior casing"
    EXTERIOR_CASING = "exterior casing"
    BUCK = "buck"
    RETURN_FURRING = "return furring"
    CLADDING_RETURN = "cladding returns, corner boards"
    CLADDING_RETURN_ALONE = "cladding returns"
    FLANGE = "nailing flange"
    CLIPS = "clips or anchors"
    FURRING = "furring"
    NAILER = "nailers"
    RETURN = "returns"
    BEADS = "beads"
    STOOL = "stool"
    APRON = "apron"
    MULL_JAMB = "mull jambs"
    MULL_CASING = "boards over mulls"
    MEMBERS = "members of the casing"


@dataclass(frozen=True, slots=True, kw_only=True)
class InstallFastener:
    """One kind of fastener of one opening [in]: what it goes through, ``needed`` and sold ``length``, its way in.

    ``sides``: those it is for, none where it is for all. ``verdict``: what the published table says of it, where it
    says anything. ``says``: in place of a length, whose word it is or what else holds it; ``way`` then says into what.
    ``target``: what it reaches into.
    """

    kind: Fastened
    what: str
    where: str
    fastener: str
    through: tuple[Through, ...]
    needed: float
    length: float | None
    penetration: float
    is_assumed: bool
    is_inside: bool
    sides: tuple[Side, ...] = ()
    note: str = ""
    verdict: Verdict | None = None
    says: str = ""
    way: str = ""
    target: str = "the framing"

    @property
    def reached(self) -> float:
        """What the length that is sold reaches into the framing; where none is sold, what is required [in]."""
        return self.penetration + (self.length - self.needed if self.length else 0.0)


def computed_line(
    *,
    kind: Fastened,
    fastener: str,
    through: tuple[Through, ...],
    into: Penetration,
    units: Units,
    what: str = "",
    where: str = "",
    note: str = "",
    sides: tuple[Side, ...] = (),
    is_inside: bool = True,
    target: str = "the framing",
) -> InstallFastener:
    """Return a line whose length is worked out: all it goes through and its penetration, up to the next that is sold.

    ``what``: the kind's word if left out.
    """
    sold, penetration = find_sold(fastener, units), into[units]
    needed = sum(one.thickness for one in through) + penetration
    return InstallFastener(
        kind=kind,
        sides=sides,
        what=what or kind.value,
        where=where,
        fastener=fastener,
        through=through,
        needed=needed,
        length=next_length(needed, sold.lengths if sold else ()),
        penetration=penetration,
        is_assumed=True,
        is_inside=is_inside,
        note=note,
        target=target,
    )


def stated_line(
    *, kind: Fastened, says: str, way: str, where: str = "", note: str = "", is_inside: bool = True
) -> InstallFastener:
    """Return a line that has no length of ours: ``says`` whose it is, ``way`` what it holds to."""
    return InstallFastener(
        kind=kind,
        what=kind.value,
        where=where,
        fastener=says,
        through=(),
        needed=0.0,
        length=None,
        penetration=0.0,
        is_assumed=False,
        is_inside=is_inside,
        note=note,
        says=says,
        way=way,
    )


def wall_finish(kit: Kit) -> tuple[Through, ...]:
    """Return what lies on the framing inside: wall board, service cavity, membranes that have a thickness."""
    planes = kit.placement.planes
    return tuple(
        Through(name=one.layer.name, thickness=one.layer.thickness)
        for one in planes.layers
        if one.outer <= planes.stud_face + ROUND_OFF and one.outer > one.inner
    )
