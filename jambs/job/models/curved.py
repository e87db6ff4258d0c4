"""How what goes round an arch is made, as the job file states it."""

from __future__ import annotations

from enum import StrEnum


class Curved(StrEnum):
    """How a jamb round an arch is made: bent in one, all arcs of an ellipse arch are one lamination over one form.

    One that flares is part of a cone, and made in flat segments: straight boards with compound miters.
    """

    BENT_LAMINATIONS = "bent laminations"
    BENT_IN_ONE = "bent in one"
    SAWN_SEGMENTS = "sawn segments"
    FLAT_SEGMENTS = "flat segments"
