"""Random kits: trim settings, sizes, walls and measured depths as a job file may hold them."""

from __future__ import annotations

from typing import Any

from cases import changed, job_of
from hypothesis import assume
from hypothesis import strategies as st

from jambs.findings import Severity
from jambs.job import Job, JobFaults
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError, make_kit
from jambs.place.solve import PlaceError, place_windows


class RandomKit:
    """A kit and its job; shown as the changes of the base job that made it, short enough to read and to copy.

    No dataclass: hypothesis would show every field of one, and a whole job is too long to show.
    """

    def __init__(self, changes: dict[str, Any], kit: Kit, job: Job) -> None:
        self.changes, self.kit, self.job = changes, kit, job

    def __repr__(self) -> str:
        return f"kit_of(**{self.changes!r})"


CORNERS = ("head_left", "head_right", "sill_left", "sill_right")


def inches(low: float, high: float, *, step: float = 1 / 16) -> st.SearchStrategy[str]:
    """A length between two, on a step, as the job file writes it."""
    return st.integers(round(low / step), round(high / step)).map(lambda count: f"{count * step:.6f}")


@st.composite
def flares(draw: st.DrawFn, *, has_sill: bool) -> dict[str, str]:
    """Flares of some sides, by angles of whole degrees or by lengths; a stool and a floor lie level."""
    keys = ["sides", "head"] + ["sill"] * has_sill
    angle = st.integers(0, 45).map(lambda degrees: f"{degrees} deg")
    length = inches(0, 2).map(lambda text: f'{text}"')
    return {key: draw(angle | length) for key in keys if draw(st.booleans())}


@st.composite
def interior_trims(draw: st.DrawFn) -> dict[str, Any]:
    style = draw(st.sampled_from(["picture framed", "stool and apron", "three-sided"]))
    joint = draw(st.sampled_from(["head over legs", "legs through", "rabbet", "miter"]))
    thickness = draw(st.sampled_from([1 / 2, 5 / 8, 3 / 4, 1]))
    jamb: dict[str, Any] = {"thickness": str(thickness), "stock": "poplar", "joint": joint}
    if joint == "rabbet":
        jamb["rabbet_depth"] = draw(inches(1 / 16, thickness - 1 / 16))
    trim: dict[str, Any] = {
        "style": style,
        "jamb": jamb,
        "frame_reveal": draw(inches(0, 3 / 8)),
        "casing_reveal": draw(inches(0, thickness - 1 / 8)),
        "casing": draw(casings()),
    }
    if stacked := draw(st.sampled_from([0, 0, 0, 2, 3])):
        trim["stack"] = {"frames": stacked, "reveal": draw(inches(1 / 16, thickness - 1 / 16))}
    if "stack" not in trim and draw(st.integers(0, 3)) == 0:
        trim["flare"] = draw(flares(has_sill=style == "picture framed"))
    if style == "stool and apron":
        trim["stool"] = {
            "thickness": draw(inches(3 / 4, 1.5)),
            "stock": "poplar",
            "horn": draw(inches(0, 2)),
            "nosing": draw(inches(1 / 4, 2)),
        }
        trim["apron"] = {
            "width": draw(inches(2, 5)),
            "thickness": draw(inches(1 / 2, 1)),
            "stock": "poplar",
            "ends": draw(st.sampled_from(["square", "returned"])),
        }
    return trim


@st.composite
def casings(draw: st.DrawFn) -> dict[str, Any]:
    corner = draw(st.sampled_from(["miter", "butt"]))
    casing = {
        "width": draw(inches(2, 6)),
        "thickness": draw(inches(1 / 2, 1.25)),
        "stock": "poplar",
        "corner": corner,
    }
    return {**casing, "overhang": draw(inches(0, 1))} if corner == "butt" else casing


@st.composite
def exterior_trims(draw: st.DrawFn) -> dict[str, Any]:
    thickness = draw(st.sampled_from([3 / 4, 1]))
    trim: dict[str, Any] = {
        "jamb": {"thickness": str(thickness), "stock": "cedar"},
        "frame_reveal": draw(inches(0, 3 / 8)),
        "sealant_joint": draw(inches(0, 3 / 8)),
        "casing_reveal": draw(inches(0, 1 / 2)),
        "casing": draw(casings()),
        "head_flashing": {
            "past_casing": draw(inches(0, 1)),
            "upstand": draw(inches(2, 4)),
            "drip": draw(inches(1 / 4, 1)),
            "gap_to_cladding": "3/8",
        },
    }
    trim["sill"] = {
        "thickness": draw(inches(1, 2)),
        "stock": "cedar",
        "slope": f"{draw(st.sampled_from([0, 4, 7, 10, 15]))} deg",
        "nosing": draw(inches(1 / 4, 2)),
        "horn": draw(inches(0, 2)),
        "drip_kerf": {"width": "1/4", "depth": draw(inches(0, 3 / 8)), "set_back": draw(inches(1 / 4, 3 / 4))},
    }
    return trim


@st.composite
def kits(draw: st.DrawFn) -> RandomKit:
    """A kit that can be built: nothing in its findings stops it."""
    frame = (draw(st.integers(16 * 16, 72 * 16)) / 16, draw(st.integers(16 * 16, 90 * 16)) / 16)
    shim = draw(st.sampled_from([1 / 2, 3 / 4, 1, 2]))
    interior = draw(interior_trims())
    faces = {side: draw(inches(1.5, 3)) for side in ("left", "right", "head", "sill")}
    changes: dict[str, Any] = {
        "shop__grid": draw(st.sampled_from(["1/16", "1/32", "1/64", "0.5 mm", "1 mm"])),
        "shop__proud": draw(st.sampled_from(["0", "1/64", "1/32", "1/16"])),
        "shop__shim_space": "0",
        "windows__fixed__frame_face": faces,
        "windows__fixed__exterior_frame_face": draw(inches(1, 3)),
        "windows__fixed__jamb_depth": draw(inches(3, 5)),
        "interior_trim__inside": interior,
        "exterior_trim__outside": draw(exterior_trims()),
        "position": {"share": draw(st.sampled_from(["0", "1/4", "1/2", "3/4", "1"]))},
        "walls__main__buck": draw(bucks()),
        "openings__0__frame": f"{frame[0]} x {frame[1]}",
        "openings__0__rough_opening": f"{frame[0] + shim} x {frame[1] + shim}",
    }
    if interior["style"] == "three-sided":
        changes["windows__fixed__sash"] = "door in"
        changes["windows__fixed__sash_thickness"] = "1 3/4"
        changes["windows__fixed__sash_set_back"] = "0"
        changes["openings__0__floor_below_frame"] = draw(inches(0, 1.5))
        changes["exterior_trim__outside"].pop("sill", None)
    found = kit_from(changes)
    if draw(st.booleans()):
        found = _measured(draw, changes, found.kit)
    return can_be_built(found)


def can_be_built(found: RandomKit) -> RandomKit:
    """Pass over a kit that a finding stops."""
    assume(not any(finding.severity is Severity.STOP for finding in found.kit.findings))
    return found


def bucks() -> st.SearchStrategy[dict[str, Any]]:
    return st.sampled_from(
        [
            {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce"},
            {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce", "set_back": "1/4"},
            {"kind": "liner", "thickness": "3/4", "stock": "plywood"},
        ]
    )


def _measured(draw: st.DrawFn, changes: dict[str, Any], planned: Kit) -> RandomKit:
    """Measure the wall: every corner a few thirty-seconds off the plan, inside and perhaps outside."""
    placement = planned.placement
    assume(placement.interior_depth > 0.5)
    depths: dict[str, Any] = {
        "date": "2026-05-18",
        "interior_depth": {name: _off(draw, placement.interior_depth) for name in CORNERS},
    }
    if placement.exterior_depth > 1.0 and draw(st.booleans()):
        depths["exterior_depth"] = {name: _off(draw, placement.exterior_depth) for name in CORNERS}
    return kit_from({**changes, "openings__0__measured": depths})


def _off(draw: st.DrawFn, depth: float) -> str:
    return f"{depth + draw(st.integers(-4, 4)) / 32:.6f}"


def kit_from(changes: dict[str, Any]) -> RandomKit:
    """Make the kit of a changed base job; pass over one that the job or its house does not allow."""
    try:
        job = job_of(changed(**changes))
        kit = make_kit(place_windows(job)[0], job)
    except (JobFaults, PlaceError, PartsError):
        assume(False)
        raise
    return RandomKit(changes, kit, job)
