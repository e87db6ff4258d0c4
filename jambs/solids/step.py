"""STEP files: one for an opening, one for all openings of an elevation. Names are the marks; lengths in mm."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.parts.part import Vector
from jambs.solids.assembly import assembly
from jambs.solids.colors import color_of
from jambs.solids.model import KitSolids
from jambs.solids.step_text import reproducible


class ElevationError(ValueError):
    """Openings that cannot be put on one elevation; the message says which and why."""


def write_step(solids: KitSolids, path: Path) -> None:
    """Write one opening as a STEP assembly: marks as names, colours by material, origin at the frame's lower left."""
    _write([(solids, (0.0, 0.0, 0.0))], path, name=solids.mark)


def write_elevation_step(openings: Sequence[KitSolids], path: Path) -> None:
    """Write the openings of one elevation in one STEP file, each at its place along the wall and over the floor.

    ``from_left``: left end of the elevation as seen from inside → left edge of the frame [in]. Openings without a sill
    height that stand on the floor stand on it here.

    Raises:
        ElevationError: an opening states no elevation or no place along it, or they are of several elevations.
    """
    faults = _faults(openings)
    if faults:
        raise ElevationError("\n".join(faults))
    name = openings[0].kit.placement.opening.elevation or ""
    _write([(one, _place(one)) for one in openings], path, name=name)


def _place(solids: KitSolids) -> Vector:
    opening = solids.kit.placement.opening
    height = opening.sill_height if opening.sill_height is not None else opening.floor_below_frame
    return (opening.from_left or 0.0, height or 0.0, 0.0)


def _faults(openings: Sequence[KitSolids]) -> list[str]:
    if not openings:
        return ["there are no openings for this elevation; give at least one"]
    faults = []
    for solids in openings:
        opening = solids.kit.placement.opening
        missing = [name for name in ("elevation", "from_left") if getattr(opening, name) is None]
        if opening.sill_height is None and opening.floor_below_frame is None:
            missing.append("sill_height")
        if missing:
            faults.append(f"{solids.mark}: {' and '.join(missing)} not given; an elevation needs it for every opening")
    names = sorted({one.kit.placement.opening.elevation or "none" for one in openings})
    if len(names) > 1:
        faults.append(f"openings of several elevations ({', '.join(names)}); write one file for each")
    return faults


def _write(openings: Sequence[tuple[KitSolids, Vector]], path: Path, *, name: str) -> None:
    from OCP.IFSelect import IFSelect_RetDone
    from OCP.Interface import Interface_Static
    from OCP.STEPCAFControl import STEPCAFControl_Writer
    from OCP.STEPControl import STEPControl_AsIs

    _be_quiet()
    writer = STEPCAFControl_Writer()
    writer.SetColorMode(False)
    writer.SetNameMode(True)
    # All faces are flat: their edges need no second description on the face.
    Interface_Static.SetIVal_s("write.surfacecurve.mode", 0)
    writer.Transfer(assembly(openings, name=name), STEPControl_AsIs)
    if writer.Write(str(path)) != IFSelect_RetDone:
        raise OSError(f"{path}: the STEP file could not be written; is the folder there?")
    colors = [color_of(solid.material) for solids, _ in openings for solid in solids.solids]
    text = path.read_text(encoding="ascii")
    path.write_text(reproducible(text, name=name, colors=colors), encoding="ascii", newline="\n")


def _be_quiet() -> None:
    """The kernel prints its progress; nobody asked."""
    from OCP.Message import Message, Message_Gravity

    for printer in Message.DefaultMessenger_s().Printers():
        printer.SetTraceLevel(Message_Gravity.Message_Alarm)
