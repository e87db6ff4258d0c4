"""What was read off the tape at one opening, whole or half-filled: the keys under ``measured`` in a job file."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, ValidationInfo, WithJsonSchema, model_validator

from jambs.job.models.fields import Between, Date, Model, Text, YesNo, fault
from jambs.length import HALF_64TH
from jambs.sides import Side

CORNERS = ("head_left", "head_right", "sill_left", "sill_right")
OPEN = ("-", "–", "none")
"""How a list says that a place was not measured."""


@dataclass(frozen=True, slots=True)
class _Point:
    """A length between two limits [in], exactly as read, or nothing where it was not measured.

    Not put on the fine grid: a reading is rounded once, where its board is sawn.
    """

    least: float
    most: float

    def __call__(self, value: Any, info: ValidationInfo) -> float | None:
        if value is None or str(value).strip().lower() in OPEN:
            return None
        return Between(self.least, self.most, exact=True)(value, info)


_WRITTEN = WithJsonSchema(
    {"type": ["string", "number"], "description": "a length: 5 1/2 or 902 mm; - where it was not measured"}
)
DepthPoint = Annotated[float | None, BeforeValidator(_Point(-12, 36)), _WRITTEN]
LongPoint = Annotated[float | None, BeforeValidator(_Point(4, 300)), _WRITTEN]
FacePoint = Annotated[float | None, BeforeValidator(_Point(0, 6)), _WRITTEN]
LeanPoint = Annotated[float | None, BeforeValidator(_Point(-4, 4)), _WRITTEN]
MOST_PLACES = 60
"""Along one side: a wall of glass has one every foot or so."""


def _not_too_many(value: Any) -> Any:
    if isinstance(value, list | tuple) and len(value) > MOST_PLACES:
        raise fault(f"has {len(value)} readings, the most along one side is {MOST_PLACES}; keep those at equal steps")
    return value


def _place_number(value: Any) -> int:
    text = str(value).strip()
    if isinstance(value, list | dict) or not re.fullmatch(r"[0-9]{1,4}", text):
        found = "a list or keys" if isinstance(value, list | dict) else repr(text[:20])
        raise fault(f"{found} is not a place; write the number of a place as the measure sheet has it, like 3")
    return int(text)


PlaceNumber = Annotated[int, BeforeValidator(_place_number)]
Depths = Annotated[tuple[DepthPoint, ...], Field(min_length=2), BeforeValidator(_not_too_many)]
LongPoints = Annotated[tuple[LongPoint, ...], Field(min_length=1), BeforeValidator(_not_too_many)]
MullDepths = Annotated[tuple[DepthPoint, ...], Field(min_length=1), BeforeValidator(_not_too_many)]
FacePoints = Annotated[tuple[FacePoint, ...], Field(min_length=1), BeforeValidator(_not_too_many)]
Pair = Annotated[tuple[LongPoint, ...], Field(min_length=2, max_length=2)]
Leans = Annotated[tuple[LeanPoint, ...], Field(min_length=2, max_length=2)]


def sides_of_corners(value: Any) -> Any:
    """Four corners are enough: they are the ends of the four sides."""
    if not isinstance(value, dict) or not set(CORNERS) & set(value):
        return value
    if set(value) != set(CORNERS):
        odd = [f"{name} is missing" for name in CORNERS if name not in value]
        odd += [f"{name} is not a corner" for name in value if name not in CORNERS]
        raise fault(f"{', '.join(odd)}; give exactly {', '.join(CORNERS)}")
    head_left, head_right, sill_left, sill_right = (value[name] for name in CORNERS)
    return {
        "head": (head_left, head_right),
        "sill": (sill_left, sill_right),
        "left": (sill_left, head_left),
        "right": (sill_right, head_right),
    }


class SideReadings(Model):
    """Depths read along the sides, at equal steps from the first to the last point [in]; ``-`` where none was.

    Head and sill: left → right. Legs: bottom → top. Left and right as seen from inside. Four corners may stand for all.
    """

    head: Depths | None = None
    sill: Depths | None = None
    left: Depths | None = None
    right: Depths | None = None

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        """Let an editor accept the four corners too."""
        whole = handler.resolve_ref_schema(handler(core_schema))
        depth = {"type": ["string", "number"]}
        corners = {
            "type": "object",
            "properties": dict.fromkeys(CORNERS, depth),
            "required": list(CORNERS),
            "additionalProperties": False,
        }
        return {"anyOf": [dict(whole), corners], "title": cls.__name__}

    @model_validator(mode="before")
    @classmethod
    def _corners(cls, value: Any) -> Any:
        return sides_of_corners(value)

    @model_validator(mode="after")
    def _meet(self) -> SideReadings:
        """Sides that share a corner share its depth."""
        for corner, (side, at), (leg, end) in MEETING:
            points, leg_points = getattr(self, side.value), getattr(self, leg.value)
            depth, leg_depth = points and points[at], leg_points and leg_points[end]
            if depth is not None and leg_depth is not None and abs(depth - leg_depth) > HALF_64TH:
                raise fault(
                    f"gives the {corner} corner two depths, in {side.value} and in {leg.value}; write one in both "
                    "(lists of head and sill run from the left, those of left and right from the bottom)"
                )
        return self


MEETING = (
    ("upper left", (Side.HEAD, 0), (Side.LEFT, -1)),
    ("upper right", (Side.HEAD, -1), (Side.RIGHT, -1)),
    ("lower left", (Side.SILL, 0), (Side.LEFT, 0)),
    ("lower right", (Side.SILL, -1), (Side.RIGHT, 0)),
)
"""Where two sides share a corner: side and place in its list, leg and place in its list."""


class FaceReadings(Model):
    """Width of the frame's face as seen from inside, on each side [in]; those left out were not measured."""

    left: FacePoint = None
    right: FacePoint = None
    head: FacePoint = None
    sill: FacePoint = None


class Readings(Model):
    """What was measured at one opening [in]; what is left out stays planned.

    ``interior_depth``: inside edge of frame → finished face. ``exterior_depth``: outside edge of frame → trim plane.
    ``frame_width``: at the head, at the sill. ``frame_height``: at the left, at the right. ``diagonals``: from the
    lower left corner up, from the lower right corner up. ``out_of_plumb``: of the wall beside the left and the right
    leg, over the height of the frame, + where the top leans into the room. ``out_of_level``: of the frame's head and
    sill, + where the right end is higher. Of ganged units, in the order of the mulls: ``mull_edges``, left edge of all
    frames → where the gap begins, of a transom bar from their bottom; ``mull_gaps``, frame → frame; ``mull_depths``,
    interior depth at head and at foot of each mull, where the wall is. ``finished_opening``: width and height from face
    to face where another crew lines the opening, and boards between the units or a stool are cut to it.
    ``wall_finish``: whether the inside finish was on when the depths were taken.
    ``sure``: numbers of places whose odd reading was taken again and is right.
    """

    date: Date
    by: Text | None = None
    interior_depth: SideReadings | None = None
    exterior_depth: SideReadings | None = None
    frame_width: Pair | None = None
    frame_height: Pair | None = None
    diagonals: Pair | None = None
    out_of_plumb: Leans | None = None
    out_of_level: Leans | None = None
    frame_face: FaceReadings | None = None
    mull_edges: LongPoints | None = None
    mull_gaps: FacePoints | None = None
    mull_depths: MullDepths | None = None
    finished_opening: Pair | None = None
    wall_finish: YesNo = True
    sure: tuple[PlaceNumber, ...] = ()
