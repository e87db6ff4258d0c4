"""The usual cautions, where the work can hurt someone: each for what this opening holds, and where its line stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from jambs.job.models.layers import BuckKind, Layer, MadeOf, Role
from jambs.length import Units
from jambs.parts.board.cuts import EdgeBevel, EndBevel, PlaneCut, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.lifting import lifting_words, lifts_of
from jambs.parts.board.listing import by_ends
from jambs.parts.board.part import Part, sawn_of
from jambs.place.placement import Placement


class Beside(StrEnum):
    """The work that a caution stands beside: the cut sheet's first page, the install sheet, the rough openings."""

    SAW = "saw"
    INSTALL = "install"
    FRAMING = "framing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """One line of caution, the work that it stands beside, and the parts that it names at its end, by mark.

    ``is_of_lifting``: it goes by the weight of this window.
    """

    beside: Beside
    words: str
    marks: tuple[str, ...] = ()
    is_of_lifting: bool = False

    @property
    def text(self) -> str:
        """The whole line."""
        return f"{self.words}: {_listed(self.marks)}." if self.marks else self.words


def _listed(marks: tuple[str, ...]) -> str:
    """List marks; of members of one jamb the letters alone follow the first: ``W1-1, W1-2c, d, e``."""
    found: list[str] = []
    for before, mark in zip(("", *marks), marks, strict=False):
        is_next = before[-1:].isalpha() and before[:-1] == mark[:-1]
        found.append(mark[-1] if is_next else mark)
    return ", ".join(by_ends(found))


NARROW_RIP = 2.0
"""A rip under this [in] leaves no room for a hand beside the guard: common practice, no source."""
LEAD_UNTIL, ASBESTOS_UNTIL = 1978, 1990
"""Paint may hold lead, mastics and boards asbestos, in houses built before; North America, from memory."""

SAW = "Saw: guard, riving knife (or splitter) and push block; cut short pieces off a long one."
ANGLED = (
    "Blade tilted: a beveled offcut can wedge under the blade and be thrown; keep the fence on the side the blade "
    "leans away from, set the guard anew, try each setting in scrap"
)
TAPERED = "Taper jig with clamps, never freehand"
NARROW = "Narrow: rip from a wide blank and push it through with a block"
RESAWN = (
    "Resaw on a band saw with a fence as high as the strip and a feather board, fingers out of the blade's line; plane "
    "thin plies on a carrier board, never by themselves, which shatters them, or sand them to thickness"
)
"""Before the marks of the parts that they are said of. How plies are resawn: common practice, no source."""
SHORT_PART = 10.0
"""A shorter piece tips and is thrown on a saw or a router table [in]: common practice, no source."""
GROOVED = (
    "Grooves: on the router table against the turn of the bit, on the saw under a tunnel of feather boards, in two "
    "passes; the cut is blind, so fingers stay off the wood above it; groove long pieces before the rails are cut off"
)
SHORT = (
    "Short: groove and tenon it in a sled or a jig with clamps, or with a backing block behind it, never held by hand "
    "against bit or blade, and never along the fence and the miter gauge at once"
)
HARMFUL_DUST = {
    "cedar": "cedar dust can bring on asthma",
    "oak": "oak dust can cause cancer",
    "beech": "beech dust can cause cancer",
    "treated": "treated wood: gloves, wash before you eat, burn none of it",
    "mdf": "MDF dust contains its glue",
}
"""Woods by the words of their names; what handbooks of industrial safety say, from memory."""
HEIGHT = "Height: work from staging with rails, not from a ladder with a window or a door in your hands."
HOLE_SILL, HOLE_DROP = 39.0, 72.0
"""An open hole matters where its bottom is under the one over the floor, the other or more over the ground [in]: OSHA
29 CFR 1926.501(b)(14), from memory; told in metric jobs as 1.0 m and 1.8 m."""
HOLE = {
    Units.INCH: 'Open rough opening: until its frame stands, a rail across it where its bottom is under 39" over the '
    "floor and 6' or more over the ground outside (OSHA 1926.501(b)(14), from memory; the local rules decide).",
    Units.MM: "Open rough opening: until its frame stands, a rail across it where its bottom is under 1.0 m over the "
    "floor and 1.8 m or more over the ground outside; the local rules decide.",
}
METAL = "Metal: the edges of flashing cut; gloves, and hem what can be touched."
DISSIMILAR = (
    "Dissimilar metals: keep aluminum and zinc off copper, fresh mortar and treated wood, tape or paint between; "
    "fasteners of the same metal or of stainless steel."
)
REVEAL_CAVITY = (
    "Fire: the cavity behind returned cladding opens into the wall's; whether it is to be fire blocked round the "
    "opening, and foam in it covered, the local code decides. Insect screen keeps it open to the air."
)
SILICA = "Silica: cut cement board, stucco and masonry wet or with extraction, and wear a mask."
FUMES = "Sealant, spray foam and glue: open the windows, gloves and goggles; do what the label says."
FOAM = (
    "Foam and fire: foam plastic needs a thermal barrier toward the room, often gypsum board (IRC R316.4); "
    "the local code decides."
)
STRUCTURE = (
    "Structure: what carries the frame and the cladding is for the engineer and the local code; "
    "this sheet only adds depths."
)
CAVITY = (
    "Wiring and pipes: nails and screws of casing and jamb pass the service cavity; find every cable and pipe in it "
    "first, and mark them on the wall."
)
EDGE = (
    "Wiring: jamb screws run into the studs at the edge of the rough opening, where cables often lie; look before "
    "you drive them."
)
FURRED = (
    "Wiring and pipes: screws of furring and returns run into the studs at the edge of the rough opening, where cables "
    "and pipes often lie; look before you drive them."
)
HEADER = (
    "Headers: a liner buck widens the hole in the framing by its thickness on every side it lines; header and studs "
    "beside it are sized for the opening in the framing, by the code's span tables or an engineer."
)
LEAD = "Old paint: test for lead before sanding or cutting old trim; the local rules decide."
ASBESTOS = (
    "Asbestos: boards, plaster, mastic and window putty of an old house may hold it; have them tested before you cut "
    "or break them out."
)


def cautions(
    placement: Placement,
    parts: tuple[Part, ...],
    units: Units,
    *,
    year_built: int | None,
    lent: tuple[Part, ...] = (),
) -> tuple[Caution, ...]:
    """List the cautions that fit this opening, work by work.

    ``lent``: parts of the leftmost of openings trimmed as one that lie here too; they are sawn there and put up here.
    """
    install = (*_install(placement, (*parts, *lent), units), *_old_house(year_built))
    lines = ((Beside.INSTALL, install), (Beside.FRAMING, _framing(placement, units)))
    said = (Caution(beside=beside, words=words) for beside, some in lines for words in some)
    lifting = lifting_words(lifts_of(placement), units)
    return (*_saw(parts), Caution(beside=Beside.INSTALL, words=lifting, is_of_lifting=True), *said)


def _saw(parts: tuple[Part, ...]) -> Iterator[Caution]:
    wood = [part for part in parts if part.is_wood]
    if not wood:
        return
    yield Caution(beside=Beside.SAW, words=SAW)
    if tapered := [part.mark for part in wood if any(isinstance(cut, Taper) for cut in part.cuts)]:
        yield Caution(beside=Beside.SAW, words=TAPERED, marks=tuple(tapered))
    if angled := [part.mark for part in wood if _tilts_the_blade(part)]:
        yield Caution(beside=Beside.SAW, words=ANGLED, marks=tuple(angled))
    if resawn := [part.mark for part in wood if part.is_laminated]:
        yield Caution(beside=Beside.SAW, words=RESAWN, marks=tuple(resawn))
    if narrow := [one.mark for part in wood for one in sawn_of(part) if one.width < NARROW_RIP]:
        yield Caution(beside=Beside.SAW, words=NARROW, marks=tuple(narrow))
    yield from _panels(parts)
    yield Caution(beside=Beside.SAW, words=f"Dust: extraction and a mask{_dust(wood)}.")


def _panels(parts: tuple[Part, ...]) -> Iterator[Caution]:
    """Caution where frames with panels are grooved and tenoned: of the jambs, whose members they are."""
    framed = [part for part in parts if part.frame_members]
    if not framed:
        return
    yield Caution(beside=Beside.SAW, words=GROOVED, marks=tuple(part.mark for part in framed))
    short = tuple(one.mark for part in framed for one in part.frame_members if one.length < SHORT_PART)
    if short:
        yield Caution(beside=Beside.SAW, words=SHORT, marks=short)


def _tilts_the_blade(part: Part) -> bool:
    """Say whether an end or a long edge is cut through the thickness; a bent one's ends are sawn by hand."""
    return not part.is_laminated and any(isinstance(cut, EndBevel | EdgeBevel | PlaneCut) for cut in part.cuts)


def _dust(wood: list[Part]) -> str:
    words = {word for part in wood for one in sawn_of(part) for word in one.stock.lower().replace("-", " ").split()}
    return "".join(f"; {told}" for name, told in HARMFUL_DUST.items() if name in words)


def _install(placement: Placement, parts: tuple[Part, ...], units: Units) -> Iterator[str]:
    outside = any(part.where is Where.EXTERIOR for part in parts)
    opening = placement.opening
    has_transom = opening.gang is not None and opening.gang.rows > 1
    if outside or has_transom or opening.floor_below_frame is None:
        yield HEIGHT
    yield from _open_hole(placement, units)
    if any(part.is_bent for part in parts):
        yield METAL
    if any(part.kind is PartKind.METAL_RETURN for part in parts):
        yield DISSIMILAR
    if any(part.kind is PartKind.CLADDING_RETURN for part in parts):
        yield REVEAL_CAVITY
    if _has_silica(placement) and outside:
        yield SILICA
    if _has_cavity(placement):
        yield CAVITY
    else:
        yield FURRED if placement.opening.interior.returns else EDGE
    yield FUMES
    if any(_is_foam(one.layer) or (one.layer.cavity and _is_foam(one.layer.cavity)) for one in placement.planes.layers):
        yield FOAM
    if placement.buck is not None:
        yield STRUCTURE


def _open_hole(placement: Placement, units: Units) -> Iterator[str]:
    """Warn of the hole until the window stands in it; not where the job says that it begins high or not far up."""
    opening, below = placement.opening, placement.opening.floor_below_frame
    sill = -below if below is not None else opening.sill_height
    is_high = sill is not None and sill - placement.shims.sill >= HOLE_SILL
    is_near_ground = opening.drop_outside is not None and opening.drop_outside - placement.shims.sill < HOLE_DROP
    if not is_high and not is_near_ground:
        yield HOLE[units]


def _framing(placement: Placement, units: Units) -> Iterator[str]:
    yield from _open_hole(placement, units)
    if placement.buck is not None and placement.buck.kind is BuckKind.LINER:
        yield HEADER


def _old_house(year_built: int | None) -> Iterator[str]:
    if year_built is not None and year_built < LEAD_UNTIL:
        yield LEAD
    if year_built is not None and year_built < ASBESTOS_UNTIL:
        yield ASBESTOS


def _has_silica(placement: Placement) -> bool:
    outside = (Role.CLADDING, Role.COVER)
    layers = [one.layer for one in placement.planes.layers]
    return any(layer.role in outside and layer.made_of is MadeOf.MINERAL for layer in layers)


def _has_cavity(placement: Placement) -> bool:
    return any(one.layer.role is Role.CAVITY for one in placement.planes.layers)


def _is_foam(layer: Layer) -> bool:
    return layer.made_of is MadeOf.FOAM
