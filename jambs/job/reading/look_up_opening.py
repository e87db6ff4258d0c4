"""An opening as the job file or the schedule lists it becomes an opening with every name looked up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.fields import Size
from jambs.job.models.layers import Wall, WallEntry
from jambs.job.models.openings import Assumed, Opening, OpeningEntry, whole_measured
from jambs.job.models.path import outset, shaped_path, size_over_all
from jambs.job.models.position import RULES, PositionRule
from jambs.job.models.shop import Shop
from jambs.job.models.side_lines import side_lines
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.windows import Sash, WindowType
from jambs.job.reading.catalog import find_layer, material_name
from jambs.job.reading.cladding import ask_cladding
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.doors import ask_door
from jambs.job.reading.faults import advice
from jambs.job.reading.gangs import FoundGang, ask_units, find_gang, hold_boxed, hold_trim, placed_gang
from jambs.job.reading.look_up import Found, Shelf, find
from jambs.job.reading.shapes import ask_shape
from jambs.job.reading.tree import TextSource
from jambs.job.reading.unstated import ask_for, unstated, with_usual
from jambs.job.reading.walls import look_up_wall
from jambs.length import TAPE_GRIDS, Units, length_text
from jambs.sides import Side

SHEATHING, TRIM_PLANE = "sheathing", "trim plane"
"""Faces that every wall has."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelves:
    """All that an opening may name, and what holds where it says nothing itself."""

    walls: Shelf[WallEntry]
    windows: Shelf[WindowType]
    interior: Shelf[InteriorTrim]
    exterior: Shelf[ExteriorTrim]
    looked_up: Mapping[str, tuple[Wall | None, tuple[Assumed, ...]]]
    position: PositionRule | None
    top: TextSource
    shop: Shop | None


def look_up_opening(source: TextSource, shelves: Shelves, complaints: Complaints) -> Opening | None:
    """Look up one opening; nothing if it is faulty, and then every fault of it is noted."""
    entry = complaints.check(OpeningEntry, source)
    if not isinstance(source.value, dict):
        return None
    mark = str(source.value.get("mark", "its own"))
    wall = find(shelves.walls, source, mark, complaints)
    gang = _gang(entry, source, shelves, mark, complaints)
    window = gang.whole if gang else None if _is_ganged(source) else find(shelves.windows, source, mark, complaints)
    interior = find(shelves.interior, source, mark, complaints)
    bare = source.value.get("exterior_trim") == "none"
    exterior = None if bare else find(shelves.exterior, source, mark, complaints)
    built, assumed = _wall(wall, shelves, complaints) if wall else (None, ())
    rule = _position(entry, source, wall, built, shelves, complaints) if entry else None
    if not (entry and built and window and interior and rule and shelves.shop):
        return None
    wrong = not _fits(entry, window.entry, source, complaints)
    wrong |= not gang and not _opens(entry, window.entry, source, complaints)
    wrong |= ask_door(entry, window.entry, interior.entry, source, complaints)
    wrong |= ask_cladding(entry, built, exterior.entry if exterior else None, source, complaints)
    wrong |= ask_shape(entry, window.entry, interior.entry, exterior.entry if exterior else None, source, complaints)
    if gang:
        wrong |= hold_trim(interior.entry, exterior.entry if exterior else None, source, complaints)
        bare_exterior = exterior.entry if exterior else None
        wrong |= hold_boxed(entry, interior.entry, bare_exterior, source, complaints)
        wrong |= ask_units(gang, entry, rule, source, complaints)
    elif not wrong:
        wrong = ask_for(window.entry, entry, rule, source, complaints)
    if wrong:
        return None
    missing = unstated(window.entry)
    whole, usual = with_usual(window.entry, complaints.units, is_escape=entry.escape)
    placed, usual = placed_gang(gang, entry, complaints) if gang else (None, usual)
    assumed += (*_assumed(entry, whole, exterior is not None, shelves.shop, complaints.units), *usual)
    found = replace(window, entry=whole)
    opening = _opening(entry, built, found, interior, exterior, rule, assumed, shelves.shop, missing)
    return replace(opening, gang=placed) if placed else opening


def _is_ganged(source: TextSource) -> bool:
    return "units" in source.value


def _gang(
    entry: OpeningEntry | None, source: TextSource, shelves: Shelves, mark: str, complaints: Complaints
) -> FoundGang | None:
    if entry is None or entry.units is None:
        return None
    return find_gang(entry, source, shelves.windows, mark, complaints)


def _wall(found: Found[WallEntry], shelves: Shelves, complaints: Complaints) -> tuple[Wall | None, tuple[Assumed, ...]]:
    if not found.is_own:
        return shelves.looked_up[found.name]
    return look_up_wall(found.name, found.entry, found.source, complaints)


def _position(
    entry: OpeningEntry,
    source: TextSource,
    wall: Found[WallEntry] | None,
    built: Wall | None,
    shelves: Shelves,
    complaints: Complaints,
) -> PositionRule | None:
    """Return the opening's own rule, else its wall's, else the job's; hold the face it names against the wall."""
    if entry.position:
        rule, place = entry.position, source.within(("position",))
    elif wall and wall.entry.position:
        rule, place = wall.entry.position, wall.source.within(("position",))
    elif shelves.position:
        rule, place = shelves.position, shelves.top.within(("position",))
    else:
        if "position" not in shelves.top.value:
            advice_text = f"add it: one of {', '.join(RULES)} (see `jambs keys position`), here or in every wall"
            complaints.say(shelves.top, (), f"position is missing; {advice_text}")
        return None
    if rule.flange_on is None or built is None:
        return rule
    return _on_face(rule, rule.flange_on, built, place, complaints)


def _on_face(
    rule: PositionRule, named: str, wall: Wall, place: TextSource, complaints: Complaints
) -> PositionRule | None:
    layers = [layer.name for layer in wall.layers]
    faces = list(dict.fromkeys([SHEATHING, TRIM_PLANE, *layers, *(layer.role.value for layer in wall.layers)]))
    known = find_layer(named)
    names = {material_name(named), *([material_name(known.name)] if known else [])}
    match = next((face for face in faces if material_name(face) in names), None) or _only_layer_of(named, layers)
    if match is None:
        complaints.say(place, ("flange_on",), _no_face(named, wall, faces, is_plain=isinstance(place.value, str)))
        return None
    if layers.count(match) > 1:
        message = f"wall {wall.name} has {layers.count(match)} layers called {match!r}, so it may be two places; "
        complaints.say(place, ("flange_on",), f"{message}write sheathing, trim plane, interior_depth or exterior_depth")
        return None
    return rule.model_copy(update={"flange_on": match})


def _only_layer_of(named: str, layers: list[str]) -> str | None:
    """Return the layer that is meant by its material without a size: ``plywood``, where one layer is of it."""
    begun = {layer for layer in layers if material_name(layer).startswith(f"{material_name(named)} ")}
    return begun.pop() if len(begun) == 1 else None


def _no_face(named: str, wall: Wall, faces: list[str], *, is_plain: bool) -> str:
    """Say that a wall has no such face; a position in plain words may also have been meant for a rule."""
    if not is_plain:
        return f"wall {wall.name} has no face {named!r}; {advice(named, faces)}"
    otherwise = f"write one of {', '.join(RULES)} (see `jambs keys position`), or a layer for its outer face"
    near = advice(named, [*RULES, *faces], otherwise=otherwise)
    return f"{named!r} is not a rule, and no face of wall {wall.name}; {near}"


def _fits(entry: OpeningEntry, window: WindowType, source: TextSource, complaints: Complaints) -> bool:
    """Hold the sizes of one opening against each other."""
    frame, rough, face = entry.frame, entry.rough_opening, window.frame_face
    text = _size_text(frame, complaints.units)
    if rough and (rough.width < frame.width or rough.height < frame.height):
        found = _size_text(rough, complaints.units)
        message = f"is {found}, smaller than the frame {text}; write the hole between the studs or in the buck"
        complaints.say(source, ("rough_opening",), message)
        return False
    if face.left + face.right >= frame.width or face.head + face.sill >= frame.height:
        message = f"is {text}, no more than the frame faces of its window together; correct one of them"
        complaints.say(source, ("frame",), message)
        return False
    return True


def _opens(entry: OpeningEntry, window: WindowType, source: TextSource, complaints: Complaints) -> bool:
    """Refuse an escape opening that does not open."""
    if entry.escape and window.sash is Sash.FIXED:
        message = "is yes and its window is fixed: nobody gets out; give it a window that opens, or write no"
        complaints.say(source, ("escape",), message)
        return False
    return True


def _size_text(size: Size, units: Units) -> str:
    return f"{length_text(size.width, units=units)} x {length_text(size.height, units=units)}"


def _rough_opening(entry: OpeningEntry, shop: Shop) -> Size:
    """Frame and shim space on each side [in], rounded up to what a framer saws: the shims take the rest.

    A door's frame stands on its sill: no shims are under it. Round a shape that is no rectangle the space is the same
    along every edge, and nothing is rounded.
    """
    frame, space, shims_up = entry.frame, shop.shim_space, 1 if _stands(entry) else 2
    if entry.shape:
        return size_over_all(outset(shaped_path(frame, entry.shape), dict.fromkeys(Side, space)))
    size = Size(width=frame.width + 2 * space, height=frame.height + shims_up * space)
    grid = shop.framing_grid
    return Size(width=grid.up(size.width), height=grid.up(size.height)) if grid else size


def _stands(entry: OpeningEntry) -> bool:
    """Say whether the frame stands on its sill, as a door's does, with nothing under it to shim."""
    return entry.floor_below_frame is not None


def _as_given(size: Size, units: Units) -> str:
    """Print a size that no tape of this job's unit holds, in the other unit where its tape does."""
    other = Units.MM if units is Units.INCH else Units.INCH
    is_foreign = all(TAPE_GRIDS[other].holds(one) for one in (size.width, size.height))
    return _size_text(size, other if is_foreign else units)


def _framed(given: Size, shop: Shop) -> Size:
    """Return a rough opening that the job gives [in], what a framer cannot mark on his tape rounded up to his grid."""
    grid, tape = shop.framing_grid, TAPE_GRIDS[shop.grid.units]
    if grid is None:
        return given
    width, height = (one if tape.holds(one) else grid.up(one) for one in (given.width, given.height))
    return Size(width=width, height=height)


def _assumed(
    entry: OpeningEntry, window: WindowType, has_exterior: bool, shop: Shop, units: Units
) -> tuple[Assumed, ...]:
    assumed = []
    if entry.rough_opening is None:
        rough, marks = _rough_opening(entry, shop), shop.framers_grid
        told = Size(width=marks.up(rough.width), height=marks.up(rough.height)) if entry.shape else rough
        size = _size_text(told, units)
        where = "at both sides and the head" if _stands(entry) else "on each side"
        why = f"frame and the shop's shim space of {length_text(shop.shim_space, units=units)} {where}"
        if shop.framing_grid and entry.shape is None:
            why += f", rounded up to {shop.framing_grid.text(shop.framing_grid.step)}"
        elif told != rough:
            why += f", to the next mark of {marks.text(marks.step)}"
        assumed.append(Assumed(what="rough opening", value=size, why=why))
    elif shop.framing_grid and (framed := _framed(entry.rough_opening, shop)) != entry.rough_opening:
        given, step = _as_given(entry.rough_opening, units), shop.framing_grid.text(shop.framing_grid.step)
        why = f"the job gives {given}; framing is sawn to {step}, the shims take the rest"
        assumed.append(Assumed(what="rough opening", value=_size_text(framed, units), why=why, is_rounded=True))
    if has_exterior and window.exterior_frame_face is None:
        why = "the job gives no exterior_frame_face; check the frame outside"
        assumed.append(Assumed(what="frame face outside", value="as inside", why=why))
    return tuple(assumed)


def _opening(
    entry: OpeningEntry,
    wall: Wall,
    window: Found[WindowType],
    interior: Found[InteriorTrim],
    exterior: Found[ExteriorTrim] | None,
    rule: PositionRule,
    assumed: tuple[Assumed, ...],
    shop: Shop,
    unstated: tuple[str, ...],
) -> Opening:
    return Opening(
        mark=entry.mark,
        room=entry.room,
        wall=wall,
        window_name=window.name,
        window=window.entry,
        frame=entry.frame,
        rough_opening=_framed(entry.rough_opening, shop) if entry.rough_opening else _rough_opening(entry, shop),
        sill_height=entry.height,
        head_with=entry.head_with,
        sill_with=entry.sill_with,
        floor_below_frame=entry.floor_below_frame,
        faces_deg=entry.faces,
        hinge=entry.hinge,
        interior_name=interior.name,
        interior=interior.entry,
        exterior_name=exterior.name if exterior else None,
        exterior=exterior.entry if exterior else None,
        position=rule,
        position_is_own=entry.position is not None,
        escape=entry.escape,
        safety_glass=entry.safety_glass,
        near_door=entry.near_door,
        wet_room=entry.wet_room,
        near_stairs=entry.near_stairs,
        drop_outside=entry.drop_outside,
        weight=entry.weight,
        elevation=entry.elevation,
        from_left=entry.from_left,
        measured=whole_measured(entry.measured, side_lines(entry.frame, entry.shape)),
        readings=entry.measured,
        assumed=assumed,
        unstated=unstated,
        shape=entry.shape,
        trim_with=entry.trim_with,
    )
