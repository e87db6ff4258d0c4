"""The usual cautions, printed where the work can hurt someone."""

from __future__ import annotations

from jambs.job.models.layers import Layer, MadeOf
from jambs.parts.kinds import Where
from jambs.parts.part import Part
from jambs.place.placement import Placement

SAW = "Saw: guard, riving knife and push block; rip narrow strips from a wide blank; cut short pieces off a long one."
GLASS = "Glass: two people and gloves to lift a window; never lean on the sash while it is only tacked."
HEIGHT = "Height: work from staging with rails, not from a ladder with a window in your hands."
FOAM = (
    "Foam and fire: foam plastic needs a thermal barrier toward the room, often gypsum board (IRC R316.4); "
    "the local code decides."
)
STRUCTURE = (
    "Structure: what carries the window and the cladding is for the engineer and the local code; "
    "this sheet only adds depths."
)
PAINT = "Old paint: test for lead before sanding or cutting old trim; the local rules decide."


def cautions(placement: Placement, parts: tuple[Part, ...]) -> tuple[str, ...]:
    """List the cautions that fit this opening."""
    found = [SAW, GLASS]
    if any(part.where is Where.EXTERIOR for part in parts):
        found.append(HEIGHT)
    if any(_is_foam(one.layer) or (one.layer.cavity and _is_foam(one.layer.cavity)) for one in placement.planes.layers):
        found.append(FOAM)
    if placement.buck is not None:
        found.append(STRUCTURE)
    return (*found, PAINT)


def _is_foam(layer: Layer) -> bool:
    return layer.made_of is MadeOf.FOAM
