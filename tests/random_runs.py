"""Random kits of openings trimmed as one, and of straight-edged openings lined outside with bent metal."""

from __future__ import annotations

from typing import Any

from cases import STOOL
from gangs import ganged
from hypothesis import strategies as st
from metal import RETURNS, in_metal, lined
from random_kits import RandomKit, can_be_built, casings, exterior_trims, inches, kit_from
from random_openings import SHARES, jambs
from rounds import round_changes
from trimmed_as_one import OUTSIDE, OVER, side_by_side


@st.composite
def run_kits(draw: st.DrawFn) -> RandomKit:
    """Draw two or three windows on one level, wall between, boards over all; the kit of one of them.

    Outside perhaps flared.
    """
    count = draw(st.integers(2, 3))
    openings = side_by_side(count, draw(inches(4.5, 9)))["openings"]
    height, holes = draw(st.integers(20, 60)), draw(st.sampled_from([1 / 2, 3 / 4, 1]))
    for one in openings:
        width = draw(st.integers(20, 44))
        one |= {"frame": f"{width} x {height}", "rough_opening": f"{width + holes:g} x {height + holes:g}"}
    outside = {**draw(exterior_trims()), "mull_casing": OUTSIDE}
    if draw(st.booleans()):
        outside["flare"] = {key: f"{draw(st.integers(1, 15))} deg" for key in ("sides", "head")}
    inside = {**STOOL, "jamb": draw(jambs()), "casing": draw(casings()), "mull_casing": OVER}
    first = draw(st.integers(0, count - 1))
    changes: dict[str, Any] = {
        "openings": [openings[first], *openings[:first], *openings[first + 1 :]],
        "interior_trim__inside": inside,
        "exterior_trim__outside": outside,
        "position": {"share": draw(st.sampled_from(SHARES))},
    }
    return can_be_built(kit_from(changes))


@st.composite
def straight_metal_kits(draw: st.DrawFn) -> RandomKit:
    """Draw rectangles, ganged units, rakes, gables, triangles and octagons lined outside with bent metal."""
    sill = {
        **RETURNS["sill"],
        "slope": f"{draw(st.sampled_from([4, 7, 10, 15]))} deg",
        "nosing": draw(inches(1 / 2, 2)),
    }
    keys: dict[str, Any] = {
        "cladding": draw(st.sampled_from(["behind the leg", "over the leg"])),
        "hem": draw(st.sampled_from(["1/2", None])),
        "face_leg": draw(inches(1, 3)),
        "corner_lap": draw(inches(1 / 2, 1.5)),
        "sill": draw(st.sampled_from([sill, None])),
    }
    kind = draw(st.sampled_from(["rectangle", "ganged", "raked", "gable", "octagon", "triangle"]))
    share = {"position": {"share": draw(st.sampled_from(["0", "1/4", "1/2"]))}}
    wide, high = draw(st.integers(24, 60)), draw(st.integers(40, 60))
    if kind == "ganged":
        return can_be_built(kit_from({**in_metal(ganged(), **keys), **share}))
    trim = {"exterior_trim__outside": {**lined(**keys), "frame_reveal": draw(inches(1 / 8, 1 / 2))}, **share}
    if kind == "rectangle":
        return can_be_built(
            kit_from({**trim, **_framed(wide, high), "openings__0__rough_opening": f"{wide + 1} x {high + 1}"})
        )
    if kind == "triangle":
        shape = {"kind": kind, "peak_from_left": str(draw(st.integers(wide // 3, 2 * wide // 3)))}
        kept = {key: one for key, one in round_changes(shape, wide, 30).items() if not key.startswith("exterior_trim")}
        return can_be_built(kit_from({**kept, **trim}))
    rise = draw(st.integers(2, wide // 2))
    shapes: dict[str, Any] = {
        "raked": {"kind": "raked", "left": str(high - rise), "right": str(high)},
        "gable": {"kind": "gable", "sides": str(high - rise)},
        "octagon": "octagon",
    }
    frame = _framed(wide, wide if kind == "octagon" else high)
    return can_be_built(
        kit_from({**trim, **frame, "openings__0__rough_opening": None, "openings__0__shape": shapes[kind]})
    )


def _framed(wide: int, high: int) -> dict[str, str]:
    return {"openings__0__frame": f"{wide} x {high}"}
