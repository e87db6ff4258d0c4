"""One window held at a place in its wall: where it may settle, what is made of it there.

Everything comes from the functions that print (``place_at``, ``make_kit``, ``cut_sections``); this file chooses the
plane that is nearest to where the hand is: a place that has a name, else the next step of the shop's grid.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Reason
from jambs.job import Job
from jambs.job.models.openings import Opening
from jambs.length import Units
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError, make_kit
from jambs.place.alternatives import alternatives
from jambs.place.choose import asked_by
from jambs.place.depths import exterior_depth, interior_depth
from jambs.place.limits import FAR, SAME_PLANE, Range, ranges
from jambs.place.placement import Placement
from jambs.place.reasons import AskedInteriorDepth, DepthsMadeEqual, OnFace, PositionKind, ShareTakenInside
from jambs.place.solve import PlaceError, lead_of, place_at
from jambs.wall.planes import WallPlanes

LEAST_HEAT, HELD_NOW = "least heat", "where it stands in the job"
Rule = dict[str, str] | str
"""A position rule as the job file writes it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A place that has a name: its flange plane [in], the rule that asks for it in the job file, and its reason."""

    name: str
    plane: float
    rule: Rule
    reason: Reason


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldWindow:
    """The openings that move together, the one that is looked at, and the one that the plane is worked out for.

    ``limits``: of the flange plane of all that move together, the narrowest of each kind; ``book``: marks of the parts.
    """

    opening: Opening
    lead: Opening
    together: tuple[Opening, ...]
    planes: WallPlanes
    job: Job
    limits: tuple[Range, ...]
    book: MarkBook = NO_MARKS

    def depth(self, plane: float) -> float:
        """Interior depth of the leading window [in], which lies on the shop's grid."""
        return interior_depth(self.lead.window, plane)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stood:
    """A window that stands at a plane [in]. ``named``: the place it settled on, if it has a name."""

    plane: float
    named: Named | None
    kit: Kit


def held(opening: Opening, placement: Placement, job: Job, *, alone: bool, book: MarkBook = NO_MARKS) -> HeldWindow:
    """Take hold of an opening, alone or with all that share its position; ``book``: the marks its parts have."""
    group = tuple(one for one in job.openings if asked_by(one) == asked_by(opening))
    together = (opening,) if alone else group
    return HeldWindow(
        opening=opening,
        lead=opening if alone else lead_of(together),
        together=together,
        planes=placement.planes,
        job=job,
        limits=_limits_of(together, placement.planes, job),
        book=book,
    )


def named_places(hand: HeldWindow, *, now: float | None = None, least_heat: float | None = None) -> tuple[Named, ...]:
    """Return the places that a window settles on, inside → outside; ``now``: where it stands in the job [in]."""
    units = hand.job.units
    found = []
    for one in alternatives(hand.lead, hand.planes, hand.job):
        rule, reason = _rule_of(one.name.kind, one.flange_plane, hand)
        found.append(Named(name=one.name.words(units), plane=one.flange_plane, rule=rule, reason=reason))
    if least_heat is not None and not _is_near(least_heat, found):
        found.append(_by_depth(LEAST_HEAT, least_heat, hand))
    if now is not None and not _is_near(now, found):
        found.append(_by_depth(HELD_NOW, now, hand))
    return tuple(sorted(found, key=lambda one: one.plane))


def _is_near(plane: float, found: Sequence[Named]) -> bool:
    return any(abs(one.plane - plane) < SAME_PLANE for one in found)


def _rule_of(kind: PositionKind, plane: float, hand: HeldWindow) -> tuple[Rule, Reason]:
    if kind is PositionKind.ON_SHEATHING:
        return {"flange_on": "sheathing"}, OnFace(face="sheathing", has_flange=hand.lead.window.nailing_flange)
    if kind is PositionKind.ON_TRIM_PLANE:
        return {"flange_on": "trim plane"}, OnFace(face="trim plane", has_flange=hand.lead.window.nailing_flange)
    if kind is PositionKind.EQUAL_DEPTHS:
        return "equal depths", DepthsMadeEqual()
    if kind is PositionKind.SHARED_EQUALLY:
        return {"share": "1/2"}, ShareTakenInside(share=0.5, added_depth=hand.planes.added_depth)
    by_depth = _by_depth("", plane, hand)
    return by_depth.rule, by_depth.reason


def _by_depth(name: str, plane: float, hand: HeldWindow) -> Named:
    depth = hand.depth(plane)
    return Named(
        name=name,
        plane=plane,
        rule={"interior_depth": rule_text(depth, hand.job)},
        reason=AskedInteriorDepth(depth=depth),
    )


def rule_text(depth: float, job: Job) -> str:
    """Write a depth [in] as the job file does: ``4 11/16``, ``119``, in the units of the job."""
    return job.units.text(depth).removesuffix('"').removesuffix(" mm")


def _limits_of(together: Sequence[Opening], planes: WallPlanes, job: Job) -> tuple[Range, ...]:
    found: dict[str, Range] = {}
    for opening in together:
        for one in ranges(opening, planes, job, proud_outside=False):
            before = found.get(one.limit)
            if before is None or one.high - one.low < before.high - before.low:
                found[one.limit] = one
    return tuple(found.values())


def settle(hand: HeldWindow, wanted: float, places: Sequence[Named], *, reach: float) -> tuple[float, Named | None]:
    """Return the plane on which a window settles that is wanted near a plane [in], and the name of the place.

    ``reach``: how near a named place takes it [in].
    """
    whole = ranges(hand.lead, hand.planes, hand.job, proud_outside=False)[0]
    low, high = max(whole.low, -FAR), min(whole.high, FAR)
    wanted = min(max(wanted, low), high)
    near = min(places, key=lambda one: abs(one.plane - wanted), default=None)
    if near is not None and abs(near.plane - wanted) <= reach:
        return near.plane, near
    jamb_depth, grid = hand.lead.window.jamb_depth, hand.job.shop.grid
    plane = jamb_depth + grid.round(wanted - jamb_depth)
    plane += grid.step if plane < low - SAME_PLANE else -grid.step if plane > high + SAME_PLANE else 0.0
    there = next((one for one in places if abs(one.plane - plane) < SAME_PLANE), None)
    return (there.plane if there else plane), there


def stand(hand: HeldWindow, plane: float, named: Named | None = None) -> Stood:
    """Make the parts of the opening that is looked at, with its flange on a plane [in].

    Raises:
        FindingsError: it cannot stand there, or its parts cannot be made.
    """
    kit = make_kit(place_at(hand.opening, hand.planes, plane, hand.job), hand.job, hand.book)
    return Stood(plane=plane, named=named, kit=kit)


def others_wrong(hand: HeldWindow, plane: float) -> tuple[str, ...]:
    """Say what keeps one of the others that move along from standing with its flange on a plane [in]."""
    said: list[str] = []
    for one in hand.together:
        if one.mark != hand.opening.mark:
            try:
                make_kit(place_at(one, hand.planes, plane, hand.job), hand.job)
            except (PlaceError, PartsError) as error:
                said += error.sentences(hand.job.units)
    return tuple(said)


def why_words(stood: Stood, hand: HeldWindow) -> str:
    """Say why it stands there, in the sentences of the papers."""
    units = hand.job.units
    reason = stood.named.reason if stood.named else AskedInteriorDepth(depth=hand.depth(stood.plane))
    return " ".join([reason.sentence(units), *(one.sentence(units) for one in stood.kit.placement.reasons[-1:])])


def depths_words(opening: Opening, planes: WallPlanes, plane: float, units: Units) -> tuple[str, str]:
    """Return interior and exterior depth of an opening with its flange on a plane [in], as printed."""
    return (
        units.text(interior_depth(opening.window, plane)),
        units.text(exterior_depth(opening.window, planes, plane)),
    )
