"""GLB for viewing: meters, y up, one node for each part under its mark."""

from __future__ import annotations

from pathlib import Path

from jambs.issue_stamp import IssueStamp
from jambs.solids import kernel
from jambs.solids.assembly import assembly
from jambs.solids.glb_materials import with_dull_surfaces
from jambs.solids.model import KitSolids
from jambs.solids.shown import as_shown

METERS_PER_MM = 0.001
FINE = 0.1
"""Greatest distance of the mesh from a curved face [mm]; all faces are flat."""


def write_glb(solids: KitSolids, path: Path, *, issue: IssueStamp | None = None) -> None:
    """Write one opening as a binary glTF: marks and words as names, colors by material, its issue as extras."""
    from OCP.BRepMesh import BRepMesh_IncrementalMesh
    from OCP.Message import Message_ProgressRange
    from OCP.RWGltf import RWGltf_CafWriter
    from OCP.RWMesh import RWMesh_CoordinateSystem_Zup
    from OCP.TCollection import TCollection_AsciiString
    from OCP.TColStd import TColStd_IndexedDataMapOfStringString

    solids = as_shown(solids)
    BRepMesh_IncrementalMesh(kernel.together([solid.bench for solid in solids.solids]), FINE)
    document = assembly([(solids, (0.0, 0.0, 0.0))], name=solids.mark)
    writer = RWGltf_CafWriter(TCollection_AsciiString(str(path)), True)
    axes = writer.ChangeCoordinateSystemConverter()
    axes.SetInputLengthUnit(METERS_PER_MM)
    axes.SetInputCoordinateSystem(RWMesh_CoordinateSystem_Zup)
    writer.SetCoordinateSystemConverter(axes)
    told = TColStd_IndexedDataMapOfStringString()
    for name, value in (issue.fields if issue else {}).items():
        told.Add(TCollection_AsciiString(name), TCollection_AsciiString(value))
    if not writer.Perform(document, told, Message_ProgressRange()):
        raise OSError(f"{path}: the GLB file could not be written; is the folder there?")
    path.write_bytes(with_dull_surfaces(path.read_bytes()))
