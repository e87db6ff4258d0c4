"""What is held against the limits once the flange plane of an opening is known."""

from __future__ import annotations

from jambs.findings import Finding, Subject
from jambs.job.models.openings import Job, Opening
from jambs.job.models.shop import Limits
from jambs.place.alternatives import broken_limits
from jambs.place.depths import interior_depth
from jambs.place.escape import escape_faults
from jambs.place.escape_findings import NotAnEscapeOpening
from jambs.place.findings import (
    ExteriorTooShallow,
    FlangeOutOfRange,
    FrameProudInside,
    FrameStandsProud,
    InteriorTooShallow,
    JambWiderThanBoards,
    NothingCarries,
    PastLimit,
)
from jambs.place.flares import jamb_rip
from jambs.place.limit_kinds import LimitKind
from jambs.place.limits import SAME_PLANE, widest_jamb
from jambs.place.placement import Swing
from jambs.place.sash import tilt_at, tilt_stay_deg
from jambs.place.sash_findings import (
    HandleOverStool,
    NoHingeSide,
    SashCannotOpen,
    SashSizesAssumed,
    SashStopsShort,
    TiltStopsShort,
)
from jambs.place.support import carrying_layer
from jambs.sides import Side
from jambs.wall.planes import WallPlanes

LEAST_OPENING_DEG = 5.0
"""A sash that opens less is as good as shut: one 24 in wide comes out by 2 in. Common practice, no source."""
TOLD_ELSEWHERE = (
    LimitKind.ONE_BOARD,
    LimitKind.LEAST_EXTERIOR_DEPTH,
    LimitKind.OVERHANG,
    LimitKind.SASH_OPENING,
    LimitKind.ESCAPE_OPENING,
)
"""Limits that have a finding of their own."""


def impossible(opening: Opening, planes: WallPlanes, plane: float, least_depth: float) -> list[Finding]:
    """Find what keeps a window from standing with its flange in a plane [in].

    ``least_depth``: what the shop mills at the least, finished face → frame; what was measured is held to it later.
    """
    about, inside = Subject.opening(opening.mark), interior_depth(opening.window, plane)
    faults: list[Finding] = []
    low = planes.sheathing_plane if opening.window.nailing_flange else 0.0
    overhang = plane - planes.sheathing_plane
    if not low - SAME_PLANE <= plane <= planes.trim_plane + SAME_PLANE:
        faults.append(FlangeOutOfRange(subject=about, plane=plane, low=low, high=planes.trim_plane))
    elif overhang > SAME_PLANE and _nothing_carries(planes, plane):
        faults.append(NothingCarries(subject=about, overhang=overhang, wall=planes.wall.name))
    if inside < -SAME_PLANE:
        faults.append(FrameProudInside(subject=about, proud=-inside))
    if SAME_PLANE < inside < least_depth - SAME_PLANE and opening.measured is None:
        faults.append(InteriorTooShallow(subject=about, depth=inside, least=least_depth))
    return faults


def _nothing_carries(planes: WallPlanes, plane: float) -> bool:
    return planes.wall.buck is None and carrying_layer(planes, plane) is None


def depth_findings(opening: Opening, inside: float, outside: float, job: Job) -> list[Finding]:
    """Hold the interior and the exterior depth of an opening [in] against boards and limits."""
    about, found = Subject.opening(opening.mark), list[Finding]()
    if outside < -SAME_PLANE and opening.exterior:
        found.append(FrameStandsProud(subject=about, proud=-outside))
    widest, rip = widest_jamb(opening, job), jamb_rip(opening, inside, job.shop.proud)
    if widest is not None and rip > widest + SAME_PLANE and opening.interior.stack is None:
        found.append(JambWiderThanBoards(subject=about, rip=job.shop.grid.as_sawn(rip)))
    if opening.exterior and SAME_PLANE < outside < job.limits.least_exterior_depth - SAME_PLANE:
        found.append(ExteriorTooShallow(subject=about, depth=outside))
    return found


def sash_findings(opening: Opening, swing: Swing | None, limits: Limits) -> list[Finding]:
    """Hold sash and handle against what the job asks of them."""
    about, found = Subject.opening(opening.mark), list[Finding]()
    asked = limits.sash_opening_deg
    if swing and swing.greatest_deg < LEAST_OPENING_DEG:
        found.append(SashCannotOpen(subject=about, opens_deg=swing.greatest_deg, met=swing.stopped_by))
        found += _assumed_sizes(opening)
    elif swing and swing.greatest_deg < asked:
        found.append(SashStopsShort(subject=about, opens_deg=swing.greatest_deg, asked_deg=asked, met=swing.stopped_by))
        found += _assumed_sizes(opening)
    found += _handle_findings(opening, limits.handle_clearance)
    if opening.window.sash.is_side_hung and opening.hinge is None:
        found.append(NoHingeSide(subject=about))
    return found


def escape_findings(opening: Opening, swing: Swing | None, limits: Limits) -> list[Finding]:
    """Find in which ways an escape opening is none."""
    faults = escape_faults(opening, swing, limits.escape) if opening.escape else ()
    return [NotAnEscapeOpening(subject=Subject.opening(opening.mark), faults=faults)] if faults else []


def _assumed_sizes(opening: Opening) -> list[Finding]:
    """Ask for the sizes of a sash that falls short by what was assumed of it."""
    keys = tuple(key for key in opening.unstated if key.startswith("sash"))
    return [SashSizesAssumed(subject=Subject.opening(opening.mark), keys=keys)] if keys else []


def tilt_findings(opening: Opening, inside: float) -> list[Finding]:
    """Lean the head of a tilted sash in against the jamb at an interior depth [in]."""
    tilted, stay = tilt_at(opening, interior_depth=inside), tilt_stay_deg(opening)
    if tilted is None or tilted.degrees >= stay:
        return []
    about = Subject.opening(opening.mark)
    return [TiltStopsShort(subject=about, opens_deg=tilted.degrees, stay_deg=stay, met=tilted.met)]


def _handle_findings(opening: Opening, asked: float) -> list[Finding]:
    handle, stool = opening.window.handle, opening.interior.stool
    if handle is None or stool is None or Side.SILL in opening.at_mull:
        return []
    space = opening.interior.frame_reveal - handle.below_sill_face
    return [] if space >= asked else [HandleOverStool(subject=Subject.opening(opening.mark), space=space, asked=asked)]


def other_limits(opening: Opening, planes: WallPlanes, plane: float, job: Job) -> list[Finding]:
    """Find the limits that a position breaks and no other finding tells of."""
    about, broken = Subject.opening(opening.mark), broken_limits(plane, opening, planes, job)
    return [PastLimit(subject=about, broken=one) for one in broken if one.limit not in TOLD_ELSEWHERE]
