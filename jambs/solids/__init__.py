"""Every opening in three dimensions: solids sawn from the cut lists, put together, measured, written, drawn.

The only room that knows the solid kernel (OCP, which cadquery brings); it is imported late, inside functions, so that
this room costs nothing until a solid is asked for and the rest runs without it.
"""

from jambs.solids.availability import availability
from jambs.solids.fit import fit_report
from jambs.solids.glb import write_glb
from jambs.solids.model import model_kit
from jambs.solids.picture import picture
from jambs.solids.step import write_elevation_step, write_step
from jambs.solids.svg import picture_svg

__all__ = [
    "availability",
    "fit_report",
    "model_kit",
    "picture",
    "picture_svg",
    "write_elevation_step",
    "write_glb",
    "write_step",
]
