"""What carries a window at its flange plane: buck, framing opening, weight, overhang, bearing."""

from __future__ import annotations

from jambs.job.models.fields import KG_PER_POUND, Size
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job, Opening
from jambs.length import Units, decimal_text, length_text
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Buck, Finding, Severity, Sides
from jambs.wall.planes import WallPlanes

GLASS_POUNDS_PER_SQUARE_FOOT_INCH = 13.0
"""Weight of glass, 2500 kg/m3 [lb per sq ft and inch of thickness] (density: common handbook value, from memory)."""
FRAME_POUNDS_PER_FOOT = 3.0
"""Weight of frame and sash along the outer edge [lb/ft]; assumed, common practice, no source."""
LEAST_BEARING = 0.5
"""Share of a nailing flange that bears on something solid at the least; common practice, no source."""
LEAST_SHIM = 1 / 8
"""Space round a frame below which shims no longer go in [in]; common practice, no source."""
ASSUMED_PANES, ASSUMED_PANE_THICKNESS = 2, 0.125


def carrying_layer(planes: WallPlanes, flange_plane: float) -> str | None:
    """Name what the flange lies on without a buck: the sheathing, a layer that carries; None where nothing does."""
    if abs(flange_plane - planes.sheathing_plane) < SAME_PLANE:
        return "sheathing"
    faces = (one for one in planes.layers if one.layer.carries and abs(one.outer - flange_plane) < SAME_PLANE)
    return next((one.layer.name for one in faces), None)


def buck_at(planes: WallPlanes, flange_plane: float) -> Buck | None:
    """Return the buck a flange plane needs; None where framing or a layer of the wall carries it, or clips do."""
    entry = planes.wall.buck
    if entry is None or entry.kind is BuckKind.NONE or carrying_layer(planes, flange_plane):
        return None
    if flange_plane < planes.sheathing_plane:
        return None
    inner = planes.stud_face if entry.kind is BuckKind.LINER else planes.sheathing_plane
    return Buck(
        kind=entry.kind,
        inner=inner,
        outer=flange_plane,
        thickness=entry.thickness,
        stock=entry.stock,
        set_back=entry.set_back if entry.kind is BuckKind.OUTBOARD else 0.0,
    )


def framing_opening(opening: Opening, buck: Buck | None) -> Size:
    """The hole in the framing, width × height [in]: the window's rough opening and the liner around it.

    A door's reaches from the finished floor to the head; its buck has no bottom.
    """
    rough, lining = opening.rough_opening, buck.thickness if buck and buck.kind is BuckKind.LINER else 0.0
    if opening.floor_below_frame is not None:
        return Size(width=rough.width + 2 * lining, height=rough.height + opening.floor_below_frame + lining)
    return Size(width=rough.width + 2 * lining, height=rough.height + 2 * lining)


def shims(opening: Opening) -> Sides:
    """Frame → rough opening on each side, the frame in the middle [in]; a door's frame stands on the sill."""
    side = (opening.rough_opening.width - opening.frame.width) / 2
    spare = opening.rough_opening.height - opening.frame.height
    if opening.floor_below_frame is not None:
        return Sides(left=side, right=side, head=spare, sill=0.0)
    return Sides(left=side, right=side, head=spare / 2, sill=spare / 2)


def weight_of(opening: Opening) -> tuple[float, bool]:
    """Weight of the unit [lb] and whether it is only estimated from glass and frame."""
    if opening.weight is not None:
        return opening.weight, False
    if opening.window.weight is not None:
        return opening.window.weight, False
    glass = opening.window.glass
    panes = glass.panes if glass else ASSUMED_PANES
    thickness = glass.pane_thickness if glass else ASSUMED_PANE_THICKNESS
    area = opening.frame.width * opening.frame.height / 144
    around = 2 * (opening.frame.width + opening.frame.height) / 12
    return area * panes * thickness * GLASS_POUNDS_PER_SQUARE_FOOT_INCH + around * FRAME_POUNDS_PER_FOOT, True


def weight_text(pounds: float, units: Units) -> str:
    """Print a weight in the job's units: ``85 lb``, ``39 kg``."""
    return f"{pounds * KG_PER_POUND:.0f} kg" if units is Units.MM else f"{decimal_text(pounds, 0)} lb"


def carrying_findings(
    opening: Opening, planes: WallPlanes, flange_plane: float, buck: Buck | None, job: Job
) -> list[Finding]:
    """What the reader must know of how the window is carried."""
    pounds, _ = weight_of(opening)
    overhang = flange_plane - planes.sheathing_plane
    found = [*_engineer(pounds, overhang if buck else 0.0, job)]
    if buck:
        found += [*_bearing(opening, buck, job), _fasteners(opening, buck, overhang, job)]
    if opening.floor_below_frame is not None and overhang > SAME_PLANE:
        text = (
            f"The threshold stands {_text(overhang, job)} and more outside the sheathing: carry it over its whole "
            "width, with a pan under it; no part of this kit does."
        )
        found.append(Finding(weight=Severity.CHECK, text=text))
    return [*found, *_space(opening, job)]


def _space(opening: Opening, job: Job) -> list[Finding]:
    """Say where the frame has less room in its rough opening than the shop wants for shims."""
    around, least = shims(opening), job.shop.shim_space
    sides = {"sides": min(around.left, around.right), "head": around.head}
    if opening.floor_below_frame is None:
        sides["sill"] = around.sill
    return [
        Finding(
            weight=Severity.CHECK,
            text=f"The frame has {_text(gap, job)} to its rough opening at the {where}, the shop wants "
            f"{_text(least, job)} for shims.",
        )
        for where, gap in sides.items()
        if gap < min(least, LEAST_SHIM) - SAME_PLANE
    ]


def _engineer(pounds: float, overhang: float, job: Job) -> list[Finding]:
    past = []
    if overhang > job.limits.overhang + SAME_PLANE:
        past.append(f"stands {_text(overhang, job)} past the framing, the limit is {_text(job.limits.overhang, job)}")
    if pounds > job.limits.weight:
        limit = weight_text(job.limits.weight, job.units)
        past.append(f"weighs about {weight_text(pounds, job.units)}, the limit is {limit}")
    if not past:
        return []
    return [Finding(weight=Severity.CHECK, text=f"Needs an engineer: the window {' and '.join(past)}.")]


def _bearing(opening: Opening, buck: Buck, job: Job) -> list[Finding]:
    flange = opening.window.flange_width
    if not opening.window.nailing_flange or flange is None:
        return []
    around = shims(opening)
    gap = max(around.left, around.right, around.head, around.sill) + buck.set_back
    over = flange - gap
    bears = max(min(buck.thickness, over), 0.0)
    if bears >= LEAST_BEARING * flange - SAME_PLANE and buck.thickness >= over - SAME_PLANE:
        return []
    text = (
        f"The nailing flange is {_text(flange, job)} wide, lies over a gap of {_text(gap, job)} and bears on "
        f"{_text(bears, job)} of buck; "
    )
    if buck.thickness < over - SAME_PLANE:
        text += f"a buck {_text(over, job)} thick, or a strip beside it, bears all of it."
    else:
        text += "bring the buck nearer to the frame: smaller rough opening, less set back."
    return [Finding(weight=Severity.CHECK, text=text)]


def _fasteners(opening: Opening, buck: Buck, overhang: float, job: Job) -> Finding:
    if buck.kind is BuckKind.LINER:
        sides = "four" if opening.floor_below_frame is None else "three"
        text = (
            f"The liner buck stands {_text(overhang, job)} out of the framing: "
            f"fasten it to the studs on all {sides} sides."
        )
    else:
        text = (
            f"The outboard buck is {_text(overhang, job)} deep: screws through it must reach the framing behind the "
            "sheathing with the penetration the local code or an engineer asks for."
        )
    return Finding(weight=Severity.NOTE, text=text)


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
