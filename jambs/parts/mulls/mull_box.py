"""Boxed mulls: units that stand apart have a jamb on each side of the mull between them, and casing over both edges.

The two mull jambs stand with their faces where the edges of a cover on the frames would lie: a frame reveal back from
each unit. They run from the bottom of the opening to its head, square between the boards that go through; each is set
as the leg of the unit that it looks at, so that none is mirrored. The casing lies on the wall with the other casing, a
casing reveal back from both faces.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.findings import Finding, Subject
from jambs.geometry import DOWN, INWARD, LEFT, RIGHT, UP
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.gang import MullCasingEntry
from jambs.job.models.shop import Shop
from jambs.job.models.trim import CasingEntry, Corner, InteriorTrim
from jambs.length import Grid
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import CannotBeCut, Crosscut, Cut, Rip, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.findings.mull_findings import MullBoxHoldsNoPost, MullBoxTooNarrow
from jambs.parts.jambs.exterior_jamb import exterior_leg
from jambs.parts.kit.kit import FittedSide
from jambs.parts.mulls.mull import Cover
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.casing import CasedOpening, casing
from jambs.sides import LEGS, Side


def inside_boxes(
    covers: Sequence[Cover],
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    cased: CasedOpening,
    trim: InteriorTrim,
    inside_edge: float,
    shop: Shop,
) -> list[Part]:
    """Make mull jambs and their casing inside; ``inside_edge``: depth of the frames' inside edges [in].

    They stand proud of the wall as the other jambs do; where the wall tapers their widths are put on the grid.

    Raises:
        CannotBeCut: two jambs have no room between the units.
    """
    parts = []
    for cover in covers:
        assert trim.mull_casing is not None
        _hold_wide_enough(cover, trim.jamb.thickness)
        for side in LEGS:
            fitted = _between_legs(sides, clear, _face(cover, side), shop.grid)
            depths = fitted.start_depth + shop.proud, fitted.finish_depth + shop.proud
            parts.append(_marked(_inside_jamb(cover, side, depths, clear, trim, inside_edge), covers, cover, side))
        upright = _casing(cover, cased, trim.casing_reveal, trim.casing, trim.mull_casing, Where.INTERIOR)
        parts.append(_marked(upright, covers, cover, Side.LEFT))
    return parts


def outside_boxes(
    covers: Sequence[Cover],
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    cased: CasedOpening,
    trim: ExteriorTrim,
    outside_edge: float,
    slope_deg: float,
    grid: Grid,
    head_deg: float = 0.0,
) -> list[Part]:
    """Make mull jambs and their casing outside; ``outside_edge``: depth of the frames' outside edges [in].

    They stand square on the sloping sill as legs and casing do, and reach up to a head that flares by ``head_deg``.

    Raises:
        CannotBeCut: two jambs have no room between the units.
    """
    parts = []
    for cover in covers:
        assert trim.mull_casing is not None
        _hold_wide_enough(cover, trim.jamb.thickness)
        for side in LEGS:
            # The left board of the mull is the right leg of the unit at its left, as seen from inside.
            face = _face(cover, side)
            leg, faces = (Side.RIGHT, {"right": face}) if side is Side.LEFT else (Side.LEFT, {"left": face})
            fitted = _between_legs(sides, clear, face, grid)
            board = exterior_leg(leg, replace(clear, **faces), fitted, trim, outside_edge, slope_deg, head_deg)
            parts.append(_marked(board, covers, cover, side))
        stands = replace(cased, bottom=_foot(cased, (cover.low + cover.high) / 2), right_bottom=None)
        upright = _casing(cover, stands, trim.casing_reveal, trim.casing, trim.mull_casing, Where.EXTERIOR)
        parts.append(_marked(upright, covers, cover, Side.LEFT))
    return parts


def _face(cover: Cover, side: Side) -> float:
    return cover.low if side is Side.LEFT else cover.high


def _hold_wide_enough(cover: Cover, thickness: float) -> None:
    if cover.width < 2 * thickness - SAME_SIZE:
        units = (*cover.mull.before, *cover.mull.after)
        about = Subject.opening("")
        raise CannotBeCut(MullBoxTooNarrow(subject=about, units=units, between=cover.width, thickness=thickness))


def _between_legs(sides: dict[Side, FittedSide], clear: ClearOpening, x: float, grid: Grid) -> FittedSide:
    """Return the depths at foot and head of a board between the legs, at a place across the opening [in].

    Where the legs are alike it is as they are, else what lies between them on the grid.
    """
    left, right = sides[Side.LEFT], sides[Side.RIGHT]
    share = (x - clear.left) / clear.width

    def between(one: float, two: float) -> float:
        return one if one == two else grid.round(one + share * (two - one))

    foot, head = between(left.start_depth, right.start_depth), between(left.finish_depth, right.finish_depth)
    return FittedSide(start_depth=foot, finish_depth=head, is_tapered=foot != head)


def _inside_jamb(
    cover: Cover, side: Side, depths: tuple[float, float], clear: ClearOpening, trim: InteriorTrim, inside_edge: float
) -> Part:
    """Make one mull jamb; ``depths``: its width at foot and head [in]. Its near edge is at the frames."""
    foot, head = depths
    at_left = side is Side.LEFT
    start, finish = (head, foot) if at_left else (foot, head)
    cuts: tuple[Cut, ...] = (Rip(width=max(foot, head)),)
    if foot != head:
        cuts = (*cuts, Taper(start_width=start, finish_width=finish))
    return Part(
        kind=PartKind.MULL_JAMB,
        side=side,
        where=Where.INTERIOR,
        blank=PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness),
        cuts=(*cuts, Crosscut(length=clear.height)),
        seat=Seat(
            origin=(_face(cover, side), clear.top if at_left else clear.bottom, inside_edge),
            along=DOWN if at_left else UP,
            across=INWARD,
            through=RIGHT if at_left else LEFT,
        ),
    )


def _casing(
    cover: Cover, cased: CasedOpening, reveal: float, around: CasingEntry, entry: MullCasingEntry, where: Where
) -> Part:
    """Make the casing over the edges of two mull jambs: it stands between head and foot as a leg does, cut square."""
    board = around.model_copy(
        update={
            "width": cover.width - 2 * reveal,
            "thickness": entry.thickness,
            "stock": entry.stock,
            "corner": Corner.BUTT,
            "overhang": 0.0,
        }
    )
    beside = replace(cased, left=cover.high - reveal)
    return next(part for part in casing(beside, board, where) if part.side is Side.LEFT)


def _foot(cased: CasedOpening, x: float) -> float:
    """Return the height of what stands between the legs of a casing: the sill may have fallen more at one of them."""
    right = cased.bottom if cased.right_bottom is None else cased.right_bottom
    return cased.bottom + (x - cased.left) / cased.width * (right - cased.bottom)


def _marked(part: Part, covers: Sequence[Cover], cover: Cover, side: Side) -> Part:
    kind = PartKind.MULL_CASING if part.kind is PartKind.CASING else PartKind.MULL_JAMB
    return replace(part, kind=kind, side=side, member=cover.mull.member, members=len(covers))


def box_findings(covers: Sequence[Cover], mark: str) -> list[Finding]:
    """Say of boxes with a post in them how deep it may be: head and stool go through in front of it."""
    about, posts = Subject.opening(mark), {cover.mull.post for cover in covers if cover.mull.boxed_inside}
    return [MullBoxHoldsNoPost(subject=about, post=post) for post in posts if post is not None]
