"""Openings with arcs whose jambs flare, made for the tests."""

from __future__ import annotations

from typing import Any

from arches import arch_changes
from cases import STOOL
from hypothesis import strategies as st
from metal import lined
from random_kits import RandomKit, can_be_built, casings, inches, kit_from
from rounds import inside_only, round_changes

JAMB = {"thickness": "3/4", "stock": "poplar", "joint": "miter", "curved": "flat segments"}
QUARTER = {"kind": "quarter round", "high_side": "left"}
ELLIPSE = {"kind": "ellipse arch", "rise": "16"}
SEGMENT = {"kind": "segment arch", "rise": "8"}
SHAPES: dict[str, tuple[Any, float, float]] = {
    "half round": ("half round", 36, 60),
    "segment arch": (SEGMENT, 36, 60),
    "full round": ("full round", 36, 36),
    "half round without legs": ("half round", 36, 18),
    "quarter round": (QUARTER, 36, 36),
    "ellipse arch": (ELLIPSE, 44, 54),
}


def all_round(flare: str) -> dict[str, str]:
    """One flare for legs and arcs, the sill of a full round among them."""
    return {"sides": flare, "head": flare}


def flat_changes(name: str, flare: str = "15 deg", **more: Any) -> dict[str, Any]:
    """Return what changes for a shape, picture framed, its interior jambs flared in flat segments."""
    shape, wide, high = SHAPES[name]
    sides = {**all_round(flare), **({"sill": flare} if name == "full round" else {})}
    changes = {"interior_trim__inside__flare": sides, "interior_trim__inside__jamb": JAMB, **more}
    return round_changes(shape, wide, high, curved="flat segments", **changes)


def flat(name: str, flare: str = "15 deg", **more: Any) -> RandomKit:
    """Make the inside of such a kit."""
    return kit_from(inside_only(flat_changes(name, flare, **more)))


def flat_on_stool(name: str, flare: str = "15 deg") -> RandomKit:
    """Make the inside of one that stands on a stool."""
    changes = inside_only(flat_changes(name, flare))
    changes = {key: one for key, one in changes.items() if not key.startswith("interior_trim__inside__")}
    return kit_from({**changes, "interior_trim__inside": {**STOOL, "jamb": JAMB, "flare": all_round(flare)}})


SILL = {
    "thickness": "1 1/2",
    "stock": "cedar",
    "slope": "10 deg",
    "nosing": "1",
    "horn": "1",
    "drip_kerf": {"width": "1/4", "depth": "1/4", "set_back": "1/2"},
}


def flat_outside(name: str, flare: str = "15 deg", *, has_sill: bool = False, **more: Any) -> RandomKit:
    """Make a kit whose exterior jambs flare round a shape in flat segments; inside they stand square."""
    shape, wide, high = SHAPES[name]
    changes = {
        "interior_trim__inside__jamb__curved": "sawn segments",
        "exterior_trim__outside__flare": all_round(flare),
        "exterior_trim__outside__jamb__curved": "flat segments",
        "exterior_trim__outside__sill": SILL if has_sill else None,
        **more,
    }
    return kit_from(round_changes(shape, wide, high, **changes))


@st.composite
def flat_kits_outside(draw: st.DrawFn) -> RandomKit:
    """Draw arches and rounds whose exterior jambs flare up to 45°, on a sill or without one; nothing flares inside."""
    name = draw(st.sampled_from(list(SHAPES)))
    _, wide, high = SHAPES[name]
    more: dict[str, Any] = {
        "exterior_trim__outside__casing": draw(casings()),
        "exterior_trim__outside__frame_reveal": draw(inches(0, 3 / 8)),
        "exterior_trim__outside__sealant_joint": draw(inches(0, 3 / 8)),
        "position": {"share": draw(st.sampled_from(["0", "1/4", "1/2"]))},
    }
    if name not in ("segment arch", "ellipse arch"):
        size = draw(st.integers(30, 60))
        more["openings__0__frame"] = f"{size} x {size * high / wide:g}"
    has_sill = name != "full round" and draw(st.booleans())
    made = flat_outside(name, f"{draw(st.integers(3, 45))} deg", has_sill=has_sill, **more)
    return can_be_built(made)


@st.composite
def flat_kits(draw: st.DrawFn) -> RandomKit:
    """Draw arches and rounds whose jambs flare up to 45°, in a wall of any share."""
    kind = draw(st.sampled_from(["half round", "segment arch", "full round", "quarter round", "ellipse arch"]))
    wide, flare = draw(st.integers(30, 60)), f"{draw(st.integers(3, 45))} deg"
    jamb = {**JAMB, "joint": draw(st.sampled_from(["miter", "head over legs", "legs through"]))}
    sides = {
        "sides": flare,
        "head": flare,
        "sill": flare if kind == "full round" else f"{draw(st.integers(0, 20))} deg",
    }
    more: dict[str, Any] = {
        "interior_trim__inside__casing": draw(casings()),
        "interior_trim__inside__frame_reveal": draw(inches(0, 3 / 8)),
        "interior_trim__inside__flare": sides,
        "interior_trim__inside__jamb": jamb,
        "position": {"share": draw(st.sampled_from(["0", "1/4", "1/2"]))},
    }
    if kind == "segment arch":
        shape: Any = {"kind": kind, "rise": str(draw(st.integers(4, wide // 2 - 1)))}
        changes = arch_changes(shape, wide, wide + draw(st.integers(0, 24)), curved="flat segments", **more)
    elif kind == "ellipse arch":
        rise = draw(st.integers(-(-wide * 3 // 8), wide // 2 - 2))
        shape = {"kind": kind, "rise": str(rise)}
        changes = arch_changes(shape, wide, rise + draw(st.integers(8, 40)), curved="flat segments", **more)
    else:
        shape = {"kind": kind, "high_side": draw(st.sampled_from(["left", "right"]))} if "quarter" in kind else kind
        high = draw(st.sampled_from([wide / 2, wide])) if kind == "half round" else wide
        changes = round_changes(shape, wide, high, curved="flat segments", **more)
    return can_be_built(kit_from(inside_only(changes)))


@st.composite
def metal_kits(draw: st.DrawFn) -> RandomKit:
    """Draw arches and rounds lined outside with bent metal in flat strips, some with legs over a sill of metal."""
    name = draw(st.sampled_from(list(SHAPES)))
    shape, wide, high = SHAPES[name]
    has_legs = name in ("half round", "segment arch", "ellipse arch")
    sill = {} if has_legs and draw(st.booleans()) else {"sill": None}
    lining = lined(curved="flat segments", cladding=draw(st.sampled_from(["behind the leg", "over the leg"])), **sill)
    trim = {**lining, "frame_reveal": draw(inches(1 / 4, 1 / 2)), "sealant_joint": draw(inches(0, 3 / 8))}
    changes = round_changes(shape, wide, high, exterior_trim__outside=trim)
    kept = {key: one for key, one in changes.items() if not key.startswith("exterior_trim__outside__")}
    return can_be_built(kit_from({**kept, "position": {"share": draw(st.sampled_from(["0", "1/4", "1/2"]))}}))
