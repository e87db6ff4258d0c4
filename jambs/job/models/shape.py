"""Shapes of a window frame other than the rectangle, as the job file states them."""

from __future__ import annotations

from enum import IntEnum, StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema, model_validator

from jambs.job.models.fields import Between, ModelOrText, Size, fault
from jambs.length import HALF_64TH

Along = Annotated[
    float,
    BeforeValidator(Between(0, 240, exact=True)),
    WithJsonSchema({"type": ["string", "number"], "description": "a length: 35 1/2 or 902 mm"}),
]
"""Along a frame [in]: kept as stated, as the frame's own size."""


class ShapeKind(StrEnum):
    """What a frame is seen square on."""

    RAKED = "raked"
    GABLE = "gable"
    OCTAGON = "octagon"
    SEGMENT_ARCH = "segment arch"
    HALF_ROUND = "half round"
    FULL_ROUND = "full round"
    QUARTER_ROUND = "quarter round"
    ELLIPSE_ARCH = "ellipse arch"
    TRIANGLE = "triangle"


class HighSide(StrEnum):
    """The side at which a frame stands highest, seen from inside."""

    LEFT = "left"
    RIGHT = "right"


class Centers(IntEnum):
    """From how many centers an ellipse arch is drawn."""

    THREE = 3
    FIVE = 5


def _centers(value: Any) -> Centers:
    if str(value).strip() not in ("3", "5"):
        raise fault(f"{value!r} is not allowed; write 3 or 5")
    return Centers(int(str(value)))


CentersKey = Annotated[
    Centers, BeforeValidator(_centers), WithJsonSchema({"type": ["integer", "string"], "description": "3 or 5"})
]


GOES_WITH = {
    ShapeKind.RAKED: ("left", "right"),
    ShapeKind.GABLE: ("sides", "left", "right", "peak_from_left"),
    ShapeKind.OCTAGON: ("cut",),
    ShapeKind.SEGMENT_ARCH: ("rise", "spring_line"),
    ShapeKind.HALF_ROUND: ("rise", "spring_line"),
    ShapeKind.FULL_ROUND: (),
    ShapeKind.QUARTER_ROUND: ("high_side",),
    ShapeKind.ELLIPSE_ARCH: ("rise", "spring_line", "centers"),
    ShapeKind.TRIANGLE: ("peak_from_left",),
}
"""The sizes that a kind of shape is given by."""
EXAMPLES = {
    ShapeKind.RAKED: "{kind: raked, left: 36 in, right: 48 in}",
    ShapeKind.GABLE: "{kind: gable, sides: 30 in}",
    ShapeKind.OCTAGON: "{kind: octagon, cut: 8 in}",
    ShapeKind.SEGMENT_ARCH: "{kind: segment arch, rise: 8 in}",
    ShapeKind.HALF_ROUND: "half round",
    ShapeKind.FULL_ROUND: "full round",
    ShapeKind.QUARTER_ROUND: "{kind: quarter round, high_side: left}",
    ShapeKind.ELLIPSE_ARCH: "{kind: ellipse arch, rise: 10 in}",
    ShapeKind.TRIANGLE: "triangle",
}
OVER_LEGS = (ShapeKind.SEGMENT_ARCH, ShapeKind.HALF_ROUND)
"""Arches of one arc, which springs from two legs, or from the bottom of the frame."""
ARCHED = (*OVER_LEGS, ShapeKind.FULL_ROUND, ShapeKind.QUARTER_ROUND, ShapeKind.ELLIPSE_ARCH)
SAME_AS = {"round": ShapeKind.FULL_ROUND, "circle": ShapeKind.FULL_ROUND, "half ellipse": ShapeKind.ELLIPSE_ARCH}
"""Other words for a kind, which mean nothing else."""
NOT_MADE = ("ellipse", "oval", "pointed arch")
"""Curved frames that are known and not made here."""
ALL_ROUND = (ShapeKind.OCTAGON, ShapeKind.FULL_ROUND, ShapeKind.QUARTER_ROUND, ShapeKind.TRIANGLE)
"""Kinds without two legs that stand upright on their sill."""
SHARE_OF_OCTAGON = 1 / (2 + 2**0.5)
"""How far a regular octagon's corners are cut back, as a share of its width: each of its eight edges is as long."""


class ShapeEntry(ModelOrText):
    """The outline of a frame inside its width × height [in], left and right as seen from inside.

    ``left``, ``right``: height of the frame there, where its head begins; ``sides``: both alike. ``peak_from_left``:
    left edge → peak of a gable, in the middle if not given. ``cut``: corner of the rectangle → where its cut begins,
    along both edges; of a regular octagon not given. ``spring_line``: bottom of the frame → where the arc of an arch
    begins; ``rise``: from there to its crown; one of the two says both, and a half round needs neither: it may stand
    on the bottom of the frame, without legs. ``high_side``: of a quarter round, where its upright edge is.
    ``centers``: from how many an ellipse arch is drawn, three if not given.
    """

    kind: ShapeKind
    left: Along | None = None
    right: Along | None = None
    sides: Along | None = None
    peak_from_left: Along | None = None
    cut: Along | None = None
    rise: Along | None = None
    spring_line: Along | None = None
    high_side: HighSide | None = None
    centers: CentersKey | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """Read ``octagon``."""
        kind = value.get("kind") if isinstance(value, dict) else value
        if kind in NOT_MADE:
            raise fault(
                f"is {kind}, which is not made here; made are full, half and quarter rounds, segment arch and ellipse "
                f"arch: write {EXAMPLES[ShapeKind.ELLIPSE_ARCH]}, or leave the opening out and lay it out on site"
            )
        said = value if isinstance(value, dict | ShapeEntry) else {"kind": value}
        if isinstance(said, dict) and isinstance(kind, str) and kind in SAME_AS:
            return {**said, "kind": SAME_AS[kind]}
        return said

    @model_validator(mode="after")
    def _says_one_thing(self) -> ShapeEntry:
        for key in ("left", "right", "sides", "peak_from_left", "cut", "rise", "spring_line", "high_side", "centers"):
            if getattr(self, key) is not None and key not in GOES_WITH[self.kind]:
                keys = ", ".join(GOES_WITH[self.kind]) or "no size but the frame's"
                raise fault(f"{self.kind.value} takes {keys}, not {key}; write it like {EXAMPLES[self.kind]}")
        if self.sides is not None and (self.left is not None or self.right is not None):
            raise fault("gives sides and left or right; keep sides for both, or left and right for each")
        needs_rise = self.kind in (ShapeKind.SEGMENT_ARCH, ShapeKind.ELLIPSE_ARCH)
        if needs_rise and self.rise is None and self.spring_line is None:
            raise fault(f"{self.kind.value} needs its rise or its spring_line; write it like {EXAMPLES[self.kind]}")
        if self.kind is ShapeKind.QUARTER_ROUND and self.high_side is None:
            raise fault(f"quarter round needs its high_side, left or right; write it like {EXAMPLES[self.kind]}")
        if self.kind in (ShapeKind.RAKED, ShapeKind.GABLE) and (self.height_left is None or self.height_right is None):
            raise fault(
                f"{self.kind.value} needs the heights at which its head begins; write it like {EXAMPLES[self.kind]}"
            )
        return self

    @property
    def height_left(self) -> float | None:
        """Bottom of the frame → where its head begins at the left [in]."""
        return self.sides if self.left is None else self.left

    @property
    def height_right(self) -> float | None:
        """Bottom of the frame → where its head begins at the right [in]."""
        return self.sides if self.right is None else self.right

    def peak(self, frame: Size) -> float:
        """Left edge of the frame → its peak [in]."""
        return frame.width / 2 if self.peak_from_left is None else self.peak_from_left

    def cut_in(self, frame: Size) -> float:
        """Corner of the rectangle → where its cut begins, along both edges [in]."""
        return frame.width * SHARE_OF_OCTAGON if self.cut is None else self.cut

    @property
    def is_arched(self) -> bool:
        """Say whether its head is an arc."""
        return self.kind in ARCHED

    def rise_in(self, frame: Size) -> float:
        """Spring line → crown of an arch [in]: of a half round half its width."""
        if self.kind is ShapeKind.HALF_ROUND:
            return frame.width / 2
        return frame.height - (self.spring_line or 0.0) if self.rise is None else self.rise

    def is_cut_below(self, frame: Size) -> bool:
        """Say whether it has no two legs that stand upright on its sill, so that its boards go all round."""
        return self.kind in ALL_ROUND or self.stands_on_spring_line(frame)

    def is_flat_below(self, frame: Size) -> bool:
        """Say whether it has one level edge below, from side to side, on which the rest can stand."""
        return not self.is_cut_below(frame) or self.kind not in (ShapeKind.OCTAGON, ShapeKind.FULL_ROUND)

    def stands_on_spring_line(self, frame: Size) -> bool:
        """Say whether it is an arch without legs: its one arc springs from the bottom of the frame."""
        return self.kind in OVER_LEGS and abs(frame.height - self.rise_in(frame)) < HALF_64TH
