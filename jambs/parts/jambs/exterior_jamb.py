"""Exterior extension jambs: head and legs from the frame, less a sealant joint, to the trim plane."""

from __future__ import annotations

from jambs.geometry import DOWN, LEFT, OUTWARD, UP, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.parts.board.cuts import Crosscut, Cut, Edge, End, Miter, Rip, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.sides import LEGS, Side


def exterior_jambs(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    trim: ExteriorTrim,
    outside_edge: float,
    slope_deg: float,
) -> tuple[Part, ...]:
    """Make head and legs; ``outside_edge``: depth of the frame's outside edge [in].

    ``clear.bottom`` is the height of the sill's top at the frame's outside edge; the legs are cut to the slope.
    """
    start = outside_edge + trim.sealant_joint
    return (
        _head(clear, sides[Side.HEAD], trim, start),
        *(exterior_leg(leg, clear, sides[leg], trim, outside_edge, slope_deg) for leg in LEGS),
    )


def _head(clear: ClearOpening, fitted: FittedSide, trim: ExteriorTrim, start: float) -> Part:
    thickness, joint = trim.jamb.thickness, trim.sealant_joint
    length = clear.width + 2 * thickness
    # The board starts at the right, the side is measured left → right.
    first, last = fitted.finish_depth - joint, fitted.start_depth - joint
    return Part(
        kind=PartKind.EXTERIOR_JAMB,
        side=Side.HEAD,
        where=Where.EXTERIOR,
        blank=PartBlank(stock=trim.jamb.stock, thickness=thickness),
        cuts=(*_widths(first, last), Crosscut(length=length)),
        seat=Seat(
            origin=(clear.right + thickness, clear.top, start),
            along=LEFT,
            across=OUTWARD,
            through=UP,
        ),
    )


def exterior_leg(
    side: Side,
    clear: ClearOpening,
    fitted: FittedSide,
    trim: ExteriorTrim,
    outside_edge: float,
    slope_deg: float,
    head_deg: float = 0.0,
) -> Part:
    """Make one leg. The left one starts at the top, the right one at the bottom: boards are never mirrored.

    ``head_deg``: flare of the head up to which a leg stands that does not flare itself.
    """
    is_left = side is Side.LEFT
    joint = trim.sealant_joint
    start = outside_edge + joint
    bottom_width, top_width = fitted.start_depth - joint, fitted.finish_depth - joint
    top = clear.top + top_width * tangent(head_deg)
    length = clear.height + (joint + bottom_width) * tangent(slope_deg) + (top - clear.top)
    widths = (top_width, bottom_width) if is_left else (bottom_width, top_width)
    return Part(
        kind=PartKind.EXTERIOR_JAMB,
        side=side,
        where=Where.EXTERIOR,
        blank=PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness),
        cuts=(
            *_widths(*widths),
            Crosscut(length=length),
            *_slope_cut(is_left, slope_deg),
            *_slope_cut(not is_left, head_deg),
        ),
        seat=Seat(
            origin=(clear.left, top, start) if is_left else (clear.right, top - length, start),
            along=DOWN if is_left else UP,
            across=OUTWARD,
            through=(-1.0 if is_left else 1.0, 0.0, 0.0),
        ),
    )


def _widths(start: float, finish: float) -> tuple[Cut, ...]:
    rip: tuple[Cut, ...] = (Rip(width=max(start, finish)),)
    return rip if start == finish else (*rip, Taper(start_width=start, finish_width=finish))


def _slope_cut(is_at_finish: bool, slope_deg: float) -> tuple[Cut, ...]:
    if not slope_deg:
        return ()
    return (Miter(end=End.FINISH if is_at_finish else End.START, angle_deg=slope_deg, long_edge=Edge.FAR),)
