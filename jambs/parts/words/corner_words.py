"""How the jambs of an opening that is no rectangle meet, in words: corner by corner from its outline."""

from __future__ import annotations

from jambs.job.models.curved import Curved
from jambs.job.models.openings import Opening
from jambs.job.models.path_edge import FrameEdge
from jambs.job.models.shape import ShapeKind
from jambs.parts.board.cuts import End, end_of
from jambs.parts.board.kinds import PartKind, Where, run_words
from jambs.parts.board.part import Part
from jambs.parts.jambs.shaped_jambs import jamb_corners
from jambs.parts.kit.kit import Kit
from jambs.parts.shapes.opening_path import CornerJoint
from jambs.place.frame_path import frame_path
from jambs.sides import Side

Corner = tuple[FrameEdge, FrameEdge, CornerJoint]


def jamb_corner_words(kit: Kit) -> str:
    """Say which corners of the jambs are mitered and which board covers the other's end; nothing of a rectangle."""
    opening = kit.placement.opening
    if opening.shape is None or not kit.frames:
        return ""
    trim = opening.interior
    corners = jamb_corners(opening, kit.frames[0].clear, trim.jamb.joint, has_bottom=trim.style.has_bottom)
    told = [*_mitered(corners), *_covered(corners)]
    if trim.jamb.curved is Curved.FLAT_SEGMENTS and kit.flares:
        told.append(f"mitered: flat segments of the curve{_on_next(opening)}")
    elif opening.shape.kind is ShapeKind.FULL_ROUND:
        told.append("none, it is a ring")
    elif opening.shape.is_arched:
        told.append(_under_the_arc(opening))
    return "; ".join(told)


def _on_next(opening: Opening) -> str:
    """Say how flat segments end beside legs, or on the boards that they stand on."""
    shape = opening.shape
    if shape is None or shape.kind is ShapeKind.FULL_ROUND:
        return ""
    if not shape.is_cut_below(opening.frame):
        return ", and those at its ends with the legs"
    return ", which stand on " + ("the other boards" if opening.interior.style.has_bottom else "the stool")


def has_no_butt(kit: Kit, where: Where) -> bool:
    """Say whether a butt joint of the casing has no place round a shape: no head or bottom board ends square there."""
    if kit.placement.opening.shape is None:
        return False
    level = [part for part in kit.parts if part.kind is PartKind.CASING and part.where is where]
    ends = [end for part in level if not part.side.is_leg for end in End if not _is_angled(part, end)]
    return bool(level) and not ends


def _is_angled(part: Part, end: End) -> bool:
    return any(end_of(cut) is end for cut in part.cuts)


def _under_the_arc(opening: Opening) -> str:
    if opening.shape is None or not opening.shape.is_cut_below(opening.frame):
        return "curved boards end on the spring lines"
    if opening.interior.style.has_bottom:
        return "the curved head stands on them"
    legs = any(edge.side.is_leg for edge in frame_path(opening))
    return f"the curved head stands on the {'leg and the stool' if legs else 'stool'}"


def _mitered(corners: tuple[Corner, ...]) -> list[str]:
    mitered = [(one, two) for one, two, joint in corners if joint is CornerJoint.MITER]
    if mitered and len(mitered) == len(corners):
        return [f"mitered, all {len(corners)} corners" if len(corners) > 1 else "mitered"]
    return [f"mitered: {_name(one)} | {_name(two)}" for one, two in mitered]


def _covered(corners: tuple[Corner, ...]) -> list[str]:
    """Say which board runs through, those that it covers together: ``bottom under left leg and right leg``."""
    found: dict[str, list[str]] = {}
    for one, two, joint in corners:
        if joint is CornerJoint.MITER:
            continue
        through, stopped = (two, one) if joint is CornerJoint.AFTER_RUNS_THROUGH else (one, two)
        how = "past" if through.side.is_leg else "under" if through.side is Side.SILL else "over"
        found.setdefault(f"{_name(through)} {how}", []).append(_name(stopped))
    return [f"{through} {' and '.join(names)}" for through, names in found.items()]


def _name(edge: FrameEdge) -> str:
    return edge.side.board_words + (run_words(edge.run, edge.runs) if edge.runs > 1 else "")
