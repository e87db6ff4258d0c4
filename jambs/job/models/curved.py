"""How what goes round an arch is made, as the job file states it."""

from __future__ import annotations

from enum import StrEnum


class Curved(StrEnum):
    """How a jamb round an arch is made."""

    BENT_LAMINATIONS = "bent laminations"
    SAWN_SEGMENTS = "sawn segments"
