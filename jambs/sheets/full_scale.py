"""Templates at full scale, to cut out and lay on the board: horns and notches of stools and sills, a sill's end.

Each end that is notched is drawn as it lies with the face up; a sill's end also as one looks at it. Round an opening
that is no rectangle each slant that ends are cut to is drawn once, to set a bevel by. The section of molded casing is
drawn once. A piece that is sawn to arcs is drawn whole, each kind once, its arcs within 0.0005 in of true.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from jambs.geometry import Outline, Point, tangent
from jambs.length import MM_PER_INCH, Grid, Units, decimal_text, length_text
from jambs.outlines import SAME_POINT, kept, without_doubles
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.cuts import Cut, Edge, EdgeBevel, End, EndBevel, Groove, Miter, Molded, Notch
from jambs.parts.board.part import Part
from jambs.parts.board.plies import ArcEnds
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.planned import depth_is_planned
from jambs.parts.words.edge_names import edge_name, edge_names, is_turned
from jambs.sheets.setting_out import setting_out
from jambs.sheets.template import Template

PAST_NOTCH = {Units.INCH: 2.0, Units.MM: 50 / MM_PER_INCH}
"""How far a template goes on past the notch, to be lined up with the edge [in]."""
SAME_SLANT = 4
"""Decimals to which two slants are one: of an angle [degrees] and of what it is cut over [in]."""
SAME_CURVES = 1e-4
"""Corners of pieces that are sawn to arcs nearer than this are one [in]: they share a template."""
DRAWN_EXACT = "told on the shop's grid, drawn exact"
"""What is said of radii: words tell them as the cut sheet does; what is cut along is drawn as it was computed."""
SPRING_WORDS, RADIUS_WORDS = 0.3, 0.08
"""Where the words of a form's lines stand: from the arc toward its center."""


def templates_of(kit: CutKit, *, grid: Grid) -> tuple[Template, ...]:
    """Return the templates of an opening; none of a rectangle where no part is notched."""
    opening = kit.placement.opening
    notched = tuple(
        replace(one, is_planned=depth_is_planned(part, opening, kit.run))
        for part in kit.parts
        if part.is_wood
        for one in _of_part(part, grid)
    )
    molded = tuple(_profile(part, grid.units) for part in _molded(kit.parts))
    return (
        (*notched, *molded)
        if opening.shape is None
        else (*notched, *_slants(kit, grid.units), *_arced(kit, grid), *setting_out(kit, grid))
    )


def _molded(parts: Sequence[Part]) -> list[Part]:
    """Return one part of each section that boards are run to."""
    found: dict[Cut, Part] = {}
    for part in parts:
        for cut in part.cuts:
            if isinstance(cut, Molded):
                found.setdefault(cut, part)
    return [*found.values()]


def _arced(kit: CutKit, grid: Grid) -> Iterator[Template]:
    """Draw every piece that is sawn to arcs; alike ones once, and with them those that are their mirror images."""
    found: list[tuple[Outline, list[Part], list[Part]]] = []
    for part in kit.parts:
        if not part.arcs:
            continue
        own = _from_left(part.curved_outline)
        mirrored = _from_left([(-u, v) for u, v in reversed(own)])
        for outline, alike, mates in found:
            if _is_same(own, outline):
                alike.append(part)
                break
            if not part.is_laminated and _is_same(mirrored, outline):
                mates.append(part)
                break
        else:
            found.append((own, [part], []))
    for _, alike, mates in found:
        yield _of_arcs(alike, mates, grid)


def _from_left(outline: Sequence[Point]) -> Outline:
    """Return an outline from its left end on: ends that are slanted alike leave room at both ends of the blank."""
    left = min(u for u, _ in outline)
    return tuple((u - left, v) for u, v in outline)


def _is_same(one: Outline, two: Outline) -> bool:
    """Say whether two outlines are one, at whichever corner they begin."""
    count = len(one)
    return count == len(two) and any(
        all(math.dist(one[at], two[(at + first) % count]) < SAME_CURVES for at in range(count))
        for first in range(count)
    )


def _of_form(parts: Sequence[Part], grid: Grid) -> Template:
    """Draw half of the form, from its center line on: turned over it is the other half."""
    part, marks = parts[0], ", ".join(part.mark for part in parts)
    form, ends = bending_form(part), part.blank.plies.ends if part.blank.plies else ArcEnds.SPRING_LINES
    past, middle = "it" if ends is ArcEnds.DIAMETER else "them", form.center[0]
    half = without_doubles(kept(form.outline, (1.0, 0.0), (middle, 0.0)))
    outline = tuple((x - middle, y) for x, y in half)
    around, center_line = _parted(outline, 0.0)
    curve, foot = _without_foot(around)
    spring = tuple((x - middle, y) for x, y in form.spring_lines[1])
    bent_to, jamb = (grid.text(one) for one in (form.radius, part.arcs[0].radius))
    radii, one_radius = _form_radii(part, grid), f"radius {bent_to}, for {jamb} once it has sprung back"
    size = (max(x for x, _ in outline), max(y for _, y in outline))
    labels = [
        ((0.0, size[1] / 2), "center line"),
        (_between(*spring, share=SPRING_WORDS), ends.line_words),
        (_between((0.0, size[1]), (0.0, form.center[1]), share=RADIUS_WORDS), f"crown; radius {bent_to}"),
    ]
    if form.center[1] > 0:
        labels.append(((0.0, form.center[1]), "center of the radius"))
    return Template(
        title=f"{marks} {part.name}: the form {'it is' if len(parts) == 1 else 'all are'} bent over",
        note=f"{radii or one_radius}, {DRAWN_EXACT}; half of it: turned over on the center line it is "
        f"the other half; the jamb ends on the {ends.value}, the form goes on past {past}; its foot and the center "
        "line, square to each other, are drawn on with a straightedge",
        size=size,
        cut=(curve,),
        ruled=(foot,),
        broken=(center_line, spring),
        labels=tuple(labels),
    )


def _without_foot(around: Outline) -> tuple[Outline, Outline]:
    """Part half an outline of a form, from its foot at the center line on, into its curve and its straight foot."""
    corner = next(number for number, (_, y) in enumerate(around) if y > SAME_POINT) - 1
    return around[corner:], around[: corner + 1]


def _form_radii(part: Part, grid: Grid) -> str:
    """Name the radii of a form of several arcs, from the spring line up; nothing of one arc."""
    pieces = part.blank.plies.pieces if part.blank.plies else ()
    radii = [grid.text(radius) for radius, _ in pieces[: len(pieces) // 2 + 1]]
    if not radii:
        return ""
    return f"radii {', then '.join(radii)} at the crown, each tighter than the jamb's by what springs back"


def _between(start: Point, finish: Point, *, share: float) -> Point:
    (x0, y0), (x1, y1) = start, finish
    return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def _of_arcs(parts: Sequence[Part], mates: Sequence[Part], grid: Grid) -> Template:
    """Draw a piece that is sawn to arcs; ``mates``: its mirror images, for which the paper is turned over."""
    first = parts[0]
    if first.is_laminated:
        return _of_form(parts, grid)
    radii = " and ".join(grid.text(arc.radius) for arc in first.arcs)
    lies = "seen on edge, hollow face below" if first.is_sawn_on_edge else "face up, inner edge below"
    outline = _from_left(first.curved_outline)
    over = f"; turned over for {_marks(mates)}, then {_left_words(mates)}" if mates else ""
    return Template(
        title=f"{_marks([*parts, *mates])}: {first.kind.words}, its curves",
        note=f"{lies}; radii {radii}, {DRAWN_EXACT}; {_left_words(parts)}{over}",
        size=(max(u for u, _ in outline), max(v for _, v in outline)),
        cut=((*outline, outline[0]),),
    )


def _marks(parts: Sequence[Part]) -> str:
    return ", ".join(part.mark for part in parts)


def _left_words(parts: Sequence[Part]) -> str:
    """Say which end of each part its template has at the left."""
    found: dict[str, list[str]] = {}
    for part in parts:
        found.setdefault(part.seat.ends[0].words, []).append(part.mark)
    if len(found) == 1:
        return f"left is the {next(iter(found))} end"
    return "left is " + ", ".join(f"the {end} end of {' and '.join(marks)}" for end, marks in found.items())


def _of_part(part: Part, grid: Grid) -> Iterator[Template]:
    notches = {cut.end: cut for cut in part.cuts if isinstance(cut, Notch)}
    for end, name in zip(End, part.seat.ends, strict=True):
        if notch := notches.get(end):
            yield _end(part, notch, f"{part.mark} {part.name}, {name.words} end, face up", grid)
    if notches and any(isinstance(cut, EdgeBevel | Groove) for cut in part.cuts):
        yield _profile(part, grid.units)


def _end(part: Part, notch: Notch, title: str, grid: Grid) -> Template:
    """One end of a part to a little past its notch."""
    reach = notch.along + PAST_NOTCH[grid.units]
    first = 0.0 if notch.end is End.START else part.length - reach
    found: Sequence[Point] = part.outline
    for toward, at in (((1.0, 0.0), (first, 0.0)), ((-1.0, 0.0), (first + reach, 0.0))):
        found = kept(found, toward, at)
    outline = without_doubles([(u - first, v) for u, v in found])
    break_at = reach if notch.end is End.START else 0.0
    cut, broken = _parted(outline, break_at)
    along, across = (grid.text(size) for size in (notch.along, notch.across))
    edge = edge_name(part, notch.edge)
    below, above = edge_names(part)
    width = part.silhouettes.sizes.width
    if is_turned(part):  # as the drawing has it: what is left in the opening at the left
        below, above = above, below
        cut, broken = (tuple((reach - u, width - v) for u, v in line) for line in (cut, broken))
    note = (
        f"notch {along} along the grain, {across} in from the {edge}; {below} below, {above} above; "
        "broken line: the board goes on"
    )
    return Template(title=title, note=note, size=(reach, width), cut=(cut,), broken=(broken,))


def _parted(outline: Outline, break_at: float) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Part an outline at the side where the board goes on: the rest in one line, and that side."""
    count = len(outline)
    is_there = [abs(u - break_at) < SAME_POINT for u, _ in outline]
    at = next(n for n in range(count) if is_there[n] and is_there[(n + 1) % count])
    line = tuple(outline[(at + 1 + n) % count] for n in range(count))
    return line, (line[-1], line[0])


def _profile(part: Part, units: Units) -> Template:
    """The end of a board as one looks at it from its start: the face above, the near edge at the left."""
    sizes = part.silhouettes.sizes
    end = part.silhouettes.end
    angles = dict.fromkeys(decimal_text(cut.angle_deg, 1) for cut in part.cuts if isinstance(cut, EdgeBevel))
    bevels = f"edges beveled {', '.join(angles)}°; " if angles else ""
    closed = tuple((v, sizes.thickness - w) for v, w in (*end, end[0]))
    thick = length_text(part.thickness, units=units)
    return Template(
        title=f"{part.mark} {part.name}, its end, face above",
        note=f"{bevels}{thick} thick; {edge_name(part, Edge.NEAR)} at the left",
        size=(sizes.width, sizes.thickness),
        cut=(closed,),
    )


# ---- round an opening that is no rectangle


@dataclass(frozen=True, slots=True, kw_only=True)
class _Slant:
    """How ends are cut: on the flat (a miter, over the width) or on edge (a bevel, over the thickness) [in].

    ``is_long_above``: the long point lies at the far edge of what lies face up, or on the face of what stands on edge.
    """

    over: float
    angle_deg: float
    is_on_edge: bool
    is_long_above: bool


def _slants(kit: CutKit, units: Units) -> Iterator[Template]:
    """Draw every slant once: its start end, which turned over is the finish end of the same slant."""
    found: dict[_Slant, list[Part]] = {}
    for part in kit.parts:
        for cut in part.cuts if part.is_wood else ():
            if slant := _slant(part, cut):
                found.setdefault(slant, []).append(part)
    for slant, parts in found.items():
        opening = kit.placement.opening
        planned = not slant.is_on_edge and any(depth_is_planned(part, opening, kit.run) for part in parts)
        yield replace(_of_slant(slant, parts, units), is_planned=planned)


def _slant(part: Part, cut: Cut) -> _Slant | None:
    if not isinstance(cut, Miter | EndBevel):
        return None
    is_on_edge = isinstance(cut, EndBevel)
    return _Slant(
        over=round(part.thickness if is_on_edge else part.width, SAME_SLANT),
        angle_deg=round(cut.angle_deg, SAME_SLANT),
        is_on_edge=is_on_edge,
        is_long_above=not cut.face_short if isinstance(cut, EndBevel) else cut.long_edge is Edge.FAR,
    )


def _of_slant(slant: _Slant, parts: Sequence[Part], units: Units) -> Template:
    high, over = slant.over, slant.over * tangent(slant.angle_deg)
    reach = over + PAST_NOTCH[units]
    above, below = (0.0, over) if slant.is_long_above else (over, 0.0)
    marks = ", ".join(dict.fromkeys(part.mark for part in parts))
    names = " and ".join(dict.fromkeys(part.kind.words for part in parts))
    far = " or ".join(dict.fromkeys(edge_name(part, Edge.FAR) for part in parts))
    seen = "seen on edge, face above" if slant.is_on_edge else f"face up, {far} above"
    angle = decimal_text(slant.angle_deg, 1)
    return Template(
        title=f"{marks}: {names}, {angle}° off square",
        note=f"{seen}; left end, turned over the right one; broken line: the board goes on",
        size=(reach, high),
        cut=(((reach, high), (above, high), (below, 0.0), (reach, 0.0)),),
        broken=(((reach, 0.0), (reach, high)),),
    )
