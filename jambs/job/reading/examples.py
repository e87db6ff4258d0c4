"""How each key that a job file must not leave out is written, for the message that misses it."""

from __future__ import annotations

from jambs.length import Units, length_text

LENGTHS = {
    "kerf": 1 / 8,
    "proud": 1 / 32,
    "shim_space": 1 / 4,
    "edge_allowance": 1 / 8,
    "taper_tolerance": 1 / 32,
    "thickness": 3 / 4,
    "width": 3 + 1 / 2,
    "length": 24,
    "depth": 1 / 4,
    "set_back": 1 / 2,
    "horn": 1,
    "nosing": 1,
    "frame_reveal": 1 / 8,
    "casing_reveal": 3 / 16,
    "sealant_joint": 1 / 4,
    "past_casing": 1 / 2,
    "upstand": 3,
    "drip": 1 / 2,
    "gap_to_cladding": 3 / 8,
    "jamb_depth": 4 + 9 / 16,
    "frame_projection": 1 + 1 / 4,
    "frame_face": 2 + 1 / 2,
    "left": 2 + 1 / 2,
    "right": 2 + 1 / 2,
    "head": 2 + 1 / 2,
    "sill": 2 + 1 / 2,
    "projection": 2,
    "pane_thickness": 1 / 8,
    "start_line": -8,
    "eave": 108,
    "floor": 108,
    "penetration": 1 + 1 / 2,
    "spacing": 16,
}
"""Lengths [in]; written in the units of the job."""

TEXTS = {
    "job": "Harbour Lane 7",
    "units": "inch",
    "grid": "1/32",
    "boards": "a list, each like {nominal: 1x6, stock: poplar}",
    "material": "gypsum board 1/2",
    "stock": "poplar",
    "joint": "rabbet",
    "corner": "miter",
    "style": "picture framed",
    "jamb": "with thickness, stock and joint under it",
    "casing": "with width, thickness, stock and corner under it",
    "head_flashing": "with past_casing, upstand, drip and gap_to_cladding under it",
    "drip_kerf": "with width, depth and set_back under it",
    "slope": "10 deg",
    "panes": "2",
    "nailing_flange": "yes",
    "sash": "fixed",
    "kind": "liner",
    "layers": "a list, inside to outside",
    "date": "2026-03-20",
    "measured_date": "2026-03-20",
    "interior_depth": "with head_left, head_right, sill_left and sill_right under it",
    "mark": "W01",
    "room": "Kitchen",
    "position": "{share: 1/2}",
    "shop": "with grid, kerf, proud, shim_space, edge_allowance, taper_tolerance and boards under it",
    "walls": "with one name or more under it, each with its layers",
    "windows": "with one name or more under it, each with its jamb_depth, frame_projection, …",
    "cladding": "with kind, length and least_exposure under it",
    "fastener": "long wood screw",
    "openings": "[W01, W02]",
    "climate.shop": "68 F, 45 %",
    "inside_winter": "70 F, 30 %",
    "inside_summer": "75 F, 60 %",
    "outside_winter": "30 F, 80 %",
    "outside_summer": "70 F, 75 %",
    "temperature": "68 F",
    "humidity": "45 %",
    "species": "Yellow-poplar",
    "interior_trim": "with one name or more under it, each with its style, jamb, casing, …",
}


def example(key: str, *, units: Units, above: str = "") -> str:
    """Return a line that a job file may hold: ``kerf: 1/8"``; ``above``: the key it stands under, if it matters."""
    if key == "frame":
        width, height = (length_text(side, units=units) for side in (35.5, 47.5))
        return f"frame: {width} x {height}"
    if key in LENGTHS:
        return f"{key}: {length_text(LENGTHS[key], units=units)}"
    text = TEXTS.get(f"{above}.{key}", TEXTS.get(key))
    return f"{key}: {text}" if text else key
