"""STEP files: one for an opening, one for all openings of an elevation. Names are the marks; lengths in mm."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.courses.elevation import Elevation, elevation_of
from jambs.findings import FindingsError, Subject
from jambs.geometry import Vector
from jambs.issue_stamp import IssueStamp
from jambs.parts.kit.on_elevation import Box
from jambs.solids.assembly import assembly
from jambs.solids.colors import color_of
from jambs.solids.findings import ElevationFault, NoOpeningsToWrite, NoSuchElevation, NotOnElevation, PlaceNotGiven
from jambs.solids.model import KitSolids
from jambs.solids.shown import as_shown
from jambs.solids.step_text import reproducible


class ElevationError(FindingsError):
    """Openings that cannot be put on one elevation; the findings say which and why."""


def write_step(solids: KitSolids, path: Path, *, issue: IssueStamp | None = None) -> None:
    """Write one opening as a STEP assembly: marks and words as names, colors by material.

    Origin: the lower left corner of the frame, in the finished face.
    """
    _write([(solids, (0.0, 0.0, 0.0))], path, name=solids.mark, issue=issue)


def write_elevation_step(
    openings: Sequence[KitSolids], path: Path, *, elevation: str, issue: IssueStamp | None = None
) -> None:
    """Write the openings of one elevation in one STEP file, each at its place along the wall and over the ground floor.

    Origin: the left corner of the wall as seen from outside, on the ground floor, in the finished face. As x runs right
    as seen from inside, the wall stretches from there to -x.

    Raises:
        ElevationError: the job has no such elevation, or an opening is not on it or states no place; all are named.
    """
    about = Subject.elevation(elevation)
    if not openings:
        raise ElevationError(NoOpeningsToWrite(subject=about))
    entry = openings[0].job.outside.elevations.get(elevation)
    if entry is None:
        raise ElevationError(NoSuchElevation(subject=about, known=tuple(openings[0].job.outside.elevations)))
    placed = elevation_of(elevation, entry, [one.kit for one in openings])
    frames = {one.mark: one.frame for one in placed.openings if one.is_placed}
    faults = [_fault(one, placed) for one in openings if one.mark not in frames]
    if faults:
        raise ElevationError(*faults)
    _write([(one, _corner(frames[one.mark])) for one in openings], path, name=elevation, issue=issue)


def _corner(frame: Box) -> Vector:
    """Where the lower left corner of a frame as seen from inside lies: its right edge as seen from outside [in]."""
    _, bottom, right, _ = frame
    return (-right, bottom, 0.0)


def _fault(solids: KitSolids, placed: Elevation) -> ElevationFault:
    about = Subject.elevation(placed.name)
    if solids.mark in placed.unplaced:
        return PlaceNotGiven(subject=about, mark=solids.mark, key="sill_height")
    if any(one.mark == solids.mark for one in placed.openings):
        return PlaceNotGiven(subject=about, mark=solids.mark, key="from_left")
    return NotOnElevation(subject=about, mark=solids.mark)


def _write(openings: Sequence[tuple[KitSolids, Vector]], path: Path, *, name: str, issue: IssueStamp | None) -> None:
    from OCP.IFSelect import IFSelect_RetDone
    from OCP.Interface import Interface_Static
    from OCP.STEPCAFControl import STEPCAFControl_Writer
    from OCP.STEPControl import STEPControl_AsIs

    _be_quiet()
    openings = [(as_shown(solids), way) for solids, way in openings]
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
    path.write_text(reproducible(text, name=name, colors=colors, issue=issue), encoding="ascii", newline="\n")


def _be_quiet() -> None:
    """The kernel prints its progress; nobody asked."""
    from OCP.Message import Message, Message_Gravity

    for printer in Message.DefaultMessenger_s().Printers():
        printer.SetTraceLevel(Message_Gravity.Message_Alarm)
