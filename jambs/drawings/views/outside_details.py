"""Details of the outside at head and sill, half size: reveals, sealant, metal; slope, nosing, drip kerf of a sill."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from jambs.drawings.elements.boxes import Box, box_around
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import CallOut, Chain, Interval, View, ViewKind, ViewSide
from jambs.drawings.views.close_ups import (
    PAST_EDGE,
    PAST_FRAME,
    clipped_lines,
    close_up,
    hatches,
    names,
    outlines,
)
from jambs.drawings.views.flats_cut import flats_cut
from jambs.drawings.views.outlines import is_inside, turned
from jambs.drawings.views.reveals import FLARE, far_corner, named_chains
from jambs.drawings.views.section_works import levels_at, metal_and_sealant
from jambs.geometry import Point
from jambs.job.models.exterior_trim import SillEntry
from jambs.job.models.openings import Job
from jambs.length import HALF_64TH, Units, decimal_text, length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, SectionCut, Stuff

SHOWN = (
    Stuff.SHEATHING, Stuff.RIGID, Stuff.FIBER, Stuff.STRAPPING, Stuff.COVER, Stuff.CLADDING, Stuff.BUCK, Stuff.FRAME,
    Stuff.GLASS, Stuff.JAMB, Stuff.SILL, Stuff.CASING, Stuff.SEALANT, Stuff.AIR,
)  # fmt: skip
OWN = (Stuff.JAMB, Stuff.SILL, Stuff.CASING)
"""What is shown whole."""
TITLES = {SectionCut.HEAD: "Detail at head, outside", SectionCut.SILL: "Detail at sill, outside"}
NARROW_WORDS = 1.0
"""Lines of call-outs are broken here, so that head and sill stand side by side on the smaller page [in on paper]."""
NOT_LEVEL = "run, nosing and fall are level and plumb"


def outside_details(kit: Kit, sections: Iterable[Section], job: Job) -> list[View]:
    """Make the detail of the head, and of the sill where a sill lies there."""
    return [_detail(one, kit, job) for one in sections if one.cut in TITLES and _is_wanted(one, kit)]


def _is_wanted(section: Section, kit: Kit) -> bool:
    wanted = (Stuff.SILL,) if section.cut is SectionCut.SILL else OWN
    return any(one.stuff in wanted for one in _own(section, kit))


def _own(section: Section, kit: Kit) -> list[Region]:
    own = (one for one in section.regions if one.where is Where.EXTERIOR)
    return [one for one in own if one.stuff in OWN or one.is_clad_part]


def _detail(section: Section, kit: Kit, job: Job) -> View:
    works = metal_and_sealant(section, kit, job)
    metal = [point for shape in works.shapes for point in shape.points]
    box = _room(works.section, kit, metal)
    detail = close_up(works.section, box, SHOWN)
    is_sill = section.cut is SectionCut.SILL
    return View(
        name=f"outside {section.cut.value}",
        kind=ViewKind.CORNER,
        title=TITLES[section.cut],
        shapes=(*outlines(detail, kit), *clipped_lines(works.shapes, box)),
        fills=tuple(hatches(detail)),
        chains=tuple(_sill_chains(works.section, kit) if is_sill else _reveals(works.section, kit)),
        call_outs=(
            *names(detail, kit, side=ViewSide.RIGHT, wanted=_is_named),
            *(one for one in works.call_outs if _holds(box, one.target)),
            *(_sill_words(works.section, kit, job.units) if is_sill else ()),
        ),
        remarks=(NOT_LEVEL,) if is_sill else tuple(flats_cut(kit, section.cut, job, only=Where.EXTERIOR)),
        half_size=True,
        is_half_size_if_room=True,
        widest_words=NARROW_WORDS,
    )


def _holds(box: Box, point: Point) -> bool:
    return box.left < point[0] < box.right and box.bottom < point[1] < box.top


def _is_named(region: Region) -> bool:
    return region.where is Where.EXTERIOR or region.stuff is Stuff.FRAME


def _room(section: Section, kit: Kit, metal: Iterable[Point]) -> Box:
    """Return what the detail shows: the parts outside, the metal at them, a piece of the frame behind them."""
    frame = box_around(p for one in section.regions if one.stuff is Stuff.FRAME for p in turned(one.outline))
    own = [point for one in _own(section, kit) for point in turned(one.outline)]
    near = kit.placement.outside_edge - PAST_FRAME
    box = box_around([*own, *(point for point in metal if point[0] > near)])
    low, high = min(box.bottom, frame.bottom), max(box.top, frame.top)
    return Box(near, low - PAST_EDGE, box.right + PAST_EDGE, high + PAST_EDGE)


# ---- the head


def _reveals(section: Section, kit: Kit) -> Iterator[Chain]:
    """Dimension the reveals by name, and the sealant joint that parts the jamb from the frame."""
    trim = kit.placement.opening.exterior
    is_clad = trim is not None and trim.cladding_returns is not None
    lining = Stuff.CLADDING if is_clad else Stuff.JAMB
    frame, jamb, casing = (_lowest(section, kit, stuff) for stuff in (Stuff.FRAME, lining, Stuff.CASING))
    end = jamb
    if kit.outside_flares.at(section.cut.side):
        regions = [one for one in section.regions if one.stuff is Stuff.JAMB and not is_inside(one, kit)]
        end = far_corner(regions, wall_below=False, inside=False) if regions else jamb
    steps = (
        ("corner board past return" if is_clad else "casing reveal", casing, end),
        (FLARE, end, jamb),
        ("frame reveal", jamb, frame),
    )
    shown = ((name, one, two) for name, one, two in steps if one and two and abs(one[1] - two[1]) > HALF_64TH / 2)
    yield from named_chains(shown, ViewSide.RIGHT)
    if frame and jamb:
        start = min(box_around(polygon).left for polygon in _polygons(section, kit, lining))
        if start - frame[0] > HALF_64TH:
            yield _chain(ViewSide.BOTTOM, frame, (start, jamb[1]), "sealant joint")


def _chain(side: ViewSide, one: Point, two: Point, name: str) -> Chain:
    return Chain(side=side, intervals=(Interval(start=one, finish=two),), after=name)


def _polygons(section: Section, kit: Kit, stuff: Stuff) -> list[Polygon]:
    return [
        turned(one.outline)
        for one in section.regions
        if one.stuff is stuff
        and (stuff is Stuff.FRAME or not is_inside(one, kit))
        and (stuff is not Stuff.CLADDING or one.is_clad_part)
    ]


def _lowest(section: Section, kit: Kit, stuff: Stuff) -> Point | None:
    """Return the lower outer corner of a part: of the frame, of its outermost edge."""
    points = [point for polygon in _polygons(section, kit, stuff) for point in polygon]
    if not points:
        return None
    right = max(x for x, _ in points)
    return (right, min(y for x, y in points if stuff is not Stuff.FRAME or right - x < HALF_64TH))


# ---- the sill


def _sill_chains(section: Section, kit: Kit) -> Iterator[Chain]:
    """Dimension run and nosing over the sill, its fall beside it, the joint under the frame where that is least."""
    (sill,) = _polygons(section, kit, Stuff.SILL)
    (start, top), (right, nose) = _top_at_frame(sill, kit), _nose(sill)
    cladding = kit.placement.planes.cladding_face
    if right - cladding > HALF_64TH:
        yield _chain(ViewSide.TOP, (cladding, max(levels_at(sill, cladding))), (right, nose), "nosing")
    yield _chain(ViewSide.TOP, (start, top), (right, nose), "run")
    if top - nose > HALF_64TH:
        yield _chain(ViewSide.RIGHT, (right, nose), (start, top), "fall")
    frame = min(y for polygon in _polygons(section, kit, Stuff.FRAME) for _, y in polygon)
    corner = (box_around(sill).left, box_around(sill).top)
    if frame - corner[1] > HALF_64TH:
        yield _chain(ViewSide.LEFT, corner, (corner[0], frame), "joint")


def _top_at_frame(sill: Polygon, kit: Kit) -> Point:
    """Return where the outside edge of the frame stands over the top of a sill."""
    edge = max(kit.placement.outside_edge, box_around(sill).left)
    return (edge, max(levels_at(sill, edge)))


def _nose(sill: Polygon) -> Point:
    """Return the upper corner of a sill's front edge, which is plumb."""
    right = max(x for x, _ in sill)
    return (right, max(y for x, y in sill if right - x < HALF_64TH))


def _sill_words(section: Section, kit: Kit, units: Units) -> Iterator[CallOut]:
    """Name the slope on the top of the sill, and the drip kerf in its underside, as they are sawn."""
    trim = kit.placement.opening.exterior
    assert trim is not None and trim.sill is not None
    (sill,) = _polygons(section, kit, Stuff.SILL)
    (start, top), (right, nose) = _top_at_frame(sill, kit), _nose(sill)
    middle = ((start + 2 * right) / 3, (top + 2 * nose) / 3)
    slope = f"slope {decimal_text(trim.sill.slope, 1)}°"
    yield CallOut(target=middle, lines=(slope,), side=ViewSide.RIGHT, on_edge=True)
    place = next(number for number, one in enumerate(section.regions) if turned(one.outline) == sill)
    for one in section.regions[place:]:  # what is sawn out of a part comes after it
        if one.stuff is Stuff.AIR and _lies_in(turned(one.outline), sill):
            box = box_around(turned(one.outline))
            yield CallOut(target=box.center, lines=(_kerf_words(trim.sill, units),), side=ViewSide.RIGHT)


def _lies_in(groove: Polygon, sill: Polygon) -> bool:
    return box_around(sill).grown(HALF_64TH).overlaps(box_around(groove))


def _kerf_words(sill: SillEntry, units: Units) -> str:
    kerf = sill.drip_kerf
    wide, deep, back = (length_text(one, units=units) for one in (kerf.width, kerf.depth, kerf.set_back))
    return f"drip kerf {wide} wide, {deep} deep, {back} in from the front edge"
