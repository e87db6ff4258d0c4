"""What a frame that is no rectangle asks of its opening: sizes that make the shape, trim that is laid out for it."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.job.models.curved import Curved
from jambs.job.models.exterior_trim import ExteriorJambEntry, ExteriorTrim
from jambs.job.models.fields import Size
from jambs.job.models.flare import FlareSize
from jambs.job.models.openings import OpeningEntry
from jambs.job.models.path import shaped_path
from jambs.job.models.shape import ShapeEntry, ShapeKind
from jambs.job.models.shape_fits import misfit
from jambs.job.models.shape_readings import reading_misfits
from jambs.job.models.trim import InteriorStyle, InteriorTrim, JambEntry
from jambs.job.models.windows import Sash, WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.tree import TextSource
from jambs.length import HALF_64TH, Units
from jambs.sides import Side


def ask_shape(
    entry: OpeningEntry,
    window: WindowType,
    interior: InteriorTrim,
    exterior: ExteriorTrim | None,
    source: TextSource,
    complaints: Complaints,
) -> bool:
    """Hold an opening with a shape to what is made for it; say whether something was wrong."""
    shape = entry.shape
    if shape is None:
        return False
    wrong = [
        *_of_opening(entry, shape, window, complaints),
        *_of_trim(shape, entry.frame, interior, exterior, complaints.units),
    ]
    for key, message in wrong:
        complaints.say(source, (key,), message)
    return bool(wrong)


def _of_opening(
    entry: OpeningEntry, shape: ShapeEntry, window: WindowType, complaints: Complaints
) -> Iterator[tuple[str, str]]:
    kind = shape.kind.value
    if said := misfit(shape, entry.frame, complaints.units):
        yield "shape", said
    yield from _of_face(shape, window)
    if window.sash is not Sash.FIXED:
        yield "window", f"is a {window.sash.value} in the {kind} frame, which opens nowhere here; give sash: fixed"
    if entry.units is not None:
        yield (
            "shape",
            f"is {kind}, and the opening has units, which are rectangles; give each its own opening, or no shape",
        )
    if entry.floor_below_frame is not None:
        yield "shape", f"is {kind}, which no door is made with here; leave shape out, or floor_below_frame"
    if entry.rough_opening is not None:
        yield (
            "rough_opening",
            f"is a width x height, but the hole round the {kind} frame follows its edges; leave it out: it comes out "
            "the shop's shim_space larger on every side",
        )
    if entry.measured is not None:
        yield from (("measured", message) for message in reading_misfits(entry.measured, entry.frame, shape))


def _of_trim(
    shape: ShapeEntry, frame: Size, interior: InteriorTrim, exterior: ExteriorTrim | None, units: Units
) -> Iterator[tuple[str, str]]:
    kind = shape.kind.value
    if shape.is_arched:
        yield from _of_arch(shape, frame, interior, exterior, units)
    for key in ("stack", "panels", "returns", "wall_edge", "built_up", "profile"):
        if getattr(interior, key) is not None:
            yield (
                "interior_trim",
                f"gives {key}, which is made round rectangles only, and the frame is {kind}; remove it",
            )
    if exterior and exterior.returns and shape.is_arched and exterior.returns.curved is not Curved.FLAT_SEGMENTS:
        yield (
            "exterior_trim",
            f"gives returns of bent metal, and the frame is {kind}: legs cannot be bent along an arc, they would have "
            "to shrink or stretch; write returns: {…, curved: flat segments}, straight strips along chords of it, or "
            "give it wooden exterior trim with curved: sawn segments",
        )
    if exterior and exterior.returns and exterior.returns.sill and shape.is_cut_below(frame):
        yield (
            "exterior_trim",
            f"gives returns with a sill, which lies between upright sides, and the {kind} has none; take sill out of "
            "returns: the metal goes all round",
        )
    if exterior and exterior.cladding_returns:
        yield (
            "exterior_trim",
            f"gives cladding_returns, whose courses, furring and corners are laid round rectangles, and the frame is "
            f"{kind}; write a jamb, or returns of bent metal, which go round it",
        )
    if not shape.is_cut_below(frame):
        return
    yield from _of_sill(shape, frame, interior)
    if exterior and exterior.sill and not shape.is_flat_below(frame):
        yield "exterior_trim", f"gives a sill, which the {kind} has no room for between its lower edges; remove sill"


def _of_sill(shape: ShapeEntry, frame: Size, interior: InteriorTrim) -> Iterator[tuple[str, str]]:
    """Boards that do not stand upright go all round, or stand on a stool where the shape has one level edge below."""
    kind, style = shape.kind.value, interior.style
    if style is InteriorStyle.PICTURE_FRAMED:
        return
    if style is not InteriorStyle.STOOL_AND_APRON or not shape.is_flat_below(frame):
        other = " or stool and apron" if shape.is_flat_below(frame) else ""
        why = "has no legs for it" if other else "has no sill to stand on"
        yield "interior_trim", f"is {style.value}, but the {kind} {why}; give picture framed{other}"


def _of_face(shape: ShapeEntry, window: WindowType) -> Iterator[tuple[str, str]]:
    """A frame that is round shows as much of itself on every side, or its glass is no circle."""
    faces = [window.frame_face, *([window.exterior_frame_face] if window.exterior_frame_face else [])]
    if shape.kind is not ShapeKind.FULL_ROUND:
        return
    for face in faces:
        shown = [face.at(side) for side in Side]
        if max(shown) - min(shown) > HALF_64TH:
            kind = shape.kind.value
            yield "window", f"shows unlike faces in the {kind} frame; write frame_face: one width for all sides"


def _of_arch(
    shape: ShapeEntry, frame: Size, interior: InteriorTrim, exterior: ExteriorTrim | None, units: Units
) -> Iterator[tuple[str, str]]:
    """Ask how the curved head of a jamb is made: nothing that gets sawn is chosen unasked."""
    trims: list[tuple[str, InteriorTrim | ExteriorTrim]] = [("interior_trim", interior)]
    trims += [("exterior_trim", exterior)] if exterior else []
    for key, trim in trims:
        if trim.flare is not None:
            yield from ((key, said) for said in _of_flared_arch(shape, frame, trim, units))
        elif key == "exterior_trim" and isinstance(trim, ExteriorTrim) and trim.cladding_returns:
            continue  # refused as it is
        elif said := _of_square_arch(shape.kind.value, trim.jamb, is_outside=key == "exterior_trim"):
            yield key, said


def _of_square_arch(kind: str, jamb: JambEntry | ExteriorJambEntry, *, is_outside: bool) -> str:
    """Say what is wrong with how a jamb that does not lean goes round an arc; nothing where it is right."""
    do = "curved: sawn segments" if is_outside else "curved: bent laminations or curved: sawn segments"
    if jamb.curved is None and jamb.thickness:
        word = "curved: sawn segments" if is_outside else "curved: bent laminations"
        other = "" if is_outside else " or curved: sawn segments"
        return f"does not say how its jamb goes round the {kind}; write jamb: {{…, {word}}}{other}"
    if jamb.curved is Curved.FLAT_SEGMENTS:
        return (
            f"makes its jamb in flat segments, which follow a flare, and round the {kind} it stands square; write "
            f"{do}, or give it a flare"
        )
    if is_outside and jamb.curved in (Curved.BENT_LAMINATIONS, Curved.BENT_IN_ONE):
        return f"bends its jamb, which is made inside only; write {do}"
    return ""


def _of_flared_arch(shape: ShapeEntry, frame: Size, trim: InteriorTrim | ExteriorTrim, units: Units) -> Iterator[str]:
    """A jamb that leans round an arc is part of a cone: it has one flare, and is made in flat segments.

    Why plies do not go round a cone: common practice, no source.
    """
    if misfit(shape, frame, units) or trim.flare is None:
        return
    kind, path = shape.kind.value, shaped_path(frame, shape)
    sides = dict.fromkeys(edge.side for edge in path if edge.center or edge.side.is_leg)
    if isinstance(trim, ExteriorTrim):
        sides.pop(Side.SILL, None)  # a full round's leans as its head does
    leans = {side: trim.flare.at(side) or None for side in sides}
    told = ", ".join(f"{side.words} {_flare_words(lean, units)}" for side, lean in leans.items())
    if None in leans.values() or len(set(leans.values())) > 1:
        yield (
            f"flares round the {kind} ({told}), where its jamb is part of a cone, which has one flare all round; write "
            f"the same flare for {' and '.join(side.words for side in sides)}, or flare: none"
        )
    elif trim.jamb.curved is not Curved.FLAT_SEGMENTS:
        yield (
            f"flares ({told}), and round the {kind} its jamb is part of a cone: plies ripped straight do not bend to "
            "it, rings of ply cut from sheet break where their grain runs out, and segments sawn square to the wall do "
            "not follow it; write jamb: {…, curved: flat segments}, straight boards with compound miters, or flare: "
            "none"
        )


def _flare_words(flare: FlareSize | None, units: Units) -> str:
    if flare is None:
        return "square"
    return f"{flare.angle_deg:g}°" if flare.wider is None else f"{units.text(flare.wider)} wider"
