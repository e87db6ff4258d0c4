"""The order of laps: sections through sill and head with the metal as bent, tapes and membrane, numbered from below."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from jambs.drawings.elements.boxes import Box, box_around
from jambs.drawings.elements.view import CallOut, Ink, Shape, View, ViewSide
from jambs.drawings.views.outlines import turned
from jambs.drawings.views.sections import section_view
from jambs.flashing.blank import BlankKind, LegKind
from jambs.flashing.lap_words import LapKind
from jambs.flashing.make import Flashings, head_of
from jambs.geometry import Point
from jambs.job.models.openings import Job
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.section.cut import cut_sections
from jambs.section.region import Section, SectionCut, Stuff

BETWEEN = 2.5
"""Between the section at the sill and the one at the head, where the window is left out [in]."""
WALL_DRAWN = 6.5
"""How much wall is drawn past the frame [in]."""
OFF = 0.09
"""A tape is drawn this far outside what it lies on, the next one as far again [in]."""
TAPE_ON_FRAME, TAPE_PAST = 0.5, 1.25
"""How far a tape at the head reaches down over the frame and up past it [in]."""
BEYOND = 3.5
"""What is seen beyond the sections starts this far from the edges of the frame [in]."""
UP_MEMBRANE = 1.5
"""How far the membrane is drawn past the top of the upstand it laps [in]."""
HATCHED = (Ink.HATCH_TRIM,)
LEFT_OUT = (Ink.AIR_CONTROL, Ink.FASTENER)
"""What the order of laps does not speak of."""


def laps_view(kit: Kit, flashings: Flashings, job: Job) -> View:
    """Return the view of the order of laps of one opening: depth runs right, outside at the right; heights up [in].

    The head is moved down toward the sill; what is seen beyond between them is broken.
    """
    sections = {one.cut: _without_strips(one, flashings) for one in cut_sections(kit, wall_length=WALL_DRAWN)}
    views: dict[SectionCut, View] = {
        cut: section_view(section, kit, job) for cut, section in sections.items() if cut is not SectionCut.JAMB
    }
    down = _down(views, kit)
    moved = _mover(down, kit)
    shapes = [shape for view in views.values() for shape in _moved(view.shapes, moved) if shape.ink not in LEFT_OUT]
    lines = [_line(points, ink, moved) for points, ink in _strips(kit, flashings)]
    fills = tuple(
        replace(fill, pieces=tuple(tuple(map(moved, piece)) for piece in fill.pieces))
        for view in views.values()
        for fill in view.fills
        if fill.ink in HATCHED
    )
    targets = _targets(kit, flashings, sections)
    call_outs = [
        CallOut(target=moved(targets[lap.step.kind]), lines=(words,), side=ViewSide.RIGHT, short=words)
        for lap in flashings.laps
        if lap.step.kind in targets
        for words in [f"{lap.number}  {lap.step.what}"]
    ]
    return View(
        name=f"laps {kit.mark}",
        title=f"Order of laps, {kit.mark}",
        shapes=(*shapes, *lines),
        fills=fills,
        call_outs=tuple(call_outs),
    )


def _without_strips(section: Section, flashings: Flashings) -> Section:
    """Leave out plain strips of metal: blanks are drawn as they are bent; what lines a shape, as the section has it."""
    lines = {
        SectionCut.HEAD: any(one.kind is BlankKind.HEAD_RETURN and one.is_mitered for one in flashings.here),
        SectionCut.SILL: any(one.kind is BlankKind.BOTTOM_RETURN for one in flashings.here),
    }
    kept = [
        one
        for one in section.regions
        if one.stuff is not Stuff.METAL or (one.where is Where.EXTERIOR and lines.get(section.cut, False))
    ]
    return replace(section, regions=tuple(kept))


def _down(views: dict[SectionCut, View], kit: Kit) -> float:
    """How far the head comes down; nothing where there is no sill section."""
    if SectionCut.SILL not in views:
        return 0.0
    return views[SectionCut.HEAD].core.bottom - views[SectionCut.SILL].core.top - BETWEEN


def _mover(down: float, kit: Kit) -> Callable[[Point], Point]:
    """Return what moves the upper half of the opening down."""
    middle = kit.placement.opening.frame.height / 2

    def moved(point: Point) -> Point:
        return (point[0], point[1] - down) if point[1] > middle else point

    return moved


def _moved(shapes: Iterable[Shape], moved: Callable[[Point], Point]) -> list[Shape]:
    return [replace(shape, points=tuple(map(moved, shape.points))) for shape in shapes]


def _line(points: Sequence[Point], ink: Ink, moved: Callable[[Point], Point]) -> Shape:
    return Shape(points=tuple(map(moved, points)), ink=ink, closed=False)


def _strips(kit: Kit, flashings: Flashings) -> list[tuple[tuple[Point, ...], Ink]]:
    """Return the metal as bent, and tapes and membranes as broken lines, in wall coordinates (d, y)."""
    level = [blank for blank in flashings.here if blank.is_level]
    strips: list[tuple[tuple[Point, ...], Ink]] = [(blank.profile, Ink.FLASHING) for blank in level]
    return strips + [(line, Ink.MEMBRANE) for line in _membranes(kit, flashings).values()]


def _membranes(kit: Kit, flashings: Flashings) -> dict[LapKind, tuple[Point, Point]]:
    """Return tapes and membranes by their lap, upright lines (d, y); those at the sides seen beyond."""
    placement, kinds = kit.placement, {lap.step.kind for lap in flashings.laps}
    height = placement.opening.frame.height
    plane = placement.flange_plane if placement.opening.window.nailing_flange else placement.outside_edge
    foot = height - 2 * BEYOND if placement.opening.floor_below_frame is not None else BEYOND
    lines: dict[LapKind, tuple[Point, Point]] = {}
    if LapKind.SIDE_TAPE in kinds:
        lines[LapKind.SIDE_TAPE] = ((plane + OFF, foot), (plane + OFF, height - BEYOND))
    if LapKind.HEAD_TAPE in kinds:
        low = 0.0 if placement.opening.window.nailing_flange else -TAPE_ON_FRAME
        lines[LapKind.HEAD_TAPE] = ((plane + OFF, height + low), (plane + OFF, height + TAPE_PAST))
    if LapKind.HEAD_MEMBRANE in kinds:
        over = plane + 2 * OFF
        lines[LapKind.HEAD_MEMBRANE] = ((over, height + TAPE_PAST / 2), (over, height + 2 * TAPE_PAST))
    head = head_of(flashings)
    upstand = head.leg(LegKind.UPSTAND) if head else None
    if head and upstand and LapKind.UPSTAND in kinds:
        depth, top = head.start
        lines[LapKind.UPSTAND] = ((depth + OFF, top - 0.7 * upstand.width), (depth + OFF, top + UP_MEMBRANE))
    return lines


BLANKS = {
    BlankKind.SILL_PAN: LapKind.PAN,
    BlankKind.SILL_FLASHING: LapKind.SILL_FLASHING,
    BlankKind.HEAD_FLASHING: LapKind.HEAD_FLASHING,
}


def _targets(kit: Kit, flashings: Flashings, sections: dict[SectionCut, Section]) -> dict[LapKind, Point]:
    """Return where the number of each lap points, by what is lapped, in wall coordinates (d, y)."""
    targets = {
        kind: line[1] if kind is LapKind.SIDE_TAPE else _middle(line)
        for kind, line in _membranes(kit, flashings).items()
    }
    for blank in flashings.here:
        if blank.kind.is_return:
            continue
        targets[BLANKS[blank.kind]] = _middle(blank.profile[1:3])
    head = sections[SectionCut.HEAD]
    low = sections.get(SectionCut.SILL, head)
    targets[LapKind.WINDOW] = _outermost(low, Stuff.FRAME).center
    targets[LapKind.SILL] = _outermost(low, Stuff.SILL).center
    returned = next((one for one in flashings.blanks if one.kind is BlankKind.HEAD_RETURN and one.is_level), None)
    trim = kit.placement.opening.exterior
    is_metal = trim is not None and trim.returns is not None
    lined = _outermost(head, Stuff.METAL) if is_metal else _outermost(head, _casing_of(head), is_part=True)
    if LapKind.HEAD_FLASHING not in targets:  # formed on site: what it lies on, of metal its face leg
        targets[LapKind.HEAD_FLASHING] = (lined.right if is_metal else lined.center[0], lined.top)
        up = trim.head_flashing.upstand if trim else 0.0
        targets[LapKind.UPSTAND] = (kit.placement.planes.trim_plane, lined.top + up / 2)
    lining = (lined.center[0], lined.bottom) if is_metal else lined.center
    targets[LapKind.TRIM] = _middle(returned.profile[1:3]) if returned else lining
    cladding = _outermost(head, Stuff.CLADDING)
    targets[LapKind.CLADDING] = (cladding.center[0], cladding.bottom + 0.15 * cladding.height)
    return targets


def _middle(points: Sequence[Point]) -> Point:
    return (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))


def _casing_of(section: Section) -> Stuff:
    """Return what trims the opening outside: casing, or cladding that returns to the frame."""
    return Stuff.CASING if _has(section, Stuff.CASING) else Stuff.CLADDING


def _has(section: Section, stuff: Stuff) -> bool:
    return any(one.stuff is stuff for one in section.regions)


def _outermost(section: Section, stuff: Stuff, *, is_part: bool = False) -> Box:
    """Return the box of the outermost region of a stuff; of the outermost of all where there is none of it.

    ``is_part``: of cladding a part of the kit, that of the reveal, and not the wall's.
    """
    found = [one for one in section.regions if one.stuff is stuff]
    if stuff is Stuff.CLADDING:
        found = [one for one in found if one.is_clad_part is is_part]
    regions = found or section.regions
    return max((box_around(turned(one.outline)) for one in regions), key=lambda box: box.center[0])
