"""The notes of a shop drawing: what was assumed of the frame, how parts meet, what to look out for."""

from __future__ import annotations

from jambs.drawings.sash import sash_words
from jambs.job.openings import Job
from jambs.job.trim import Corner, InteriorTrim, Joint
from jambs.length import length_text
from jambs.parts.kit import Kit
from jambs.place.placement import Weight

JOINTS = {
    Joint.HEAD_OVER_LEGS: "butt, head over legs",
    Joint.LEGS_THROUGH: "butt, legs through",
    Joint.RABBET: "rabbet",
    Joint.MITER: "miter",
}


def warning_of(kit: Kit) -> str:
    """Return the warning of a planned opening, nothing for a measured one."""
    return "" if kit.is_measured else "PLANNED - MEASURE BEFORE CUTTING"


def note_paragraphs(kit: Kit, job: Job, *, sheet_date: str) -> list[str]:
    """Return the notes, one paragraph each."""
    opening = kit.placement.opening
    return [
        f"{job.name}: {opening.mark}, {opening.room}. {_state_words(kit, sheet_date)}",
        f"Frame {_size(opening.frame.width, opening.frame.height, job)}, {sash_words(opening)}. Rough opening "
        f"{_size(opening.rough_opening.width, opening.rough_opening.height, job)}.",
        _depth_words(kit, job),
        _inside_words(opening.interior, job),
        *_outside_words(kit, job),
        f"Jambs stand {_text(job.shop.proud, job)} proud of the finished wall. Sizes are finished sizes.",
        *[finding.text for finding in kit.findings if finding.weight is not Weight.NOTE],
    ]


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)


def _size(width: float, height: float, job: Job) -> str:
    return f"{_text(width, job)} x {_text(height, job)}"


def _state_words(kit: Kit, sheet_date: str) -> str:
    measured = kit.placement.opening.measured
    if kit.is_measured and measured:
        return f"Depths measured {measured.date.isoformat()}; drawn {sheet_date}."
    return f"Depths planned; drawn {sheet_date}."


def _depth_words(kit: Kit, job: Job) -> str:
    placement = kit.placement
    planned = "planned " if kit.is_measured else ""
    words = f"Interior depth {planned}{_text(placement.interior_depth, job)}"
    if kit.is_measured:
        words += f", measured {_measured_words(kit, job)}"
    if placement.exterior_depth < 0:
        return words + f"; frame proud of the trim plane by {_text(-placement.exterior_depth, job)}."
    return words + f"; exterior depth {_text(placement.exterior_depth, job)}."


def _measured_words(kit: Kit, job: Job) -> str:
    """Say the depth of each side from its start to its end: left to right, bottom to top."""
    sides = []
    for name, side in kit.sides.items():
        ends = [_text(side.start_depth, job), _text(side.finish_depth, job)]
        sides.append(f"{name} {ends[0]}" if ends[0] == ends[1] else f"{name} {ends[0]} to {ends[1]}")
    return ", ".join(sides)


def _inside_words(trim: InteriorTrim, job: Job) -> str:
    corner = "mitered" if trim.casing.corner is Corner.MITER else "butted"
    return (
        f"Inside: {trim.style.value}. Jamb joint: {JOINTS[trim.jamb.joint]}. Casing corners {corner}. "
        f"Frame reveal {_text(trim.frame_reveal, job)}, casing reveal {_text(trim.casing_reveal, job)}."
    )


def _outside_words(kit: Kit, job: Job) -> list[str]:
    trim = kit.placement.opening.exterior
    if trim is None:
        return []
    corner = "mitered" if trim.casing.corner is Corner.MITER else "butted"
    return [
        f"Outside: casing corners {corner}, frame reveal {_text(trim.frame_reveal, job)}, casing reveal "
        f"{_text(trim.casing_reveal, job)}, sealant joint {_text(trim.sealant_joint, job)}."
    ]
