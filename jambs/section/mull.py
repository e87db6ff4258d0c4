"""Cuts square through what lies between ganged units: both frames, gap or post, and the boards over it.

``across`` runs from the edge of the frame before, 0, to the edge of the frame after: to the right in a plan through a
mull, up in a section through a transom bar [in].
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from jambs.job.models.gang import Gang, Mull, MullKind
from jambs.job.models.windows import WindowType
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.section.part_regions import placed_part
from jambs.section.region import Region, Stuff
from jambs.section.window_regions import box, frame_regions
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class MullSection:
    """A cut through a mull or a bar. Regions listed back to front; ``alike``: other mulls that are cut the same."""

    mull: Mull
    mark: str
    regions: tuple[Region, ...]
    alike: tuple[Mull, ...] = ()


def mull_sections(kit: Kit) -> tuple[MullSection, ...]:
    """Cut every mull and every transom bar of an opening; those that are alike are one section."""
    gang = kit.placement.opening.gang
    found: list[MullSection] = []
    for mull in gang.mulls if gang else ():
        assert gang is not None
        one = MullSection(mull=mull, mark=kit.mark, regions=tuple(_regions(kit, gang, mull)))
        twin = next((number for number, other in enumerate(found) if _is_same(one, other)), None)
        if twin is None:
            found.append(one)
        else:
            found[twin] = replace(found[twin], alike=(*found[twin].alike, mull))
    return tuple(found)


def boards_of(kit: Kit, mull: Mull) -> tuple[Part, ...]:
    """Return the boards over a mull or a bar, and the jambs of a boxed one."""
    is_bar = mull.kind is MullKind.TRANSOM_BAR
    return tuple(
        part
        for part in kit.parts
        if part.kind.is_between_units and part.kind.is_bar is is_bar and part.member == mull.member
    )


def post_words(mull: Mull) -> str:
    """Name what stands in a mull or lies in a bar."""
    return "post" if mull.kind is MullKind.MULL else mull.kind.value


def faces_beside(gang: Gang, mull: Mull, *, from_outside: bool = False) -> tuple[float, float]:
    """Return how wide the frames before and after are at a mull, as seen from one side of the wall [in]."""
    before, after = _sides(mull)
    one, two = _windows(gang, mull)
    faces = (one.outside_face, two.outside_face) if from_outside else (one.frame_face, two.frame_face)
    return float(getattr(faces[0], before.value)), float(getattr(faces[1], after.value))


def _sides(mull: Mull) -> tuple[Side, Side]:
    """Return the sides of the units before and after that look at each other."""
    return (Side.RIGHT, Side.LEFT) if mull.kind is MullKind.MULL else (Side.HEAD, Side.SILL)


def _windows(gang: Gang, mull: Mull) -> tuple[WindowType, WindowType]:
    return gang.unit(mull.before[0]).window, gang.unit(mull.after[0]).window


def _is_same(one: MullSection, two: MullSection) -> bool:
    """Say whether two cuts show the same materials in the same outlines, whatever the marks."""
    told = [[(region.stuff, region.where, region.outline) for region in section.regions] for section in (one, two)]
    return one.mull.kind is two.mull.kind and told[0] == told[1]


def _regions(kit: Kit, gang: Gang, mull: Mull) -> Iterator[Region]:
    yield from _between(kit, mull)
    faces, outer = faces_beside(gang, mull), faces_beside(gang, mull, from_outside=True)
    for is_after in (False, True):
        for region in frame_regions(kit.placement, faces[is_after], outer[is_after]):
            yield _after(region, mull) if is_after else region
    for part in boards_of(kit, mull):
        yield from placed_part(part, kit, lambda x, y: (x if mull.kind is MullKind.MULL else y) - mull.low)


def _after(region: Region, mull: Mull) -> Region:
    """Turn a frame round: its edge looks at the mull from the other side."""
    return replace(region, outline=tuple((mull.between - s, depth) for s, depth in region.outline))


def _between(kit: Kit, mull: Mull) -> Iterator[Region]:
    """Lay the post with the joints on both sides of it, or the gap, as deep as the frames."""
    start, end = kit.placement.inside_edge, kit.placement.outside_edge
    if mull.post is None:
        yield Region(name="gap between frames", stuff=Stuff.SHIM, outline=box((0.0, start), (mull.between, end)))
        return
    edges = (mull.joint, mull.joint + mull.post)
    yield Region(name=post_words(mull), stuff=Stuff.FURRING, outline=box((edges[0], start), (edges[1], end)))
    for low, high in ((0.0, edges[0]), (edges[1], mull.between)):
        if mull.joint:
            yield Region(
                name=f"joint at the {post_words(mull)}", stuff=Stuff.SHIM, outline=box((low, start), (high, end))
            )
