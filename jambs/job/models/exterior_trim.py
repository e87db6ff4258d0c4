"""Exterior trim as the job file states it."""

from __future__ import annotations

import math
from typing import Annotated, Any

from pydantic import ConfigDict, model_validator

from jambs.job.models.cladding_returns import CladdingReturnsEntry, OutsideCorner
from jambs.job.models.curved import Curved
from jambs.job.models.fields import Depth, Fit, Model, Offered, Reveal, Slope, Small, Text, Thickness, fault
from jambs.job.models.flare import FlareEntry
from jambs.job.models.gang import MullCasingEntry
from jambs.job.models.metal_returns import MetalReturnsEntry
from jambs.job.models.trim import NO_CASING, CasingEntry
from jambs.sides import Side


class DripKerf(Model):
    """The groove under the sill's nosing that makes water drop: width, depth, set back from the front edge [in]."""

    width: Fit
    depth: Reveal
    set_back: Reveal


class SillEntry(Model):
    """The exterior sill: falls outward by ``slope``, its nosing past the cladding face.

    ``under_frame``: how far it runs in under the frame from the frame's outside edge.
    """

    thickness: Thickness
    stock: Text
    slope: Slope
    nosing: Small
    horn: Small
    drip_kerf: DripKerf
    under_frame: Small = 0.0

    @model_validator(mode="after")
    def _kerf_fits(self) -> SillEntry:
        if self.drip_kerf.depth >= self.thickness:
            raise fault("drip_kerf goes through the sill; write a depth less than the thickness of the sill")
        if self.drip_kerf.depth * math.tan(math.radians(self.slope)) > self.drip_kerf.set_back:
            raise fault("drip_kerf breaks out of the sloping front edge; write a larger set_back or a smaller depth")
        return self


class HeadFlashing(Model):
    """Metal over the head casing [in]: past the casing at each end, up behind the membrane, drip out and down."""

    past_casing: Small
    upstand: Depth
    drip: Small
    gap_to_cladding: Small

    @model_validator(mode="after")
    def _stands_up(self) -> HeadFlashing:
        if not self.upstand:
            raise fault(
                "upstand is 0, so water runs in behind the metal; write how far it goes up behind the membrane, like "
                "3 in or 80 mm"
            )
        return self


class ExteriorJambEntry(Model):
    """Exterior extension jamb boards; ``curved``: how the one under an arch is made: sawn, or where it flares flat."""

    thickness: Thickness
    stock: Text
    curved: Annotated[Curved, Offered(words=(Curved.SAWN_SEGMENTS, Curved.FLAT_SEGMENTS))] | None = None


NO_JAMB = ExteriorJambEntry.model_construct(thickness=0.0, stock="", curved=None)
"""An exterior jamb that is not there: sums over it go on."""


def _is_mitered(clad: Any) -> bool:
    """Say whether cladding returns, as they are read or as the job file has them, have a mitered corner."""
    found = clad.get("corner") if isinstance(clad, dict) else getattr(clad, "corner", None)
    return found == OutsideCorner.MITERED.value


def _let_out(schema: dict[str, Any]) -> None:
    """Let an editor accept trim of bent metal: what it does without is asked for when the job is read."""
    schema["required"] = ["frame_reveal", "sealant_joint", "head_flashing"]


class ExteriorTrim(Model):
    """Exterior trim: jambs on head and legs to the trim plane, sill, casing, head flashing, sealant joint.

    Where bent metal returns the wall, ``jamb`` is NO_JAMB and ``casing`` NO_CASING. Where cladding does, ``jamb`` is
    NO_JAMB, and ``casing`` is the leg of the corner board on the wall; NO_CASING where the corner is mitered.
    """

    model_config = ConfigDict(json_schema_extra=_let_out)

    jamb: ExteriorJambEntry
    frame_reveal: Reveal
    sealant_joint: Reveal
    casing_reveal: Reveal
    casing: CasingEntry
    sill: SillEntry | None = None
    head_flashing: HeadFlashing
    mull_casing: MullCasingEntry | None = None
    returns: MetalReturnsEntry | None = None
    cladding_returns: CladdingReturnsEntry | None = None
    flare: FlareEntry | None = None

    @property
    def is_cased(self) -> bool:
        """Say whether casing lies round the opening on the wall."""
        return self.casing is not NO_CASING

    @model_validator(mode="before")
    @classmethod
    def _without(cls, value: Any) -> Any:
        """Let returns do without a jamb; of bent metal, and of cladding that is mitered, without casing too."""
        if not isinstance(value, dict):
            return value
        clad = value.get("cladding_returns")
        if not value.get("returns") and not clad:
            return value
        if clad and not _is_mitered(clad):
            return {"jamb": NO_JAMB, **value}
        return {"jamb": NO_JAMB, "casing": NO_CASING, "casing_reveal": "0", **value}

    @model_validator(mode="after")
    def _returned(self) -> ExteriorTrim:
        if self.returns and (self.jamb is not NO_JAMB or self.casing is not NO_CASING or self.sill):
            raise fault(
                "gives returns of bent metal and also jamb, casing or sill, which are of wood; keep one of both (a "
                "sill of metal is written in returns)"
            )
        if self.returns and self.mull_casing:
            raise fault("gives returns of bent metal and mull_casing, which covers mulls of wooden trim; remove it")
        return self

    @model_validator(mode="after")
    def _clad(self) -> ExteriorTrim:
        clad = self.cladding_returns
        if clad is None:
            return self
        if self.returns:
            raise fault("gives returns of bent metal and cladding_returns; keep one of both")
        if self.jamb is not NO_JAMB:
            raise fault("gives cladding_returns and also jamb, in whose place cladding lines the reveal; remove jamb")
        if clad.is_mitered and self.casing is not NO_CASING:
            raise fault(
                "gives cladding_returns with a mitered corner and also casing, which would cover it; remove casing, or "
                "write corner: corner boards, whose leg on the wall it is"
            )
        if clad.corner_board and self.casing_reveal >= clad.corner_board.thickness:
            raise fault("casing_reveal is as wide as corner_board is thick, so the casing bears on nothing; write less")
        if self.flare:
            raise fault(
                "gives flare and cladding_returns, whose furring and corner stand square to the wall; keep one of both "
                "(wooden jambs flare)"
            )
        return self

    @model_validator(mode="after")
    def _flare_stands(self) -> ExteriorTrim:
        if self.flare and self.returns:
            raise fault("gives flare and returns of bent metal, which stand square; keep one of both")
        if self.flare and self.flare.at(Side.SILL):
            raise fault("flare leans the sill, which falls outside by its slope; write sill: 0 and the slope in sill")
        return self

    @model_validator(mode="after")
    def _bears(self) -> ExteriorTrim:
        if self.jamb is not NO_JAMB and self.casing_reveal >= self.jamb.thickness:
            raise fault("casing_reveal is as wide as the jamb is thick, so the casing bears on nothing; write less")
        return self
