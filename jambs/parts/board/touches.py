"""What is done to a part by hand or by bending, and leaves the shape that is modeled as it is."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.parts.board.bent_metal import BentProfile
from jambs.parts.board.cuts import End


@dataclass(frozen=True, slots=True, kw_only=True)
class Scribe:
    """Scribe the far edge to a crooked wall; ``most``: what may come off [in]."""

    most: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ToOpening:
    """Cut to length to what another crew lines the opening with, once it is finished."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BackBevel:
    """Ease the miters toward the back, so that they close at the face."""

    angle_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Return:
    """A short piece that turns one mitered end back to the wall."""

    end: End


@dataclass(frozen=True, slots=True, kw_only=True)
class StripBend:
    """Bend a plain strip of metal over the casing: legs, and what stays past and above it [in]."""

    upstand: float
    top: float
    drip: float
    past_casing: float
    gap_to_cladding: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankBend:
    """Bend a planned blank of metal: how many bends, the first from the upper edge, and what stays round it [in]."""

    bends: int
    first_at: float
    end_dam: float
    past_casing: float
    gap_to_cladding: float


@dataclass(frozen=True, slots=True, kw_only=True)
class UncasedStrip(StripBend):
    """A strip over the head of an opening that metal returns: out under the cladding, its ends past the face legs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UncasedBlank(BlankBend):
    """A planned blank over the head of an opening that metal returns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StripOverReturn(StripBend):
    """A strip over the head of an opening that mitered cladding returns: out over the head return, past its ends."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankOverReturn(BlankBend):
    """A planned blank over the head of an opening that mitered cladding returns."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalCorner:
    """How an end of metal along an edge of a shape meets the next: the path turns, the upper one laps the lower.

    ``past``: how far the edge of its face leg reaches past the corner, mitered at half of the turn; ``lap``: over the
    next, beyond the miter and on the return; none where the next one laps it [in].
    """

    turn_deg: float
    past: float
    lap: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnBend:
    """Bend a blank of metal to line an opening: its legs at the deeper end, what is turned at both ends [in].

    ``foot_deg``: off square, to which the foot of a side is snipped. ``corners``: along an edge of a shape, of its
    start and its finish; None where it ends at a foot.
    """

    profile: BentProfile
    lap: float
    foot_deg: float = 0.0
    corners: tuple[MetalCorner | None, MetalCorner | None] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodMoves:
    """Leave room for wood that moves: change of the width from the shop to winter and to summer [in], growth positive.

    ``is_about``: its moisture leaves the range in which the coefficients hold.
    """

    winter: float
    summer: float
    is_about: bool = False


Touch = Scribe | ToOpening | BackBevel | Return | StripBend | BlankBend | ReturnBend | WoodMoves
