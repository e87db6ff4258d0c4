"""Joints and reveals in the trade's words, from the trim of an opening's record."""

from __future__ import annotations

from jambs.parts.board.kinds import Where
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
    reveal, jamb = trim.get("casing_reveal"), trim.get("jamb")
    lines = [
        line("trim", trim["style"]),
        *(_jamb_lines(jamb) if jamb else []),
        line("frame reveal", trim["frame_reveal"]["text"]),
        *([line("casing reveal", reveal["text"])] if reveal else []),
        *_stack_lines(trim),
        *_panel_lines(trim),
        *_flare_lines(trim),
        *(_casing_lines(trim["casing"]) if reveal else []),
        *_built_up_lines(trim.get("built_up")),
    ]
    if trim["stool"]:
        past = "stool horn past casing" if reveal else "stool horn"
        names = (("horn", past), ("nosing", "stool nosing"), ("rabbet", "stool under frame"))
        lines += _lines_of(trim["stool"], names)
    if trim["apron"]:
        lines.append(line("apron ends", trim["apron"]["ends"]))
    return lines


def _jamb_lines(jamb: Record) -> list[Line]:
    if corners := jamb.get("corners"):
        return [line("jamb corners", corners)]
    depth = jamb["rabbet_depth"]
    rabbet = f", {depth['text']} deep" if depth and jamb["joint"] == "rabbet" else ""
    return [line("jamb corners", jamb["joint"] + rabbet)]


def drywall_lines(record: Record) -> list[Line]:
    """Return what the drywall crew leaves, line by line: openings, gaps, and beads of one kind and size together."""
    work = record.get("drywall")
    if not work:
        return []
    returns = record["trim"]["interior"].get("returns")
    lines = [
        line("finished opening", work["finished_opening"]["text"]),
        line("opening in the wall board", work["wall_board_opening"]["text"]),
    ]
    if work["return_board_opening"]:
        lines.append(line("between return boards", work["return_board_opening"]["text"]))
    if returns:
        lines += [line("wall board", returns["wall_board"]), line("gap at the frame", work["gap_at_frame"]["text"])]
    if returns and record["floor_below_frame"] is not None:
        lines.append(line("at the floor", AT_FLOOR))
    return [*lines, *_bead_lines(work["beads"]), *_backing_lines(work["backing"])]


AT_FLOOR = "no part under the door; sides as planned reach the finished floor, the gap there is the drywall crew's"
"""What is at the foot of an opening that boards return down to the floor."""


def _backing_lines(backing: list[Record]) -> list[Line]:
    """Return the lumber that stands before the boards: ``52 mm (left, right), 40 mm (head), 88 mm deep``."""
    found: dict[tuple[str, str], dict[str, list[str]]] = {}
    for one in backing:
        sides = found.setdefault((one["kind"], one["depth"]["text"]), {})
        sides.setdefault(one["width"]["text"], []).append(one["side"])
    return [
        line(
            f"before the boards: {kind}",
            ", ".join((*(f"{width} ({', '.join(sides)})" for width, sides in wide.items()), f"{depth} deep")),
        )
        for (kind, depth), wide in found.items()
    ]


def _bead_lines(beads: list[Record]) -> list[Line]:
    """Return beads of one kind and length in a line: ``corner bead, leg 30 mm, nose 1.5 mm``."""
    found: dict[tuple[str, str], list[str]] = {}
    for bead in beads:
        nose = f", nose {bead['nose']['text']}" if bead["nose"]["value"] else ""
        name = f"{bead['kind']}, leg {bead['leg']['text']}{nose}"
        found.setdefault((name, bead["length"]["text"]), []).append(bead["side"])
    return [line(name, f"{length} ({', '.join(sides)})") for (name, length), sides in found.items()]


def _built_up_lines(built: Record | None) -> list[Line]:
    """Return the members of a casing: across the wall or up it, then out from it; the head from the bottom up."""
    if not built:
        return []
    blocks = (("backband", "width"), ("rosettes", "size"), ("plinths", "width"))
    lines = [
        line(name, f"{built[name][across]['text']} × {built[name]['thickness']['text']}")
        for name, across in blocks
        if built[name]
    ]
    head = [f"{one['kind']} {one['height']['text']} × {one['projection']['text']}" for one in built["head"]]
    if crown := built["crown"]:
        size = f"{crown['width']['text']} × {crown['thickness']['text']}"
        lines.append(line("crown, spring angle", f"{size}, {crown['spring_deg']['text']}"))
    return [*lines, *([line("head, from the bottom", ", ".join(head))] if head else [])]


def _panel_lines(trim: Record) -> list[Line]:
    """Return the groove of frames with panels, and how wide their stiles and rails are."""
    panels = trim.get("panels")
    if not panels:
        return []
    groove = panels["groove"]
    sizes = f"{groove['width']['text']} × {groove['depth']['text']} deep, {groove['from_face']['text']} from the face"
    return [
        line("stiles and rails", f"{panels['stiles']['text']} and {panels['rails']['text']}"),
        line("groove for panels", sizes),
    ]


def _stack_lines(trim: Record) -> list[Line]:
    """Return how many jamb frames are stacked, and the step between two."""
    stack = trim.get("stack")
    if not stack:
        return []
    reveal = (stack["reveal"] or trim["frame_reveal"])["text"]
    return [line("jamb frames stacked", str(stack["frames"])), line("reveal between frames", reveal)]


def _flare_lines(trim: Record) -> list[Line]:
    """Return how far the jambs of each side lean out: by an angle, or wider by a length at the finished face."""
    flare = trim.get("flare") or {}
    return [
        line(
            f"flare, {side}", stated["angle_deg"]["text"] if stated["angle_deg"] else f"{stated['wider']['text']} wider"
        )
        for side, stated in flare.items()
        if stated and any(one and one["value"] for one in stated.values())
    ]


def _casing_lines(casing: Record) -> list[Line]:
    """Return the corners of a casing; a head runs past its legs only where some corner of it is butted."""
    mitered = casing.get("corners")
    names = (*(() if mitered else (("overhang", "head casing overhang"),)), ("back_bevel_deg", "casing back bevel"))
    return [line("casing corners", mitered or casing["corner"]), *_lines_of(casing, names)]


def exterior_lines(trim: Record) -> list[Line]:
    """Return joints, reveals, sill and flashing of the exterior trim."""
    if trim.get("returns"):
        return _metal_lines(trim)
    lines = [line("frame reveal", trim["frame_reveal"]["text"]), line("sealant joint", trim["sealant_joint"]["text"])]
    if trim.get("casing"):
        lines += [line("casing reveal", trim["casing_reveal"]["text"]), *_casing_lines(trim["casing"])]
    lines += [*_flare_lines(trim), *_clad_lines(trim.get("cladding_returns"))]
    past = "casing" if trim.get("casing") else "the corner"
    if trim["sill"]:
        lines += _sill_lines(trim["sill"], past)
    return lines + _flashing_lines(trim["head_flashing"], past if trim.get("casing") else "the head return")


def _clad_lines(clad: Record | None) -> list[Line]:
    """Return what is said of cladding that returns to the frame."""
    if not clad:
        return []
    furring, board = clad["furring"], clad["corner_board"]
    gap = [line("gap at the corner board", board["gap"]["text"])] if board else []
    return [
        line("cladding returns", f"{clad['stock']} {clad['thickness']['text']}, {clad['laid']}"),
        line("corner", clad["corner"]),
        *gap,
        *_lines_of(clad, (("gap_at_sill", "feet over the sill"),)),
        line("cavity behind returns", f"{furring['thickness']['text']}, open at the feet, insect screen"),
    ]


def _as_sold(size: Record) -> str:
    """Return a size of sheet metal as it was stated, finer than any grid."""
    unit = " mm" if size["text"].endswith("mm") else '"'
    return f"{size['value']:g}{unit}"


def _metal_lines(trim: Record) -> list[Line]:
    """Return what is said of bent metal that lines the opening."""
    returns = trim["returns"]
    names = (("frame_leg", "leg at the frame"), ("face_leg", "face leg"), ("hem", "hem"), ("corner_lap", "corner lap"))
    lines = [
        line("frame reveal", trim["frame_reveal"]["text"]),
        line("sealant joint", trim["sealant_joint"]["text"]),
        line("returns", f"{returns['material']}, {_as_sold(returns['thickness'])}"),
        line("bend radius, inside", _as_sold(returns["bend_radius"])),
        *_lines_of(returns, names),
        line("cladding", returns["cladding"]),
    ]
    if returns["sill"]:
        lines += _lines_of(returns["sill"], (("slope", "sill slope"), ("nosing", "sill nosing past cladding")))
    flashing = trim["head_flashing"]
    return [
        *lines,
        line("flashing past face legs", flashing["past_casing"]["text"]),
        *_lines_of(flashing, (("upstand", "flashing upstand"), ("gap_to_cladding", "cladding above flashing"))),
    ]


def _sill_lines(sill: Record, past: str) -> list[Line]:
    kerf = sill["drip_kerf"]
    names = (("slope", "sill slope"), ("nosing", "sill nosing past cladding"), ("horn", f"sill horn past {past}"))
    size = f"{kerf['width']['text']} × {kerf['depth']['text']} deep"
    return [*_lines_of(sill, names), line("drip kerf", f"{size}, {kerf['set_back']['text']} back")]


def _flashing_lines(flashing: Record, past: str) -> list[Line]:
    names = (
        ("past_casing", f"flashing past {past}"),
        ("upstand", "flashing upstand"),
        ("gap_to_cladding", "cladding above flashing"),
    )
    return _lines_of(flashing, names)
