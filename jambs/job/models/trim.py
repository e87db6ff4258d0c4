"""Interior trim as the job file states it, and the casing of both sides."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, ConfigDict, WithJsonSchema, model_validator

from jambs.job.models.built_up import BuiltUpEntry
from jambs.job.models.curved import Curved
from jambs.job.models.fields import (
    NUMBER,
    Amount,
    BoardWidth,
    Model,
    Reveal,
    Small,
    Text,
    Thickness,
    fault,
)
from jambs.job.models.flare import FlareEntry
from jambs.job.models.gang import MullCasingEntry
from jambs.job.models.panels import PanelsEntry
from jambs.job.models.profile import Profile, profile_misfit
from jambs.job.models.returns import ReturnsEntry, TileSillEntry, WallEdgeEntry
from jambs.job.models.stack import StackEntry
from jambs.sides import Side


class InteriorStyle(StrEnum):
    """How the inside of an opening is trimmed."""

    PICTURE_FRAMED = "picture framed"
    STOOL_AND_APRON = "stool and apron"
    THREE_SIDED = "three-sided"
    RETURNS = "returns"
    RETURNS_AND_STOOL = "returns and stool"
    RETURNS_AND_TILE_SILL = "returns and tile sill"

    @property
    def has_bottom(self) -> bool:
        """Say whether the sill is lined as head and legs are."""
        return self in (InteriorStyle.PICTURE_FRAMED, InteriorStyle.RETURNS)

    @property
    def is_returned(self) -> bool:
        """Say whether it is named for having no casing; three-sided trim may have none either."""
        return self in (InteriorStyle.RETURNS, InteriorStyle.RETURNS_AND_STOOL, InteriorStyle.RETURNS_AND_TILE_SILL)


WITH_STOOL = (InteriorStyle.STOOL_AND_APRON, InteriorStyle.RETURNS_AND_STOOL)


class Joint(StrEnum):
    """How the corners of the extension jamb meet."""

    HEAD_OVER_LEGS = "head over legs"
    LEGS_THROUGH = "legs through"
    RABBET = "rabbet"
    MITER = "miter"

    @classmethod
    def _missing_(cls, value: object) -> Joint | None:
        """Read ``butt, head over legs`` too: the comma would part it in a one-line mapping."""
        return next((joint for joint in cls if value == f"butt, {joint.value}"), None)


BUTTED = (Joint.HEAD_OVER_LEGS, Joint.LEGS_THROUGH)
JointChoice = Annotated[
    Joint, WithJsonSchema({"enum": [*Joint, *(f"butt, {joint.value}" for joint in BUTTED)], "type": "string"})
]


class Corner(StrEnum):
    """How the corners of the casing meet."""

    MITER = "miter"
    BUTT = "butt"


def _not_coped(value: Any) -> Any:
    """Refuse a coped corner by what it is for: its word is known, and nothing here has a corner for it."""
    if isinstance(value, str) and value.strip().lower() in ("cope", "coped"):
        raise fault(
            "is coped, which is how moldings meet in an inside corner of a room; casing lies in one plane and the "
            "crown of a head turns outside corners, so no corner here is one: write miter, or butt where the "
            "boards are flat"
        )
    return value


CornerChoice = Annotated[Corner, BeforeValidator(_not_coped)]


class ApronEnds(StrEnum):
    """How the apron's ends are finished."""

    SQUARE = "square"
    RETURNED = "returned"


class JambEntry(Model):
    """Extension jamb boards; ``curved``: how the one under an arch is made."""

    thickness: Thickness
    stock: Text
    joint: JointChoice
    rabbet_depth: Small | None = None
    curved: Curved | None = None

    @model_validator(mode="after")
    def _rabbet(self) -> JambEntry:
        if self.joint is Joint.RABBET and self.rabbet_depth is None:
            raise fault("joint is rabbet and rabbet_depth is missing; give it, less than the thickness")
        if self.rabbet_depth is not None and not 0 < self.rabbet_depth < self.thickness:
            raise fault("rabbet_depth is not between 0 and the thickness of the jamb; write less than the thickness")
        return self


class CasingEntry(Model):
    """Casing boards: width across the wall, thickness out from it."""

    width: BoardWidth
    thickness: Thickness
    stock: Text
    corner: CornerChoice
    overhang: Small = 0.0
    back_bevel_deg: Annotated[float, BeforeValidator(Amount(0, 10)), NUMBER] = 0.0

    @model_validator(mode="after")
    def _overhang_over_legs(self) -> CasingEntry:
        if self.corner is Corner.MITER and self.overhang:
            raise fault("gives overhang for mitered corners, which have none; remove it or write corner: butt")
        return self


class StoolEntry(Model):
    """The flat board at the sill, room side."""

    thickness: Thickness
    stock: Text
    horn: Small
    nosing: Small
    rabbet: Small = 0.0


class ApronEntry(Model):
    """The casing under the stool."""

    width: BoardWidth
    thickness: Thickness
    stock: Text
    ends: ApronEnds = ApronEnds.SQUARE


def _let_out(schema: dict[str, Any]) -> None:
    """Let an editor accept trim without casing: what it does without is asked for when the job is read."""
    schema["required"] = ["style", "frame_reveal"]


NO_JAMB = JambEntry.model_construct(thickness=0.0, stock="", joint=Joint.HEAD_OVER_LEGS, rabbet_depth=None)
NO_CASING = CasingEntry.model_construct(
    width=0.0, thickness=0.0, stock="", corner=Corner.BUTT, overhang=0.0, back_bevel_deg=0.0
)
"""A jamb and a casing that are not there: sums over them go on."""


class InteriorTrim(Model):
    """Interior trim: style, extension jambs or returns, flare, reveals, casing, stool and apron.

    Without casing ``casing`` is NO_CASING; where boards of the drywall crew return the wall, ``jamb`` is NO_JAMB.
    """

    model_config = ConfigDict(json_schema_extra=_let_out)

    style: InteriorStyle
    jamb: JambEntry
    frame_reveal: Reveal
    casing_reveal: Reveal
    casing: CasingEntry
    stool: StoolEntry | None = None
    apron: ApronEntry | None = None
    stack: StackEntry | None = None
    panels: PanelsEntry | None = None
    flare: FlareEntry | None = None
    returns: ReturnsEntry | None = None
    wall_edge: WallEdgeEntry | None = None
    tile_sill: TileSillEntry | None = None
    built_up: BuiltUpEntry | None = None
    profile: Profile | None = None
    mull_casing: MullCasingEntry | None = None

    @model_validator(mode="before")
    @classmethod
    def _without(cls, value: Any) -> Any:
        """Let returns do without jamb and casing, and a bare edge of the wall without casing."""
        if not isinstance(value, dict) or not (value.get("returns") or value.get("wall_edge")):
            return value
        left_out: dict[str, Any] = {"casing": NO_CASING, "casing_reveal": "0"}
        if value.get("returns"):
            left_out["jamb"] = NO_JAMB
        return {**left_out, **value}

    @property
    def is_cased(self) -> bool:
        """Say whether casing covers the joint of lining and wall."""
        return self.returns is None and self.wall_edge is None

    @property
    def lining_thickness(self) -> float:
        """Clear opening → back of what lines it [in]: a jamb, or the board of a return and its coat."""
        return self.returns.thickness + self.returns.corner_bead.nose if self.returns else self.jamb.thickness

    @property
    def beside_stool(self) -> float:
        """What stands on the stool at each side of the clear opening [in]: nothing where it lies between returns."""
        return self.jamb.thickness

    @property
    def past_clear(self) -> float:
        """Clear opening → where a horn begins to show, at each side [in]: outer edge of casing or of bare jamb."""
        if not self.is_cased:
            return self.jamb.thickness
        band = self.built_up.backband if self.built_up else None
        return self.casing_reveal + self.casing.width + (band.width if band else 0.0)

    @property
    def stack_reveal(self) -> float:
        """Face of a stacked jamb frame → face of the one nearer the room [in]; 0 where there is but one."""
        if self.stack is None:
            return 0.0
        return self.frame_reveal if self.stack.reveal is None else self.stack.reveal

    @model_validator(mode="after")
    def _stack_bears(self) -> InteriorTrim:
        if self.stack and not self.stack_reveal:
            raise fault("stack gives no reveal and frame_reveal is 0; write stack: {frames: 2, reveal: 1/8}")
        if self.stack and self.stack_reveal >= self.jamb.thickness:
            raise fault(
                "the reveal of the stack is as wide as the jamb is thick, so the frames do not meet; write less"
            )
        return self

    @model_validator(mode="after")
    def _returned(self) -> InteriorTrim:
        if self.returns and (self.jamb is not NO_JAMB or self.wall_edge or self.stack):
            raise fault("gives returns and also jamb, wall_edge or stack, which are of wooden jambs; keep one of both")
        if not self.is_cased and self.casing is not NO_CASING:
            raise fault("gives casing over returns or a bare edge of the wall, which have none; write casing: none")
        if self.style.is_returned and self.is_cased:
            raise fault(
                f"style is {self.style.value!r} and nothing says what is returned; give returns, or jamb and wall_edge"
            )
        if not self.is_cased and not self.style.is_returned and self.style is not InteriorStyle.THREE_SIDED:
            raise fault(
                f"style {self.style.value!r} has casing; write style: returns, returns and stool, returns and tile "
                "sill or three-sided"
            )
        if (self.style is InteriorStyle.RETURNS_AND_TILE_SILL) is not (self.tile_sill is not None):
            raise fault("style: returns and tile sill goes with tile_sill; give both, or neither")
        if self.tile_sill and self.returns is None:
            raise fault("gives tile_sill between wooden jambs; give returns, or a stool")
        return self

    @model_validator(mode="after")
    def _flare_stands(self) -> InteriorTrim:
        if self.flare and self.stack:
            raise fault("gives flare and stack; stacked frames stand square, keep one of them")
        if self.flare and not self.is_cased:
            raise fault("gives flare and no casing; only cased wooden jambs flare, remove flare or write casing")
        sill = self.flare.at(Side.SILL) if self.flare else None
        if sill and self.style is not InteriorStyle.PICTURE_FRAMED:
            stands = "a stool" if self.style is InteriorStyle.STOOL_AND_APRON else "the floor"
            raise fault(f"flare leans the sill, but the legs stand on {stands}, which lies level; write sill: 0")
        return self

    @model_validator(mode="after")
    def _paneled(self) -> InteriorTrim:
        if self.panels is None:
            return self
        if self.returns or self.stack:
            raise fault("gives panels and returns or stack; panels are of one deep wooden jamb, keep one of them")
        if self.panels.groove.from_face + self.panels.groove.width >= self.jamb.thickness:
            raise fault("panels gives a groove that opens in the back of the jamb; write a thicker jamb, or less")
        if self.panels.deep > self.jamb.thickness:
            raise fault("the panels stand out past the back of the jamb; write a thinner panel, or a thicker jamb")
        return self

    @model_validator(mode="after")
    def _built_up(self) -> InteriorTrim:
        built = self.built_up
        if built is None:
            return self
        if not self.is_cased:
            raise fault("gives built_up without casing, whose members stand with it; remove it, or give casing")
        if self.casing.overhang:
            raise fault("gives built_up and an overhang of the head casing, which would cross it; remove overhang")
        if (built.rosettes or built.head) and self.casing.corner is Corner.MITER:
            raise fault("gives rosettes or head over mitered casing; write corner: butt")
        if built.head and self.style.has_bottom:
            raise fault("gives a head of members round four sides; write style: stool and apron, or three-sided")
        if built.plinths and self.style is not InteriorStyle.THREE_SIDED:
            raise fault("gives plinths, which stand on a floor; write style: three-sided, or remove them")
        if built.rosettes and not 0 <= built.rosettes.size - self.casing.width <= 2 * self.casing_reveal:
            raise fault(
                "rosettes are narrower than the casing, or reach past its reveal over the jamb; write a size from the "
                "width of the casing to that and two reveals"
            )
        if built.plinths and built.plinths.width < self.casing.width:
            raise fault("plinths are narrower than the casing that stands on them; write at least its width")
        return self

    @model_validator(mode="after")
    def _profile_runs_out(self) -> InteriorTrim:
        if self.profile is None:
            return self
        if not self.is_cased:
            raise fault("gives profile without casing, whose section it is; remove it, or give casing")
        if profile_misfit(self.profile, self.casing.width, self.casing.thickness):
            raise fault("profile is not as wide and as thick as the casing; correct its points, or the casing's sizes")
        built = self.built_up
        if built and built.backband:
            raise fault("gives profile and a backband, which lies against a square outer edge; keep one of both")
        is_stopped = built is not None and (built.rosettes or built.head)
        if self.casing.corner is Corner.BUTT and not is_stopped:
            raise fault(
                "gives profile and corner: butt, where an end would show against the molding; write corner: miter, or "
                "give rosettes or a head of members in built_up"
            )
        return self

    @model_validator(mode="after")
    def _whole(self) -> InteriorTrim:
        stool = self.style in WITH_STOOL
        if self.style is InteriorStyle.STOOL_AND_APRON and (self.stool is None or self.apron is None):
            raise fault("style is 'stool and apron' and one of them is missing; give both stool and apron")
        if stool and self.stool is None:
            raise fault(f"style is {self.style.value!r} and stool is missing; give it")
        if not stool and (self.stool or self.apron):
            raise fault(
                f"style {self.style.value!r} has no stool or apron; remove them or write style: stool and apron"
            )
        if self.is_cased and self.casing_reveal >= self.jamb.thickness:
            raise fault("casing_reveal is as wide as the jamb is thick, so the casing bears on nothing; write less")
        if self.stool and self.past_clear + self.stool.horn < self.beside_stool:
            raise fault("the stool would be shorter than the jamb box is wide; write a wider casing or a longer horn")
        return self
