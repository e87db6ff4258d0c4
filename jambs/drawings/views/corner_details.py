"""Details of the room side at head and sill, half size: where frame, jamb or stool and casing meet, reveals named."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from jambs.drawings.elements.boxes import Box, box_around
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import NARROW_WORDS, Chain, Ink, View, ViewKind, ViewSide
from jambs.drawings.views.broken_out import break_lines, break_of, broken_out, moved_chains
from jambs.drawings.views.close_ups import PAST_EDGE, clipped, close_up, hatches, names, outlines
from jambs.drawings.views.flats_cut import flats_cut
from jambs.drawings.views.measured_section import at_measured_depth
from jambs.drawings.views.outlines import is_inside, turned
from jambs.drawings.views.reveals import LINING, is_lining, named_chains
from jambs.geometry import Point
from jambs.job.models.openings import Job
from jambs.length import HALF_64TH, length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.parts.words.proud_words import proud_words
from jambs.section.region import Region, Section, SectionCut, Stuff

SHOWN = (
    Stuff.GYPSUM, Stuff.FRAMING, Stuff.FRAME, Stuff.JAMB, Stuff.SILL, Stuff.CASING, Stuff.SHIM, Stuff.GLASS,
    Stuff.RETURN, Stuff.TILE, Stuff.FURRING, Stuff.SEALANT,
)  # fmt: skip
CASING_SHOWN = 1.25
"""How much of casing and apron is shown past what lines the opening: the rest has no corner [in]."""
FRAME_SHOWN = 0.75
"""How much of the frame is shown behind the parts [in]."""
TITLES = {SectionCut.HEAD: "Detail at head, inside", SectionCut.SILL: "Detail at sill, inside"}


def corner_details(kit: Kit, sections: Iterable[Section], job: Job) -> list[View]:
    """Make the details of head and sill; one for both where the sill is the head's mirror image."""
    measured = (at_measured_depth(section, kit) for section in sections if section.cut in TITLES)
    shown = (one for one in measured if any(_is_shown_whole(region, kit) for region in one.regions))
    views = [_corner(one, kit, job) for one in shown]
    if len(views) == 2 and _form(views[0]) == _form(views[1], mirrored=True):
        head, sill = views
        marks = ", ".join(line for one in sill.call_outs for line in one.lines)
        return [replace(head, remarks=(*head.remarks, f"at the sill the same in mirror image: {marks}"))]
    return views


def _form(view: View, *, mirrored: bool = False) -> tuple[object, ...]:
    """Return what makes two details alike: parts, frame and reveals, not the wall behind; mirrored upside down.

    Of the frame counts what lies beside the parts, not how far it goes on behind them.
    """
    parts, frame = ([shape for shape in view.shapes if shape.ink is ink] for ink in (Ink.TRIM_INSIDE, Ink.WINDOW))
    box = box_around(point for shape in (*parts, *frame) for point in shape.points)

    def corner(point: Point) -> tuple[int, int]:
        up = box.top - point[1] if mirrored else point[1] - box.bottom
        return round((point[0] - box.left) / HALF_64TH), round(up / HALF_64TH)

    _, highest = max((corner(point) for shape in parts for point in shape.points), default=(0, 0))
    outlines = frozenset(
        (shape.ink, frozenset((across, min(up, highest)) for across, up in map(corner, shape.points)))
        for shape in (*parts, *frame)
    )
    return outlines, frozenset(interval.name for chain in view.chains for interval in chain.intervals)


def _corner(section: Section, kit: Kit, job: Job) -> View:
    detail = close_up(section, _room(section, kit), SHOWN)
    chains = _steps(section, kit)
    if at := break_of(detail):
        detail, chains = broken_out(detail, at), moved_chains(chains, at)
    return View(
        name=f"corner {section.cut.value}",
        kind=ViewKind.CORNER,
        title=TITLES[section.cut],
        shapes=(*outlines(detail, kit), *break_lines(detail)),
        fills=tuple(hatches(detail)),
        chains=tuple(chains),
        call_outs=tuple(names(detail, kit, side=ViewSide.RIGHT, wanted=_is_named)),
        remarks=(_edge_words(kit, job), *flats_cut(kit, section.cut, job, only=Where.INTERIOR)),
        half_size=True,
        widest_words=NARROW_WORDS,
    )


def _is_named(region: Region) -> bool:
    return bool(region.mark) or region.stuff is Stuff.FRAME


def _edge_words(kit: Kit, job: Job) -> str:
    """Say how the lining ends at the wall."""
    returns = kit.placement.opening.interior.returns
    if returns is None:
        return f"jambs stand {proud_words(job.shop.proud, 'the finished wall', job.units)}"
    return f"coat {length_text(returns.corner_bead.nose, units=job.units)} over the boards, to the nose of the bead"


def _room(section: Section, kit: Kit) -> Box:
    """Return what the detail shows: the parts of the room side, a piece of the frame behind them."""
    own = [turned(one.outline) for one in section.regions if _is_shown_whole(one, kit)]
    frame = [turned(one.outline) for one in section.regions if one.stuff is Stuff.FRAME]
    box = box_around(point for polygon in own for point in polygon)
    right = kit.placement.inside_edge + FRAME_SHOWN
    whole = box_around(point for polygon in (*own, *frame) for point in polygon)
    shown = replace(whole, right=right)  # the frame may reach farther up or down outside of it
    edge = box_around(point for polygon in frame for point in clipped(polygon, shown))
    low, high = min(box.bottom, edge.bottom), max(box.top, edge.top)
    lining = box_around(
        point for one in section.regions if one.stuff in LINING and is_inside(one, kit) for point in turned(one.outline)
    )
    if section.cut is SectionCut.SILL:
        low = max(low, lining.bottom - CASING_SHOWN)
    else:
        high = min(high, lining.top + CASING_SHOWN)
    return Box(box.left - PAST_EDGE, low - PAST_EDGE, right, high + PAST_EDGE)


def _is_shown_whole(region: Region, kit: Kit) -> bool:
    return region.stuff in (*LINING, Stuff.CASING) and is_inside(region, kit)


def _steps(section: Section, kit: Kit) -> list[Chain]:
    """Dimension the reveals by name: casing back from the jamb, jamb or stool back from the edge of the frame."""
    is_sill = section.cut is SectionCut.SILL
    casing, jamb, frame = (_corner_of(section, kit, stuffs) for stuffs in ((Stuff.CASING,), LINING, (Stuff.FRAME,)))
    has_stool = is_sill and any(
        one.stuff in (Stuff.SILL, Stuff.TILE) and is_inside(one, kit) for one in section.regions
    )
    at_frame = _corner_of(section, kit, LINING, at_frame=True)
    steps = [("frame reveal", at_frame, frame)]
    if not has_stool:
        steps.insert(0, ("casing reveal", casing, jamb))
    shown = ((name, one, two) for name, one, two in steps if one and two and abs(one[1] - two[1]) > HALF_64TH / 2)
    return named_chains(shown, ViewSide.LEFT)


def _corner_of(section: Section, kit: Kit, stuffs: Sequence[Stuff], *, at_frame: bool = False) -> Point | None:
    """Return the corner of a part that is nearest to the room, or to the frame, on its edge toward the opening."""
    regions = [one for one in section.regions if one.stuff in stuffs and (one.stuff not in LINING or is_lining(one))]
    polygons = [turned(one.outline) for one in regions if one.stuff is Stuff.FRAME or is_inside(one, kit)]
    if not polygons:
        return None
    boxes = [box_around(polygon) for polygon in polygons]
    left = min(box.left for box in boxes)
    if stuffs == (Stuff.FRAME,):
        levels = [y for polygon in polygons for x, y in polygon if abs(x - left) < HALF_64TH]
    else:
        levels = [level for polygon in polygons for level in _levels(polygon, section, kit, at_frame=at_frame)]
    return (left, max(levels) if section.cut is SectionCut.SILL else min(levels))


def _levels(polygon: Polygon, section: Section, kit: Kit, *, at_frame: bool) -> list[float]:
    """Return the levels of a part's corners; of a flared one those at its room edge, or at its frame edge."""
    box = box_around(polygon)
    if not kit.flares.at(section.cut.side):
        return [box.bottom, box.top]
    edge = box.right if at_frame else box.left
    return [y for x, y in polygon if abs(x - edge) < HALF_64TH]
