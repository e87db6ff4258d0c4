"""Random kits of openings that are more than one cased rectangle: shapes, ganged units, returns, built-up casings."""

from __future__ import annotations

from typing import Any

from arches import arch_changes
from cases import STOOL
from gangs import ganged
from hypothesis import strategies as st
from random_kits import RandomKit, can_be_built, casings, exterior_trims, flares, inches, kit_from
from rounds import inside_only, round_changes

JOINTS = ("head over legs", "legs through", "rabbet", "miter")
SHARES = ("0", "1/4", "1/2", "1")


@st.composite
def jambs(draw: st.DrawFn) -> dict[str, str]:
    joint = draw(st.sampled_from(JOINTS))
    jamb = {"thickness": "3/4", "stock": "poplar", "joint": joint}
    return {**jamb, "rabbet_depth": "3/8"} if joint == "rabbet" else jamb


@st.composite
def shape_kits(draw: st.DrawFn) -> RandomKit:
    """Draw raked heads up to 50°, gables, octagons; each with the trims that go with it."""
    kind = draw(st.sampled_from(["raked", "gable", "octagon"]))
    width, low = draw(st.integers(24, 60)), draw(st.integers(20, 48))
    jamb = draw(jambs())
    more: dict[str, Any] = {
        "interior_trim__inside__jamb": jamb,
        "interior_trim__inside__casing": draw(casings()),
        "interior_trim__inside__frame_reveal": draw(inches(0, 3 / 8)),
        "exterior_trim__outside__casing": draw(casings()),
        "position": {"share": draw(st.sampled_from(SHARES))},
    }
    if draw(st.integers(0, 2)) == 0:
        more["interior_trim__inside__flare"] = draw(flares(has_sill=False))
    if kind == "octagon":
        more["exterior_trim__outside__sill"] = None
        shape: Any = "octagon" if draw(st.booleans()) else {"kind": kind, "cut": draw(inches(7, 8))}
        return shaped(shape, width, width, **more)
    if "interior_trim__inside__flare" not in more and draw(st.booleans()):
        more |= {"interior_trim__inside": {**STOOL, "jamb": jamb, "casing": more.pop("interior_trim__inside__casing")}}
        del more["interior_trim__inside__jamb"], more["interior_trim__inside__frame_reveal"]
    rise = draw(st.integers(2, width // 2))
    if kind == "gable":
        other = low + draw(st.integers(0, 4))
        peak = draw(st.integers(width // 2, width - width // 3))
        shape = {"kind": kind, "left": str(low), "right": str(other), "peak_from_left": str(peak)}
        return shaped(shape, width, low + 6 + rise, **more)
    ends = [str(low), str(low + rise)]
    left, right = ends if draw(st.booleans()) else ends[::-1]
    return shaped({"kind": kind, "left": left, "right": right}, width, low + rise, **more)


def shaped(shape: Any, width: float, height: float, **more: Any) -> RandomKit:
    return kit_from(
        {
            "openings__0__rough_opening": None,
            "openings__0__shape": shape,
            "openings__0__frame": f"{width:g} x {height:g}",
            **more,
        }
    )


@st.composite
def ganged_kits(draw: st.DrawFn) -> RandomKit:
    """Draw two or three units in a row, perhaps a transom over them, mulls of a gap or a post, one trim round all."""
    widths = draw(st.lists(st.integers(16, 36), min_size=2, max_size=3))
    height, gap = draw(st.integers(20, 60)), draw(st.integers(1, 32)) / 16
    over = {"thickness": draw(inches(1 / 2, 1)), "stock": "poplar"}
    more: dict[str, Any] = {
        "openings__0__units": [{"window": "fixed", "frame": f"{width} x {height}"} for width in widths],
        "openings__0__mull": {"gap": f"{gap:g}"},
        "interior_trim__inside__jamb": draw(jambs()),
        "interior_trim__inside__casing": draw(casings()),
        "interior_trim__inside__mull_casing": dict(over),
        "exterior_trim__outside": {**draw(exterior_trims()), "mull_casing": over},
        "position": {"share": draw(st.sampled_from(SHARES))},
    }
    if draw(st.booleans()):
        across = sum(widths) + gap * (len(widths) - 1)
        more["openings__0__transom"] = [{"window": "fixed", "frame": f"{across:g} x {draw(st.integers(12, 24))}"}]
    else:
        more |= {"openings__0__transom": None, "openings__0__transom_bar": None}
    if draw(st.booleans()):
        more["interior_trim__inside"] = {
            **STOOL,
            "jamb": more.pop("interior_trim__inside__jamb"),
            "casing": more.pop("interior_trim__inside__casing"),
            "mull_casing": more.pop("interior_trim__inside__mull_casing"),
        }
    elif draw(st.booleans()):
        more["interior_trim__inside__flare"] = draw(flares(has_sill=True))
    if "interior_trim__inside__flare" not in more and more["openings__0__transom"] is None and draw(st.booleans()):
        more["openings__0__mull"] |= {"boxed": draw(st.sampled_from(["inside", "outside", "both"]))}
    return can_be_built(kit_from(ganged(**more)))


@st.composite
def returned_kits(draw: st.DrawFn) -> RandomKit:
    """Draw openings without casing: boards on four sides, over a stool, over tile; bare jambs of wood."""
    style = draw(st.sampled_from(["returns", "returns and stool", "returns and tile sill", "bare"]))
    more = {"position": {"share": draw(st.sampled_from(SHARES))}}
    reveal = draw(inches(0, 3 / 4))
    if style == "bare":
        edges = [
            {"kind": "shadow gap", "gap": draw(inches(1 / 8, 1 / 2)), "leg": "1"},
            {"kind": "trimless bead", "leg": "1"},
        ]
        trim = {"style": "returns", "jamb": draw(jambs()), "wall_edge": draw(st.sampled_from(edges))}
        return can_be_built(kit_from({**more, "interior_trim__inside": {**trim, "frame_reveal": reveal}}))
    boards: dict[str, Any] = {
        "material": "gypsum board",
        "thickness": draw(st.sampled_from(["3/8", "1/2", "5/8"])),
        "corner_bead": {"leg": "1 1/4", "nose": draw(inches(1 / 16, 1 / 8))},
        "wall_board": draw(st.sampled_from(["over the return", "behind the return"])),
        "gap_at_frame": draw(inches(0, 3 / 8)),
    }
    trim = {"style": style, "frame_reveal": reveal, "returns": boards}
    if style == "returns and stool":
        thickness, horn, nosing = draw(inches(3 / 4, 1.5)), draw(inches(0, 2)), draw(inches(1 / 4, 2))
        trim["stool"] = {"thickness": thickness, "stock": "poplar", "horn": horn, "nosing": nosing}
    if style == "returns and tile sill":
        trim["tile_sill"] = {"thickness": "3/8", "bed": "1/4", "joint": "1/8", "nosing": draw(inches(1 / 8, 1))}
    return can_be_built(kit_from({**more, "interior_trim__inside": trim}))


@st.composite
def built_up_kits(draw: st.DrawFn) -> RandomKit:
    """Draw casings of several members: a backband, rosettes, a head of fillet, frieze and cap, perhaps a crown."""
    kind = draw(st.sampled_from(["backband", "rosettes", "head", "crown"]))
    width, thick = draw(st.integers(40, 80)) / 16, draw(st.integers(10, 16)) / 16
    casing: dict[str, Any] = {"width": f"{width}", "thickness": f"{thick}", "stock": "poplar", "corner": "butt"}
    members: dict[str, Any] = {}
    if kind == "backband":
        band = thick + draw(st.integers(1, 8)) / 16
        members["backband"] = {"width": draw(inches(1 / 2, 1)), "thickness": f"{band}", "stock": "poplar"}
        casing["corner"] = draw(st.sampled_from(["miter", "butt"]))
    elif kind == "rosettes":
        size, out = width + draw(st.integers(0, 8)) / 16, thick + draw(st.integers(1, 8)) / 16
        members["rosettes"] = {"size": f"{size}", "thickness": f"{out}", "stock": "poplar"}
    else:
        # A cap covers the crown under it at the front and at the ends.
        cap = ("4", draw(inches(3, 4))) if kind == "crown" else ("2", draw(inches(3 / 4, 1.5)))
        members["head"] = [
            _member("fillet", draw(inches(1 / 2, 3 / 4)), draw(inches(1.125, 1.375)), draw(inches(0, 3 / 4))),
            _member("frieze", draw(inches(5, 7)), "3/4", "0"),
            _member("cap", draw(inches(1 / 2, 1)), *cap),
        ]
    if kind == "crown":
        spring = draw(st.integers(30, 60))
        members["crown"] = {"width": "3 1/2", "thickness": "9/16", "spring_deg": spring, "stock": "poplar"}
    jamb = draw(jambs())
    more: dict[str, Any] = {"position": {"share": draw(st.sampled_from(SHARES))}}
    if draw(st.booleans()):
        more["exterior_trim"] = None
    trim = {**STOOL, "jamb": jamb, "casing": casing, "built_up": members}
    return can_be_built(kit_from({**more, "interior_trim__inside": trim}))


def _member(kind: str, height: str, projection: str, overhang: str) -> dict[str, str]:
    return {"kind": kind, "height": height, "projection": projection, "overhang": overhang, "stock": "poplar"}


@st.composite
def round_kits(draw: st.DrawFn, *, has_outside: bool = True) -> RandomKit:
    """Draw full, half and quarter rounds on their sill, ellipse arches and triangles."""
    kind = draw(st.sampled_from(["full round", "half round", "quarter round", "ellipse arch", "triangle"]))
    size, curved = draw(st.integers(28, 60)), draw(st.sampled_from(["sawn segments", "bent laminations"]))
    more: dict[str, Any] = {
        "interior_trim__inside__casing": draw(casings()),
        "interior_trim__inside__frame_reveal": draw(inches(0, 3 / 8)),
        "exterior_trim__outside__casing": draw(casings()),
        "position": {"share": "0"},
    }

    if has_outside and draw(st.booleans()):
        more["exterior_trim__outside__sill"] = draw(exterior_trims())["sill"]

    def kept(changes: dict[str, Any]) -> RandomKit:
        return can_be_built(kit_from(changes if has_outside else inside_only(changes)))

    if kind == "ellipse arch":
        rise = draw(st.integers(-(-size * 3 // 8), size // 2 - 2))
        return kept(arch_changes({"kind": kind, "rise": str(rise)}, size, rise + draw(st.integers(8, 40)), **more))
    if kind == "triangle":
        peak = draw(st.sampled_from([0, size // 3, size // 2, size]))
        shape: Any = {"kind": kind, "peak_from_left": str(peak)}
        return kept(round_changes(shape, size, draw(st.integers(size // 2, size)), **more))
    shape = {"kind": kind, "high_side": draw(st.sampled_from(["left", "right"]))}
    if kind != "quarter round":
        shape = kind
    if kind == "full round":
        more["exterior_trim__outside__sill"] = None
    high = size / 2 if kind == "half round" else size
    return kept(round_changes(shape, size, high, curved=curved, **more))
