"""Place every window of a job: one position per wall type unless an opening says otherwise."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence

from jambs.job.models.openings import Job, Opening
from jambs.job.models.windows import Sash
from jambs.length import length_text
from jambs.place.alternatives import alternatives, broken_limits, next_best
from jambs.place.choose import Chosen, LimitClash
from jambs.place.depths import exterior_depth, interior_depth, share_at
from jambs.place.limits import SAME_PLANE, widest_jamb
from jambs.place.placement import Finding, Placement, Severity, Swing
from jambs.place.rules import LeastHeatLoss, RuleError, flange_plane_for
from jambs.place.sash import escape_faults, swing_at
from jambs.place.support import (
    buck_at,
    carrying_findings,
    carrying_layer,
    framing_opening,
    shims,
    weight_of,
)
from jambs.wall.planes import WallError, WallPlanes, stack_wall


class PlaceError(Exception):
    """Windows that cannot be placed; ``sentences`` holds one for each."""

    def __init__(self, sentences: Sequence[str]) -> None:
        super().__init__("\n".join(sentences))
        self.sentences = tuple(sentences)


def place_windows(job: Job, *, least_heat_loss: LeastHeatLoss | None = None) -> tuple[Placement, ...]:
    """Place all openings of a job, in the order of the job.

    ``least_heat_loss``: the heat study, for the rule of that name.

    Raises:
        PlaceError: some cannot stand where they are asked to; every one is named.
    """
    sentences: list[str] = []
    planes = _stacked(job, sentences)
    chosen = _chosen(job, planes, sentences, least_heat_loss)
    placed = []
    for opening in job.openings:
        if opening.mark in chosen:
            found = _place(opening, planes[opening.wall.name], *chosen[opening.mark], job)
            placed.append(found) if isinstance(found, Placement) else sentences.extend(found)
    if sentences:
        raise PlaceError(sentences)
    return tuple(placed)


def place_at(opening: Opening, planes: WallPlanes, flange_plane: float, job: Job) -> Placement:
    """Place one opening with its flange on a given plane [in]: a position that is weighed, not one a rule chose.

    Raises:
        PlaceError: it cannot stand there.
    """
    chosen = Chosen(flange_plane=flange_plane, reasons=())
    found = _place(opening, planes, chosen, opening, job)
    if not isinstance(found, Placement):
        raise PlaceError(found)
    return found


def _stacked(job: Job, sentences: list[str]) -> dict[str, WallPlanes]:
    found: dict[str, WallPlanes] = {}
    for opening in job.openings:
        if opening.wall.name not in found:
            try:
                found[opening.wall.name] = stack_wall(opening.wall, grid=job.shop.grid)
            except WallError as error:
                sentences.append(str(error))
    return found


def _chosen(
    job: Job, planes: dict[str, WallPlanes], sentences: list[str], least_heat_loss: LeastHeatLoss | None
) -> dict[str, tuple[Chosen, Opening]]:
    """Work out one flange plane for each wall type and for each opening with a rule of its own; name the lead."""
    groups: dict[str, list[Opening]] = defaultdict(list)
    for opening in job.openings:
        if opening.wall.name in planes:
            key = f"opening {opening.mark}" if opening.position_is_own else f"wall {opening.wall.name!r}"
            groups[key].append(opening)
    chosen: dict[str, tuple[Chosen, Opening]] = {}
    for group, openings in groups.items():
        lead = _lead(openings)
        try:
            wall = planes[lead.wall.name]
            one = flange_plane_for(lead.position, lead, openings, wall, job, least_heat_loss=least_heat_loss)
            chosen |= {opening.mark: (one, lead) for opening in openings}
        except (RuleError, LimitClash) as error:
            sentences.append(f"{group}: {error}.")
    return chosen


def _lead(openings: Sequence[Opening]) -> Opening:
    """The first opening with the commonest window: the wall's position is worked out for it."""
    commonest = Counter(opening.window_name for opening in openings).most_common(1)[0][0]
    return next(opening for opening in openings if opening.window_name == commonest)


def _place(opening: Opening, planes: WallPlanes, chosen: Chosen, lead: Opening, job: Job) -> Placement | list[str]:
    plane = chosen.flange_plane
    inside = interior_depth(opening.window, plane)
    outside = exterior_depth(opening.window, planes, plane)
    faults = _impossible(opening, planes, plane, inside, job)
    if faults:
        return faults
    buck = buck_at(planes, plane)
    swing = swing_at(opening, interior_depth=inside, exterior_depth=outside)
    weight, assumed = weight_of(opening)
    weighed = alternatives(opening, planes, job)
    return Placement(
        opening=opening,
        planes=planes,
        flange_plane=plane,
        interior_depth=inside,
        exterior_depth=outside,
        share=share_at(planes, plane),
        buck=buck,
        framing_opening=framing_opening(opening, buck),
        shims=shims(opening),
        weight=weight,
        weight_is_assumed=assumed,
        swing=swing,
        reasons=(*chosen.reasons, _own_or_shared(opening, lead), next_best(plane, weighed)),
        alternatives=weighed,
        findings=(
            *_depth_findings(opening, inside, outside, job),
            *carrying_findings(opening, planes, plane, buck, job),
            *_sash_findings(opening, swing, job),
            *_other_limits(opening, planes, plane, job),
        ),
    )


def _own_or_shared(opening: Opening, lead: Opening) -> str:
    if opening.position_is_own:
        return "This opening has a position of its own."
    worked_out = "" if opening.window_name == lead.window_name else f", worked out for window {lead.window_name!r}"
    return f"One position for all openings of wall {opening.wall.name!r}{worked_out}."


def _impossible(opening: Opening, planes: WallPlanes, plane: float, inside: float, job: Job) -> list[str]:
    faults = []
    low = planes.sheathing_plane if opening.window.nailing_flange else 0.0
    if not low - SAME_PLANE <= plane <= planes.trim_plane + SAME_PLANE:
        faults.append(
            f"{opening.mark}: the flange plane would be at {_text(plane, job)}; allowed is {_text(low, job)} "
            f"(sheathing) to {_text(planes.trim_plane, job)} (trim plane); change its position."
        )
    elif plane > planes.sheathing_plane + SAME_PLANE and _nothing_carries(planes, plane):
        overhang = _text(plane - planes.sheathing_plane, job)
        faults.append(
            f"{opening.mark}: the flange stands {overhang} outside the sheathing and nothing carries it; "
            f"give wall {planes.wall.name!r} a buck, or mark a layer 'carries: yes' that ends at the flange plane."
        )
    if inside < -SAME_PLANE:
        faults.append(
            f"{opening.mark}: the frame would stand {_text(-inside, job)} proud of the finished wall inside and no "
            f"casing goes round it; move the window out by {_text(-inside, job)} or more."
        )
    least = job.limits.least_interior_depth
    if SAME_PLANE < inside < least - SAME_PLANE and opening.measured is None:
        faults.append(
            f"{opening.mark}: the interior depth is {_text(inside, job)}, the shop mills none under "
            f"{_text(least, job)}; move the window out by {_text(least - inside, job)} or more, "
            f"or in by {_text(inside, job)}."
        )
    return faults


def _nothing_carries(planes: WallPlanes, plane: float) -> bool:
    return planes.wall.buck is None and carrying_layer(planes, plane) is None


def _depth_findings(opening: Opening, inside: float, outside: float, job: Job) -> list[Finding]:
    found = []
    if outside < -SAME_PLANE and opening.exterior:
        text = (
            f"The frame stands {_text(-outside, job)} proud of the trim plane: casing round it, "
            "no exterior jambs and no sloping sill."
        )
        found.append(Finding(weight=Severity.NOTE, text=text))
    widest = widest_jamb(opening, job)
    if widest is not None and inside + job.shop.proud > widest + SAME_PLANE:
        rip = _text(inside + job.shop.proud, job)
        text = f"The interior jamb is {rip} wide, wider than any board at hand: glued strips."
        found.append(Finding(weight=Severity.CHECK, text=text))
    if opening.exterior and SAME_PLANE < outside < job.limits.least_exterior_depth - SAME_PLANE:
        text = (
            f"The exterior depth is {_text(outside, job)}, too little for jambs and a sloping sill: none are made; "
            "fill it with sealant and backer, or move the window."
        )
        found.append(Finding(weight=Severity.CHECK, text=text))
    return found


def _sash_findings(opening: Opening, swing: Swing | None, job: Job) -> list[Finding]:
    found = []
    if swing and swing.greatest_deg < job.limits.sash_opening_deg:
        text = (
            f"The sash opens {swing.greatest_deg:.0f}° and meets {swing.stopped_by}; "
            f"{job.limits.sash_opening_deg:.0f}° is asked."
        )
        found.append(Finding(weight=Severity.CHECK, text=text))
    found += _handle_findings(opening, job)
    if opening.window.sash in HINGED_AT_A_SIDE and opening.hinge is None:
        text = "No hinge side is stated: give hinge: left or right, as seen from inside, before you order."
        found.append(Finding(weight=Severity.CHECK, text=text))
    if opening.escape:
        faults = escape_faults(opening, swing, job.limits.escape, job.units)
        if faults:
            text = f"Not an escape opening: {'; '.join(faults)}. The local code decides."
            found.append(Finding(weight=Severity.CHECK, text=text))
    return found


def _handle_findings(opening: Opening, job: Job) -> list[Finding]:
    handle, stool = opening.window.handle, opening.interior.stool
    if handle is None or stool is None:
        return []
    space = opening.interior.frame_reveal - handle.below_sill_face
    if space >= job.limits.handle_clearance:
        return []
    over = f"{_text(space, job)} over" if space >= 0 else f"{_text(-space, job)} below"
    text = (
        f"The handle ends {over} the top of the stool; {_text(job.limits.handle_clearance, job)} is asked to turn it."
    )
    return [Finding(weight=Severity.CHECK, text=text)]


HINGED_AT_A_SIDE = (Sash.CASEMENT_OUT, Sash.CASEMENT_IN, Sash.DOOR_OUT, Sash.DOOR_IN)
TOLD_ELSEWHERE = (
    "interior jamb out of one board",
    "least exterior depth",
    "greatest overhang",
    "sash opening",
    "escape opening",
)


def _other_limits(opening: Opening, planes: WallPlanes, plane: float, job: Job) -> list[Finding]:
    broken = broken_limits(plane, opening, planes, job)
    texts = (text for text in broken if not text.startswith(TOLD_ELSEWHERE))
    return [Finding(weight=Severity.CHECK, text=f"Past a limit: {text}.") for text in texts]


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
