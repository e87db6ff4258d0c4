"""The notes of a shop drawing: what was assumed of the frame, how parts meet, what to look out for."""

from __future__ import annotations

from jambs.drawings.views.measured import depth_words, state_words
from jambs.drawings.views.sash import sash_words
from jambs.findings import Severity
from jambs.issue_stamp import IssueStamp
from jambs.job.models.openings import Job
from jambs.job.models.trim import CasingEntry, Corner, InteriorTrim, Joint
from jambs.length import length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.parts.words.corner_words import has_no_butt, jamb_corner_words
from jambs.parts.words.flare_words import AT_THE_FENCE, saw_notes
from jambs.parts.words.proud_words import proud_words
from jambs.place.frame_path import rough_path, rough_size
from jambs.place.shape_words import hole_words, outline_words

JOINTS = {
    Joint.HEAD_OVER_LEGS: "butt, head over legs",
    Joint.LEGS_THROUGH: "butt, legs through",
    Joint.RABBET: "rabbet",
    Joint.MITER: "miter",
}


def note_paragraphs(kit: Kit, job: Job, *, issue: IssueStamp) -> list[str]:
    """Return the notes, one paragraph each."""
    opening = kit.placement.opening
    return [
        f"{job.name}: {opening.mark}, {opening.room}. {state_words(kit, issue)}",
        f"Frame {_size(opening.frame.width, opening.frame.height, job)}, {sash_words(opening)}. Rough opening "
        f"{_size(*rough_size(kit.placement), job)}{_outline_words(kit, job)}.",
        *depth_words(kit, job),
        _inside_words(kit, job),
        *_outside_words(kit, job),
        f"{_proud_words(opening.interior, job)}Sizes are finished sizes.",
        *dict.fromkeys(
            f"Details: {one}; {AT_THE_FENCE}." for part in kit.parts for one in saw_notes(part, job.shop.grid)
        ),
        *[one.sentence(job.units) for one in kit.findings if one.severity is not Severity.NOTE],
    ]


def _outline_words(kit: Kit, job: Job) -> str:
    """Say what the rough opening is where it is no rectangle, and that sections are square to a head that slopes."""
    shape = kit.placement.opening.shape
    if shape is None:
        return ""
    path, framed_to = rough_path(kit.placement), kit.placement.framed_to
    words = hole_words(path, shape.kind, framed_to) if framed_to else outline_words(path, shape.kind, job.units)
    return f", {words}; the section at the head is square to it"


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)


def _proud_words(trim: InteriorTrim, job: Job) -> str:
    return "" if trim.returns else f"Jambs stand {proud_words(job.shop.proud, 'the finished wall', job.units)}. "


def _size(width: float, height: float, job: Job) -> str:
    return f"{_text(width, job)} × {_text(height, job)}"


def _inside_words(kit: Kit, job: Job) -> str:
    """Say how the inside is trimmed."""
    trim = kit.placement.opening.interior
    if trim.returns:
        return (
            f"Inside: {trim.style.value}, {trim.returns.material} {_text(trim.returns.thickness, job)}, coat "
            f"{_text(trim.returns.corner_bead.nose, job)}. Frame reveal {_text(trim.frame_reveal, job)} to the coat."
        )
    joint = jamb_corner_words(kit) or JOINTS[trim.jamb.joint]
    if trim.wall_edge:
        edge = trim.wall_edge
        gap = f" {_text(edge.gap, job)}" if edge.gap else ""
        return (
            f"Inside: {trim.style.value}, no casing: {edge.kind.value}{gap}. Jamb joint: {joint}. "
            f"Frame reveal {_text(trim.frame_reveal, job)}."
        )
    corner = _corner_words(kit, trim.casing, Where.INTERIOR)
    return (
        f"Inside: {trim.style.value}. Jamb joint: {joint}. Casing corners {corner}. "
        f"Frame reveal {_text(trim.frame_reveal, job)}, casing reveal {_text(trim.casing_reveal, job)}."
    )


def _corner_words(kit: Kit, casing: CasingEntry, where: Where) -> str:
    return "mitered" if casing.corner is Corner.MITER or has_no_butt(kit, where) else "butted"


def _outside_words(kit: Kit, job: Job) -> list[str]:
    trim = kit.placement.opening.exterior
    if trim is None:
        return []
    if trim.returns:
        return [
            f"Outside: returns of bent metal, {trim.returns.material}, cladding {trim.returns.cladding.value}. Frame "
            f"reveal {_text(trim.frame_reveal, job)}, sealant joint {_text(trim.sealant_joint, job)}."
        ]
    clad = trim.cladding_returns
    if clad:
        return [
            f"Outside: cladding returned to the frame over furring, {clad.laid.value}, {clad.corner.value}. Frame "
            f"reveal {_text(trim.frame_reveal, job)}, sealant joint {_text(trim.sealant_joint, job)}."
        ]
    corner = _corner_words(kit, trim.casing, Where.EXTERIOR)
    return [
        f"Outside: casing corners {corner}, frame reveal {_text(trim.frame_reveal, job)}, casing reveal "
        f"{_text(trim.casing_reveal, job)}, sealant joint {_text(trim.sealant_joint, job)}."
    ]
