"""What exterior jambs and sills cannot be."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.findings import Subject, SubjectKind
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.flare import GREATEST_FLARE_DEG
from jambs.length import ROUND_OFF
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.kinds import PartKind
from jambs.parts.findings.flare_findings import FlareTooSteep
from jambs.parts.findings.kit_findings import SillRunsIntoFlange
from jambs.parts.findings.run_findings import FlaresMeetBetween
from jambs.parts.findings.style_findings import ExteriorJambHasNoWidth
from jambs.parts.kit.kit import FittedSide, WallBetween
from jambs.place.flares import Flares, flares_outside
from jambs.place.placement import Placement
from jambs.sides import Side


def hold_to_some_width(sides: dict[Side, FittedSide], joint: float, kind: PartKind = PartKind.EXTERIOR_JAMB) -> None:
    """What lines the opening begins a sealant joint outside the frame; its width is what is left to the trim plane.

    Raises:
        CannotBeCut: nothing is left of it.
    """
    cut = [sides[side] for side in (Side.HEAD, Side.LEFT, Side.RIGHT)]
    least = min(side.least for side in cut)
    if least - joint < SAME_SIZE:
        about = Subject(kind=SubjectKind.PART, name=kind.words)
        is_metal = kind is PartKind.METAL_RETURN
        raise CannotBeCut(ExteriorJambHasNoWidth(subject=about, depth=least, joint=joint, is_metal=is_metal))


def hold_clear_of_the_flange(under_frame: float, frame_projection: float) -> None:
    """A sill reaches in under the frame up to the nailing flange, at most [in].

    Raises:
        CannotBeCut: it runs into the flange.
    """
    if under_frame > frame_projection:
        about = Subject(kind=SubjectKind.PART, name=PartKind.EXTERIOR_SILL.words)
        raise CannotBeCut(SillRunsIntoFlange(subject=about, under_frame=under_frame, greatest=frame_projection))


def hold_backs_apart(at_frame: Sequence[WallBetween], backs: Sequence[WallBetween], thickness: float) -> None:
    """Flared jambs of openings trimmed as one leave something of the wall between; ``at_frame``: from face to face.

    ``backs``: from back to back where they end; ``thickness`` of the jambs [in].

    Raises:
        CannotBeCut: they run into each other.
    """
    for begins, ends in zip(at_frame, backs, strict=True):
        if ends.width < -SAME_SIZE:
            between = begins.width - 2 * thickness
            raise CannotBeCut(FlaresMeetBetween(subject=Subject.opening(""), between=between, overlap=-ends.width))


def flares_in_wall(placement: Placement, trim: ExteriorTrim) -> Flares:
    """Return the flares of the exterior jambs as they come out in the wall.

    Raises:
        CannotBeCut: one that was given by length is too steep at this depth.
    """
    depth = placement.exterior_depth
    flares = flares_outside(placement.opening, depth)
    for side in Side:
        stated = trim.flare.at(side) if trim.flare else None
        if stated and stated.wider and flares.at(side) > GREATEST_FLARE_DEG + ROUND_OFF:
            raise CannotBeCut(
                FlareTooSteep(
                    subject=Subject.opening(placement.opening.mark),
                    side=side,
                    wider=stated.wider,
                    depth=depth - trim.sealant_joint,
                    flare_deg=flares.at(side),
                    greatest_deg=GREATEST_FLARE_DEG,
                    is_outside=True,
                )
            )
    return flares
