"""What the planned positions do to heat, damp and sun, one row each, for the window order sheet."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job import Job
from jambs.job.models.fields import facing_text
from jambs.job.models.site import site_of
from jambs.length import length_text
from jambs.parts.kit.kit import Kit
from jambs.study.heat.cut import GLASS_EDGE_NOT_MODELED, INPUT_UNCERTAINTY
from jambs.study.placement_study import Planned, planned_effects
from jambs.study.record.figures import figure, share
from jambs.values import Record

NONE = "–"


def planned_positions(kits: Sequence[Kit], job: Job) -> list[Record]:
    """Return one row for each window type at each position of each wall, in texts."""
    words = _words(job)
    return [_row(one, job, words) for one in planned_effects([kit.placement for kit in kits], job)]


def _row(planned: Planned, job: Job, words: str) -> Record:
    effects = planned.effects
    row = {
        "wall": planned.wall,
        "type": planned.window,
        "marks": list(planned.marks),
        "flange_plane": length_text(planned.flange_plane, units=job.units),
        "words": words,
    }
    if effects is None:
        return {**row, "heat": "not studied", "whole": NONE, "sweats": NONE, "sun": NONE}
    suns = ((facing_text(one.facing_deg), share(one.winter)) for one in effects.sun)
    sweats = share(effects.surfaces.sweats_above)
    return {
        **row,
        "heat": figure(effects.at.mean_transmittance, "W/mK", 3)["text"],
        "whole": figure(effects.at.heat, "W/K", 3)["text"],
        "sweats": sweats["text"] if sweats else NONE,
        "sun": ", ".join(f"{faces} {sun['text'] if sun else NONE}" for faces, sun in suns) or "direction not given",
    }


def _words(job: Job) -> str:
    site = site_of(job.site, units=job.units)
    facts = ", ".join(f"{fact.what} {fact.value}{' (assumed)' if fact.why else ''}" for fact in site.facts)
    return (
        f"For the first of the openings in a row; {facts}. {INPUT_UNCERTAINTY} {GLASS_EDGE_NOT_MODELED} "
        "`jambs compare` shows the other positions beside these, with films and conventions."
    )
