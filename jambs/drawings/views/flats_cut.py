"""A cut through the crown of an arc that flat segments follow: the middle of one, which stands in off the curve."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.job.models.curved import Curved
from jambs.job.models.openings import Job
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.section.cut_edge import cut_edge
from jambs.section.region import SectionCut


def flats_cut(kit: Kit, cut: SectionCut, job: Job, *, only: Where | None = None) -> Iterator[str]:
    """Say which frame reveal a flat segment has at its corners, where a cut goes through its middle.

    ``only``: of the boards inside or outside; of both where it is left out.
    """
    if cut_edge(kit, cut).center is None:
        return
    opening, text = kit.placement.opening, job.shop.grid.text
    trims = {Where.INTERIOR: opening.interior, Where.EXTERIOR: opening.exterior}
    reveals = {
        where: text(trim.frame_reveal)
        for where, trim in trims.items()
        if trim is not None and trim.jamb.curved is Curved.FLAT_SEGMENTS and only in (None, where)
    }
    if not reveals:
        return
    both = " and ".join(f"{reveal}{WORDS[where]}" if len(reveals) > 1 else reveal for where, reveal in reveals.items())
    yield f"cut through the middle of a flat segment, which stands in off the curve: frame reveal {both} at its corners"


WORDS = {Where.INTERIOR: " inside", Where.EXTERIOR: " outside"}
