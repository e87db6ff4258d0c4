"""A layer stack becomes planes. Depth d runs outward from 0 at the finished inside face [in]."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate, takewhile

from jambs.findings import FindingsError, Subject
from jambs.job.models.layers import Layer, Role, Wall
from jambs.length import Grid
from jambs.wall.findings import NoStructure, SheathingOutsideInsulation


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedLayer:
    """A layer and the depths of its two faces [in], inner < outer."""

    layer: Layer
    inner: float
    outer: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WallPlanes:
    """A wall as planes along the depth axis [in].

    ``finish_back``: back of the wall board, 0 where none is listed. ``stud_face``: inside face of the framing; what is
    put on last lies before it. ``sheathing_plane``: outer face of the structural sheathing, of the studs where there is
    none. ``trim_plane``: the face outside trim is fixed to. ``cladding_face``: outer face of the wall.
    """

    wall: Wall
    layers: tuple[PlacedLayer, ...]
    finish_back: float
    stud_face: float
    sheathing_plane: float
    trim_plane: float
    cladding_face: float

    @property
    def added_depth(self) -> float:
        """From the sheathing plane to the trim plane: what the outboard layers add [in]."""
        return self.trim_plane - self.sheathing_plane

    @property
    def cladding_depth(self) -> float:
        """From the trim plane to the cladding face [in]."""
        return self.cladding_face - self.trim_plane

    @property
    def carrying(self) -> tuple[float, ...]:
        """Planes at which the wall carries a window's flange without a buck, from the sheathing plane outward [in]."""
        carry = {one.outer for one in self.layers if one.layer.carries and one.outer > self.sheathing_plane}
        return tuple(sorted({self.sheathing_plane, *carry}))


class WallError(FindingsError):
    """A stack that makes no wall."""


def _hold_sheathing_to_framing(placed: tuple[PlacedLayer, ...], wall: Wall) -> None:
    """A sheet outside outboard insulation is not structural sheathing, though the catalog may call it so."""
    framing = [one.outer for one in placed if one.layer.role is Role.FRAMING]
    outboard = [
        one.outer for one in placed if one.layer.role is Role.INSULATION and framing and one.inner >= max(framing)
    ]
    for one in placed:
        if one.layer.role is Role.SHEATHING and outboard and one.inner >= min(outboard):
            raise WallError(SheathingOutsideInsulation(subject=Subject.wall(wall.name), layer=one.layer.name))


def _is_finish(one: PlacedLayer) -> bool:
    return one.layer.role is Role.FINISH


def stack_wall(wall: Wall, *, grid: Grid) -> WallPlanes:
    """Stack the layers of a wall, inside → outside, and name its planes.

    Each face is the exact running sum, rounded once to the shop's grid, so that printed depths add up; a membrane that
    vanishes on the grid keeps its place with two faces in one plane.

    Raises:
        WallError: the wall has neither framing nor sheathing, or sheathing outside its outboard insulation.
    """
    faces = [grid.round(face) for face in accumulate((layer.thickness for layer in wall.layers), initial=0.0)]
    placed = tuple(
        PlacedLayer(layer=layer, inner=inner, outer=outer)
        for layer, inner, outer in zip(wall.layers, faces, faces[1:], strict=False)
    )
    structure = [one for one in placed if one.layer.role in (Role.FRAMING, Role.SHEATHING)]
    if not structure:
        raise WallError(NoStructure(subject=Subject.wall(wall.name)))
    sheathing = [one for one in placed if one.layer.role is Role.SHEATHING]
    _hold_sheathing_to_framing(placed, wall)
    bare = [one for one in placed if one.layer.role is not Role.CLADDING]
    return WallPlanes(
        wall=wall,
        layers=placed,
        finish_back=max((one.outer for one in takewhile(_is_finish, placed)), default=0.0),
        stud_face=structure[0].inner,
        sheathing_plane=(sheathing or structure)[-1].outer,
        trim_plane=bare[-1].outer,
        cladding_face=placed[-1].outer,
    )
