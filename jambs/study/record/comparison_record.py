"""The placement comparison as a record: ``placement.json`` before it is written, and all that its pages print.

Every figure is its exact value, its unit and the text that stands on paper, so paper and file cannot differ.

    format, version    what this file is; a change that breaks a reader raises the version
    job, units         name and date of the job; lengths are numbers in its units, with their printed text
    site               the facts heat, damp and sun were worked out for; ``assumed`` says why nobody's value was taken
    conventions        sentences that belong to every figure: references, films, months, what is left out
    cautions           what the figures are worth, and what is not modeled
    walls              per wall: resistance by every convention, layers with temperatures and drying, checks, a year
    windows            per wall and window type: candidates side by side, curve over all positions, details
    left_out           what could not be studied, in sentences
"""

from __future__ import annotations

from jambs.job.models.fields import facing_text
from jambs.job.models.site import temperature_text
from jambs.length import decimal_text
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.study.at_position import FACTORS_WITHIN, LIMITS_WITHIN, MEAN_WITHIN
from jambs.study.candidates import Candidate, Effects, Surfaces, boards_words
from jambs.study.details import DetailChange
from jambs.study.heat.cut import CORNER_SPREAD, GLASS_EDGE_NOT_MODELED, INPUT_UNCERTAINTY
from jambs.study.heat.films import SURFACE_FILMS
from jambs.study.heat.section_cut import CavityFilling
from jambs.study.placement_study import PlacementStudy, WindowComparison
from jambs.study.record.figures import assumed_record, figure, sentences, share, signed
from jambs.study.record.wall_record import MONTHS, wall_record
from jambs.study.regions.conductivities import WOOD_CONDUCTIVITY
from jambs.values import Record, size, sized

FORMAT, VERSION = "jambs placement comparison", 1
LETTERS = "ABCDEFGHIJKLMNOP"
BTU = 0.5275279
"""One Btu per hour and degree Fahrenheit [W/K], from the definitions of both."""
DEGREES = "°"


def comparison_record(study: PlacementStudy) -> Record:
    """Return the record of a whole comparison."""
    job = study.job
    return {
        "format": FORMAT,
        "version": VERSION,
        "job": {"name": job.name, "date": job.date.isoformat() if job.date else None},
        "units": job.units.value,
        "site": [
            {"key": fact.key, "what": fact.what, "text": fact.value, "assumed": fact.why or None}
            for fact in study.site.facts
        ],
        "conventions": _conventions(),
        "cautions": [INPUT_UNCERTAINTY, GLASS_EDGE_NOT_MODELED],
        "walls": [wall_record(wall, study) for wall in study.walls],
        "windows": [_window(window, study) for window in study.windows],
        "left_out": [one.sentence(study.job.units) for one in study.left_out],
    }


def _conventions() -> list[str]:
    filling = CavityFilling()
    return [
        "Computed is what the section drawings show, at each position with its own parts. Left out: the "
        "ventilated space with what stands outside it, membranes, casings, flashing. Room and outdoor air go as far as "
        "a gap over 10 mm lets them; behind a narrower one a space is slightly ventilated (ISO 10077-2, from memory). "
        f"Wood {WOOD_CONDUCTIVITY:.2f}, shim space filled with foam {filling.shim_space:.3f}, sealant "
        f"{filling.sealant:.2f}, empty spaces in the wall {filling.empty:.2f} W/mK.",
        "The frame is a block that lets through what its U_f says, the glazing a panel of 0.035 W/mK (the way of "
        "ISO 10077-2).",
        f"Inside surfaces: {SURFACE_FILMS.inside:.2f} m²K/W on wall and jambs, {SURFACE_FILMS.inside_frame:.2f} on "
        "frame and glazing (ISO 13788, from memory). Condensation: surface at the dew point of the air, at the design "
        "temperature. Mold: monthly mean over 80 % at the surface in the worst month, with the humidity of the "
        "room in that month. The corner of jamb and sill (of a door: jamb and head) is an estimate from both sides, "
        "on the cold side: it lay "
        f"0.01 to {CORNER_SPREAD:.2f} (temperature factor) under each of nine corners computed in three dimensions.",
        f"The calculation itself: limits within {LIMITS_WITHIN}, their mean within {MEAN_WITHIN} W/mK, factors within "
        f"{FACTORS_WITHIN} of a fine grid, on the warm side.",
        "Permeances are dry-cup values where the catalog's source says so; wet-cup values of plywood and OSB are "
        "several times as high, so that real sheathing passes more in damp air.",
        "Heat of a season: heat through the joint alone, times the degree days. Sun: share of the clear-sky beam on "
        "the wall that reaches the glass past the frame's rim, jambs, casing and cladding, October to March and June "
        "to August (the other half-year south of the equator). Sky: light of an overcast sky on the glass over that on "
        "open ground, nothing opposite; a bare wall gets 40 %.",
        "A door's threshold, head flashing and the metal of a nailing flange are not computed. The limits of the "
        "calculation stand beside each figure (±).",
    ]


def _window(window: WindowComparison, study: PlacementStudy) -> Record:
    subject, units = window.subject, study.job.units
    opening = subject.opening
    sweep, first = window.sweep, window.sweep.positions[0]
    return {
        "wall": opening.wall.name,
        "window": opening.window_name,
        "marks": list(window.marks),
        "computed_for": {"mark": opening.mark, "frame": sized(opening.frame.width, opening.frame.height, units=units)},
        "convention": first.sides[0].transmittance.reference.words,
        "least": {
            "flange_plane": size(sweep.least.flange_plane, units=units),
            "interior_depth": size(sweep.least.kit.placement.interior_depth, units=units),
            "band": [size(plane, units=units) for plane in sweep.band],
            "rule_plane": size(sweep.rule_plane, units=units),
            "rule_excess": None if sweep.rule_excess is None else figure(sweep.rule_excess, "W/mK", 4),
        },
        "candidates": [_candidate(one, LETTERS[place], window, study) for place, one in enumerate(window.candidates)],
        "curve": [_curve_point(one, window, study) for one in window.curve],
        "details": [_detail(one, study) for one in window.details],
        "assumed": assumed_record(window.assumed),
    }


def _candidate(candidate: Candidate, letter: str, window: WindowComparison, study: PlacementStudy) -> Record:
    units = study.job.units
    return {
        "letter": letter,
        "names": list(candidate.names),
        "flange_plane": size(candidate.flange_plane, units=units),
        "interior_depth": size(candidate.interior_depth, units=units),
        "exterior_depth": size(candidate.exterior_depth, units=units),
        "against": [one.sentence(units) for one in candidate.against],
        "stops": [one.sentence(units) for one in candidate.effects.at.stops] if candidate.effects else [],
        "why_not": sentences(candidate.why_not, units, between="\n") or None,
        "refused": sentences(candidate.refused, units, between="\n") or None,
        "built": _built(candidate.kit, study) if candidate.kit else None,
        **(_effects(candidate.effects, window, study) if candidate.effects else {}),
    }


def _built(kit: Kit, study: PlacementStudy) -> Record:
    units, placement = study.job.units, kit.placement
    buck, swing = placement.buck, placement.swing
    depth = size(buck.outer - buck.inner if buck else None, units=units)
    return {
        "interior_board": boards_words(kit, PartKind.EXTENSION_JAMB, units=units) or "none",
        "exterior_board": boards_words(kit, PartKind.EXTERIOR_JAMB, units=units)
        or boards_words(kit, PartKind.CLADDING_RETURN, units=units)
        or "none",
        "buck": f"{buck.kind.value}, {depth['text']} deep" if buck and depth else "none",
        "buck_depth": depth,
        "overhang": size(placement.overhang, units=units),
        "sash": None
        if swing is None
        else {
            "value": swing.greatest_deg,
            "unit": "deg",
            "text": f"{swing.greatest_deg:.0f}{DEGREES}",
            "stopped_by": swing.stopped_by.value,
        },
    }


def _effects(effects: Effects, window: WindowComparison, study: PlacementStudy) -> Record:
    return {
        "heat": _heat(effects, window, study),
        "cold": _cold(effects, study),
        "sun": [
            {"faces": facing_text(one.facing_deg), "winter": share(one.winter), "summer": share(one.summer)}
            for one in effects.sun
        ],
        "sky": share(effects.sky),
    }


def _heat(effects: Effects, window: WindowComparison, study: PlacementStudy) -> Record:
    found = effects.at
    sides = {
        side.side.value: {
            **figure(side.transmittance.value, "W/mK", 3),
            "half_width": figure(side.transmittance.half_width, "W/mK", 4),
            "is_usual": side.transmittance.is_usual,
        }
        for side in found.sides
    }
    over = (found.heat - window.sweep.least.heat) * study.site.degree_days * 24 / 1000
    return {
        "sides": sides,
        "mean": figure(found.mean_transmittance, "W/mK", 3),
        "whole": figure(found.heat, "W/K", 3),
        "whole_us": figure(found.heat / BTU, "Btu/h °F", 3),
        "half_width": figure(found.heat_half_width, "W/K", 3),
        "per_season": figure(effects.heat_per_year, "kWh", 1),
        "over_least": figure(over, "kWh", 1),
    }


def _cold(effects: Effects, study: PlacementStudy) -> Record:
    surfaces = effects.surfaces
    units = study.job.units
    return {
        "side": surfaces.side,
        "place": surfaces.place,
        "coldest": figure(surfaces.coldest, "1", 2),
        "corner": figure(surfaces.corner, "1", 2),
        "estimate": figure(surfaces.estimate, "1", 2),
        "estimate_side": surfaces.estimate_side,
        "temperature": {
            "value": surfaces.temperature,
            "unit": "degC",
            "text": temperature_text(surfaces.temperature, units),
        },
        "sweats_above": share(surfaces.sweats_above),
        "estimate_sweats_above": share(surfaces.estimate_sweats_above),
        "mold": _mold(surfaces),
    }


def _mold(surfaces: Surfaces) -> Record | None:
    """The factor that the worst month asks for against mold, and what there is; None without monthly means."""
    needed = surfaces.mold
    if needed is None:
        return None
    is_enough = surfaces.coldest >= needed.factor
    verdict = "enough" if is_enough else "NOT enough"
    return {
        "value": needed.factor,
        "unit": "1",
        "text": f"{decimal_text(needed.factor, 2)} in {MONTHS[needed.month - 1]}: {verdict}",
        "month": needed.month,
        "is_enough": is_enough,
    }


def _curve_point(effects: Effects, window: WindowComparison, study: PlacementStudy) -> Record:
    units, placement = study.job.units, effects.at.kit.placement
    return {
        "flange_plane": size(effects.at.flange_plane, units=units),
        "interior_depth": size(placement.interior_depth, units=units),
        "exterior_depth": size(placement.exterior_depth, units=units),
        **_effects(effects, window, study),
    }


def _detail(change: DetailChange, study: PlacementStudy) -> Record:
    season = None if change.change is None else change.change * study.site.degree_days * 24 / 1000
    return {
        "words": change.words,
        "heat": None if change.heat is None else figure(change.heat, "W/K", 3),
        "change": None if change.change is None else signed(change.change, "W/K", 3),
        "season": None if season is None else signed(season, "kWh", 1),
        "coldest": None if change.coldest is None else figure(change.coldest, "1", 2),
        "why_not": sentences(change.why_not, study.job.units) or None,
    }
