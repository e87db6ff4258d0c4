"""What a maker's sheet seldom says of a window: assumed where only a picture or a check rests on it, else asked for."""

from __future__ import annotations

from jambs.job.models.openings import Assumed, OpeningEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.windows import WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.tree import TextSource
from jambs.length import MM_PER_INCH, Units, length_text

USUAL = {
    "flange_width": {Units.INCH: 1 + 1 / 4, Units.MM: 30 / MM_PER_INCH},
    "sash_thickness": {Units.INCH: 1 + 3 / 4, Units.MM: 68 / MM_PER_INCH},
    "sash_set_back": {Units.INCH: 0.0, Units.MM: 0.0},
    "meeting_rail": {Units.INCH: 1 + 3 / 4, Units.MM: 45 / MM_PER_INCH},
}
"""Common practice, no source [in]; nothing is sawn to them. A sash even with its frame is in nobody's favor."""

WHY = "common practice, no source; the job gives no {key}, see the maker's section drawing"
SASH = ("sash_thickness", "sash_set_back")


def unstated(window: WindowType) -> tuple[str, ...]:
    """Return the sizes that this window has and the job does not give."""
    keys = (
        *(["flange_width"] if window.nailing_flange else []),
        *(SASH if window.sash.swings else ()),
        *(["meeting_rail"] if window.sash.slides else []),
    )
    return tuple(key for key in keys if getattr(window, key) is None)


def with_usual(window: WindowType, units: Units, *, is_escape: bool) -> tuple[WindowType, tuple[Assumed, ...]]:
    """Fill in what the job does not give, and say that it was assumed; of a meeting rail only an escape's matters."""
    usual = {key: USUAL[key][units] for key in unstated(window)}
    assumed = [
        Assumed(what=key.replace("_", " "), value=length_text(value, units=units), why=WHY.format(key=key))
        for key, value in usual.items()
        if key != "meeting_rail" or is_escape
    ]
    if window.sash.swings and window.sash_face is None and window.sash_overlap is None:
        why = "the job gives neither sash_face nor sash_overlap"
        assumed.append(Assumed(what="edge of the sash", value="at the inner edge of the frame", why=why))
    return window.model_copy(update=usual), tuple(assumed)


def ask_for(
    window: WindowType, entry: OpeningEntry, rule: PositionRule, source: TextSource, complaints: Complaints
) -> bool:
    """Ask for the sizes of a sash where a result rests on them; say whether there was anything to ask."""
    lacking = [key for key in SASH if key in unstated(window)]
    why = _rests_on_sash(entry, rule)
    if not lacking or not why:
        return False
    keys = " and ".join(lacking)
    complaints.say(source, (), f"{why}, so {keys} of its window cannot be assumed; give {keys} (`jambs keys depths`)")
    return True


def _rests_on_sash(entry: OpeningEntry, rule: PositionRule) -> str:
    if entry.escape:
        return "is an escape opening, and how far its sash opens decides what is clear"
    if rule.choose or rule.least_heat_loss:
        return f"its position is {rule.rule.replace('_', ' ')}, and how far its sash opens is one of the limits"
    return ""
