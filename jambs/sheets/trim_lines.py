"""Joints and reveals in the trade's words, from the trim of an opening's record."""

from __future__ import annotations

from jambs.parts.kinds import Where
from jambs.values import Record

Line = dict[str, str]


def line(name: str, value: str, note: str = "") -> Line:
    """Return one line of a list on paper."""
    return {"name": name, "value": value, "note": note}


def _lines_of(record: Record, names: tuple[tuple[str, str], ...]) -> list[Line]:
    """Return a line for each size of a record that is there and not zero."""
    return [line(words, record[key]["text"]) for key, words in names if record[key] and record[key]["value"]]


def joint_lines(trim: Record, where: Where) -> list[Line]:
    """Return joints and reveals of one set of parts: interior, exterior; a buck has none."""
    if where is Where.INTERIOR:
        return interior_lines(trim["interior"])
    return exterior_lines(trim["exterior"]) if where is Where.EXTERIOR and trim["exterior"] else []


def interior_lines(trim: Record) -> list[Line]:
    """Return joints and reveals of the interior trim."""
    depth = trim["jamb"]["rabbet_depth"]
    rabbet = f", {depth['text']} deep" if depth and trim["jamb"]["joint"] == "rabbet" else ""
    lines = [
        line("trim", trim["style"]),
        line("jamb corners", trim["jamb"]["joint"] + rabbet),
        line("frame reveal", trim["frame_reveal"]["text"]),
        line("casing reveal", trim["casing_reveal"]["text"]),
        *_stack_lines(trim),
        *_casing_lines(trim["casing"]),
    ]
    if trim["stool"]:
        names = (("horn", "stool horn past casing"), ("nosing", "stool nosing"), ("rabbet", "stool under frame"))
        lines += _lines_of(trim["stool"], names)
    if trim["apron"]:
        lines.append(line("apron ends", trim["apron"]["ends"]))
    return lines


def _stack_lines(trim: Record) -> list[Line]:
    """Return how many jamb frames are stacked, and the step between two."""
    stack = trim.get("stack")
    if not stack:
        return []
    reveal = (stack["reveal"] or trim["frame_reveal"])["text"]
    return [line("jamb frames stacked", str(stack["frames"])), line("reveal between frames", reveal)]


def _casing_lines(casing: Record) -> list[Line]:
    names = (("overhang", "head casing overhang"), ("back_bevel_deg", "casing back bevel"))
    return [line("casing corners", casing["corner"]), *_lines_of(casing, names)]


def exterior_lines(trim: Record) -> list[Line]:
    """Return joints, reveals, sill and flashing of the exterior trim."""
    lines = [
        line("frame reveal", trim["frame_reveal"]["text"]),
        line("sealant joint", trim["sealant_joint"]["text"]),
        line("casing reveal", trim["casing_reveal"]["text"]),
        *_casing_lines(trim["casing"]),
    ]
    if trim["sill"]:
        lines += _sill_lines(trim["sill"])
    return lines + _flashing_lines(trim["head_flashing"])


def _sill_lines(sill: Record) -> list[Line]:
    kerf = sill["drip_kerf"]
    names = (("slope", "sill slope"), ("nosing", "sill nosing past cladding"), ("horn", "sill horn past casing"))
    size = f"{kerf['width']['text']} × {kerf['depth']['text']} deep"
    return [*_lines_of(sill, names), line("drip kerf", f"{size}, {kerf['set_back']['text']} back")]


def _flashing_lines(flashing: Record) -> list[Line]:
    names = (
        ("past_casing", "flashing past casing"),
        ("upstand", "flashing upstand"),
        ("gap_to_cladding", "cladding above flashing"),
    )
    return _lines_of(flashing, names)
