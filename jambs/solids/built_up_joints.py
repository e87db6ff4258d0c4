"""Casings built up from members: which of them touch, over what area, and what they take on the wall over all."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from jambs.job.models.trim import InteriorTrim
from jambs.length import ROUND_OFF
from jambs.parts.board.kinds import BUILT_UP, PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import FigureKind
from jambs.parts.trim.crown import crown_sizes
from jambs.parts.trim.molding import end_area
from jambs.sides import CORNERS, LEGS, Side
from jambs.solids.joints import joint
from jambs.solids.lookup import D, Set, X, Y, corner_words, one_of, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck

LEVEL = (PartKind.FILLET, PartKind.FRIEZE, PartKind.CAP)


def is_bounded_by_boards(trim: InteriorTrim) -> bool:
    """Say whether the boards of the casing meet each other at the corners: no block and no head comes between."""
    built = trim.built_up
    return built is None or not (built.rosettes or built.plinths or built.head)


def built_up_joints(solids: KitSolids, casing: Set) -> list[JointCheck]:
    """Measure the joints of all members; none at a plain casing."""
    trim = solids.kit.placement.opening.interior
    if trim.built_up is None:
        return []
    head = _head(solids)
    return [
        *_band(solids, casing),
        *_blocks(solids, casing, PartKind.ROSETTE),
        *_blocks(solids, casing, PartKind.PLINTH),
        *(_on_legs(casing, head[0], trim) if head else []),
        *(_on_each_other(one, two) for one, two in pairwise(head)),
        *_crown(solids, head),
    ]


def _head(solids: KitSolids) -> list[Solid]:
    """The members of a head from the bottom to the top."""
    return [solid for solid in solids.parts if solid.part and solid.part.kind in LEVEL]


def _band(solids: KitSolids, casing: Set) -> list[JointCheck]:
    """The band lies along the outer edges of the boards, its own corners mitered."""
    band, trim = pick(solids, Where.INTERIOR, PartKind.BACKBAND), solids.kit.placement.opening.interior
    entry = trim.built_up.backband if trim.built_up else None
    if not band or entry is None:
        return []
    found = []
    deep = min(entry.thickness, trim.casing.thickness)
    for side, piece in band.by_side.items():
        board = casing[side]
        assert board.part is not None
        name = f"the backband {piece.name} and the casing {board.name}"
        long = board.part.length + _beside(side, board, casing)
        found.append(joint(name, [piece], casing.all, asked=long * deep))
    for across, leg in CORNERS:
        if across in band and leg in band:
            name = corner_words("backband", band, across, leg)
            asked = entry.width * entry.thickness * math.sqrt(2)
            found.append(joint(name, [band[across]], [band[leg]], asked=asked))
    return [*found, *_foot_on_stool(solids, band, entry.width, deep=entry.thickness)]


def _beside(side: Side, board: Solid, casing: Set) -> float:
    """What ends of level boards a band along a butted leg touches besides [in]: head and bottom run past the legs."""
    if not side.is_leg:
        return 0.0
    level = [casing[one] for one in (Side.HEAD, Side.SILL) if one in casing]
    widths = ((one, one.part.width) for one in level if one.part)
    return sum(width for one, width in widths if _overlap(one, board) < width / 2)


def _overlap(one: Solid, two: Solid) -> float:
    """How far two boards lie beside each other, up the wall [in]: all of a mitered one, nothing of a butted one."""
    return min(one.high[Y], two.high[Y]) - max(one.low[Y], two.low[Y])


def _foot_on_stool(solids: KitSolids, band: Set, width: float, *, deep: float) -> list[JointCheck]:
    """Legs of a band stand on the stool as the casing does, as far as its nosing carries them."""
    stool, trim = one_of(solids, Where.INTERIOR, PartKind.STOOL), solids.kit.placement.opening.interior
    if stool is None or trim.stool is None or trim.stool.horn < -ROUND_OFF:
        return []
    carried = min(
        deep, trim.casing.thickness + trim.stool.nosing - max(solids.job.shop.proud, solids.job.shop.horn_play or 0.0)
    )
    slack, parts = solids.inside_slack, {leg: band[leg].part for leg in LEGS}
    return [
        joint(
            f"the backband {band[leg].name} and the stool {stool.name}",
            [band[leg]],
            [stool],
            asked=width * carried,
            slack=slack.lean_of(part) if part else 0.0,
            tolerance=TIGHT + width * slack.gap,
        )
        for leg, part in parts.items()
    ]


def _blocks(solids: KitSolids, casing: Set, kind: PartKind) -> list[JointCheck]:
    """A block takes the whole end of every board that runs against it."""
    found, trim = list[JointCheck](), solids.kit.placement.opening.interior
    for block in (solid for solid in solids.parts if solid.part and solid.part.kind is kind):
        for board in casing.all:
            if _meets(block, board):
                assert board.part is not None and block.part is not None
                asked = end_area(trim, block.part.thickness)
                name = f"the {kind.words} {block.name} and the casing {board.name}"
                found.append(joint(name, [block], [board], asked=asked))
    return found


def _meets(one: Solid, two: Solid) -> bool:
    """Say whether two solids touch with their boxes [in]."""
    return all(min(one.high[axis], two.high[axis]) - max(one.low[axis], two.low[axis]) > -TIGHT for axis in (X, Y, D))


def _on_legs(casing: Set, lowest: Solid, trim: InteriorTrim) -> list[JointCheck]:
    """The lowest member of a head lies on both legs."""
    assert lowest.part is not None
    projection = _projection(lowest.part)
    found = []
    for leg in LEGS:
        board = casing[leg]
        assert board.part is not None
        asked = end_area(trim, projection)
        name = f"the {lowest.part.kind.words} {lowest.name} and the casing {board.name}"
        found.append(joint(name, [lowest], [board], asked=asked))
    return found


def _projection(part: Part) -> float:
    """How far a member of a head comes out [in]: the thickness of a board that stands, the width of one that lies."""
    return part.thickness if part.kind is PartKind.FRIEZE else part.width


def _on_each_other(lower: Solid, upper: Solid) -> JointCheck:
    """Each member of a head lies on the one below, over the shorter of the two and the shallower."""
    assert lower.part is not None and upper.part is not None
    long = min(lower.part.length, upper.part.length)
    deep = min(_projection(lower.part), _projection(upper.part))
    name = f"the {upper.part.kind.words} {upper.name} and the {lower.part.kind.words} {lower.name}"
    return joint(name, [upper], [lower], asked=long * deep)


def _crown(solids: KitSolids, head: Sequence[Solid]) -> list[JointCheck]:
    """A crown lies on frieze and cap over the flats of its bevels, and meets its returns over its miters."""
    built = solids.kit.placement.opening.interior.built_up
    boards = [one for one in solids.parts if one.part and one.part.kind is PartKind.CROWN]
    if built is None or built.crown is None or not boards:
        return []
    sizes, crown = crown_sizes(built.crown), built.crown
    at = next(place for place, one in enumerate(head) if _is_frieze(one) and place + 1 < len(head))
    frieze, cap = head[at], head[at + 1]
    assert frieze.part is not None
    long, deep = frieze.part.length, frieze.part.thickness
    narrower = crown.width - math.hypot(sizes.height - sizes.foot, sizes.projection - sizes.top)
    section = crown.thickness * (crown.width - narrower / 2) * math.sqrt(2)
    under = sizes.projection - sizes.top / 2
    front, *returns = boards
    found = [
        joint(f"the crown {front.name} and the frieze {frieze.name}", [front], [frieze], asked=sizes.foot * long),
        joint(f"the crown {front.name} and the cap {cap.name}", [front], [cap], asked=sizes.top * (long + 2 * under)),
    ]
    for one in returns:
        name = f"the return {one.name} of the crown and"
        found.append(joint(f"{name} the frieze {frieze.name}", [one], [frieze], asked=sizes.foot * deep))
        found.append(joint(f"{name} the cap {cap.name}", [one], [cap], asked=sizes.top * (deep + under)))
        found.append(joint(f"{name} the crown {front.name}", [one], [front], asked=section))
    return found


def _is_frieze(solid: Solid) -> bool:
    return solid.part is not None and solid.part.kind is PartKind.FRIEZE


def over_all_measured(solids: KitSolids) -> list[tuple[FigureKind, float, float]]:
    """What a built-up casing takes on the wall, as the solids have it, and how far a wall that leans moves it [in]."""
    kinds = (PartKind.CASING, *BUILT_UP)
    found = [one for one in solids.parts if one.part and one.part.where is Where.INTERIOR and one.part.kind in kinds]
    wide = max(one.high[X] for one in found) - min(one.low[X] for one in found)
    high = max(one.high[Y] for one in found) - min(one.low[Y] for one in found)
    loose = solids.inside_slack.slope * max(one.high[D] - one.low[D] for one in found)
    return [(FigureKind.BUILT_UP_WIDTH, wide, loose), (FigureKind.BUILT_UP_HEIGHT, high, loose)]
