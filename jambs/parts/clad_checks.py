"""What cladding that returns to the frame cannot be, and what is to be seen to."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.findings import Finding, Subject
from jambs.job.models.layers import Layer, MadeOf, Role
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.findings.cladding_findings import (
    CornerLapsShort,
    CornerThinnerThanCladding,
    FurringOnInsulation,
    ReturnEndUnbacked,
    RevealTooShallow,
    SillShortOfReturns,
)
from jambs.parts.jambs.box import LEAST_COVER
from jambs.parts.trim.cladding_returns import LEAST_BEARING, ReturnReveal, corner_past
from jambs.parts.trim.exterior_sill import SillPlace
from jambs.place.placement import Placement

LEAST_RETURN = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""Width of a return that still can be cut and nailed [in]; common practice, no source."""


def hold_deep_enough(reveal: ReturnReveal, mark: str, units: Units) -> None:
    """Hold a reveal deep enough for some cladding to be returned.

    Raises:
        CannotBeCut: too little is left of it.
    """
    least = reveal.start + (reveal.trim_plane - reveal.return_end) + LEAST_RETURN[units]
    if reveal.trim_plane < least - SAME_SIZE:
        raise CannotBeCut(RevealTooShallow(subject=Subject.opening(mark), depth=reveal.trim_plane, least=least))


def hold_under_the_legs(place: SillPlace, mark: str) -> None:
    """Hold the sill to all that stands over it.

    Raises:
        CannotBeCut: it ends short of the furring.
    """
    short = -min(place.notches)
    if short > SAME_SIZE:
        raise CannotBeCut(SillShortOfReturns(subject=Subject.opening(mark), short=short))


def clad_findings(placement: Placement, reveal: ReturnReveal, units: Units) -> Iterator[Finding]:
    """Find what is to be seen to at a reveal that cladding lines."""
    trim, about = placement.opening.exterior, Subject.opening(placement.opening.mark)
    entry = trim.cladding_returns if trim else None
    if trim is None or entry is None:
        return
    bearing = reveal.return_end - reveal.strips[-1][0]
    if entry.corner_board and bearing < LEAST_BEARING[units] - SAME_SIZE:
        yield ReturnEndUnbacked(subject=about, bearing=bearing, least=LEAST_BEARING[units])
    cladding = placement.planes.cladding_depth
    if entry.corner_board and trim.casing.thickness < cladding - SAME_SIZE:
        yield CornerThinnerThanCladding(subject=about, thickness=trim.casing.thickness, cladding=cladding)
    lap = trim.casing.width + trim.casing_reveal - corner_past(entry) - entry.back
    if entry.corner_board and lap < LEAST_COVER[units] - SAME_SIZE:
        yield CornerLapsShort(subject=about, lap=lap, least=LEAST_COVER[units])
    yield from _on_insulation(placement, about)


def insulation_behind_returns(placement: Placement) -> tuple[tuple[Layer, float], ...]:
    """Return the insulation whose cut edge lies behind returns, past the frame, and how deep it does [in].

    The frame's outside edge lies farther out than any buck, which ends at the flange plane.
    """
    start = placement.outside_edge
    return tuple(
        (one.layer, one.outer - max(one.inner, start))
        for one in placement.planes.layers
        if one.layer.role is Role.INSULATION and one.outer - start > SAME_SIZE
    )


def _on_insulation(placement: Placement, about: Subject) -> Iterator[Finding]:
    found = insulation_behind_returns(placement)
    if found:
        yield FurringOnInsulation(
            subject=about,
            layers=tuple(dict.fromkeys(layer.name for layer, _ in found)),
            deep=sum(deep for _, deep in found),
            is_foam=any(layer.made_of is MadeOf.FOAM for layer, _ in found),
        )
