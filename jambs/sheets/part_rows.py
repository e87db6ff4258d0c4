"""Lines of the parts table: what a part is sawn to, in the order it is read at the saw."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from jambs.length import Grid
from jambs.parts.board.kinds import Where, told_position
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.words.alike_words import is_piece, mark_lines, piece_form, piece_place, places_words
from jambs.parts.words.cut_words import asides
from jambs.parts.words.flare_words import FROM_SQUARE
from jambs.parts.words.panel_words import frame_words, member_sizes, member_work_in_short
from jambs.parts.words.ply_words import strip_size, strips_first
from jambs.sheets.part_pictures import part_picture
from jambs.sides import BoardEnd
from jambs.values import Record

PLAIN: Record = {"shape": None, "asides": [], "frame": [], "sizes": {}, "short": [], "piece": None}
"""A part without a picture; all lines of its work set a saw or are done by hand."""

TOLD_ALIKE = ("name", "board", "thickness", "width", "length", "ends", "work")
"""What two members of a frame are cut by."""

OWN = ("mark", "mark_lines", "marks", "position", "shape")
"""What each of the pieces that share a line has of its own; its picture is drawn from what they have in common."""


def beside_parts(kit: CutKit, grid: Grid) -> Mapping[str, Record]:
    """Return what is printed beside the record of each part, by mark: its picture, lines that set no saw, strips.

    ``frame``: lines of a paneled jamb's work that are of its frame; ``sizes``: of what is done to its members;
    ``short``: what is done to a member, without them; ``piece``: form and place of a piece of a row.
    """
    return {
        part.mark: {
            "shape": part_picture(part),
            "asides": asides(part, grid=grid),
            "frame": [*frame_words(part, grid)],
            "sizes": member_sizes(part, grid),
            "short": member_work_in_short(part),
            "piece": _piece_beside(part),
            **_strips_beside(part, grid),
        }
        for whole in kit.parts
        for part in (whole, *whole.frame_members)
    }


def buck_pieces(kit: CutKit) -> Mapping[str, Record]:
    """Return what is printed beside those parts of a buck that may share a line, by mark: no pictures."""
    bucks = [part for part in kit.parts if part.where is Where.BUCK and is_piece(part)]
    return {part.mark: {**PLAIN, "piece": _piece_beside(part)} for part in bucks}


def _piece_beside(part: Part) -> Record | None:
    """Return what tells a piece of a row from others and from where they are; nothing of a part that is none."""
    if not is_piece(part):
        return None
    shape = part_picture(part, names_ends=False)
    return {"form": piece_form(part), "place": piece_place(part), "ends": part.seat.ends, "shape": shape}


def _strips_beside(part: Part, grid: Grid) -> Record:
    """Return the size of the strips that a bent part is resawn from, in place of its own, and how many they are."""
    if not part.is_laminated or not part.strips:
        return {}
    thickness, width, length = strip_size(part)
    sizes = {"thickness": grid.units.text(thickness), "width": grid.text(width), "length": grid.text(length)}
    return {"sizes": sizes, "first": [strips_first(part, grid)]}


def part_row(part: Record, beside: Record = PLAIN, *, elsewhere: Collection[str] = ()) -> Record:
    """Return one line of the parts table.

    ``beside``: its small picture, the lines of its work that set no saw, and of plies the size of their strips.
    ``elsewhere``: lines of work that the paper says for all parts at once.
    """
    return {
        "mark": part["mark"],
        "mark_lines": [part["mark"]],
        "marks": [part["mark"]],
        "name": part["name"],
        "position": told_position(part["name"], part["position"]),
        "board": part["board"],
        "thickness": part["thickness"]["text"],
        "width": part["width"]["text"],
        "length": part["length"]["text"],
        **beside.get("sizes", {}),
        "taper": _taper_row(part["taper"]),
        "ends": part["ends"],
        "is_wood": part["is_wood"],
        "work": [*beside.get("first", []), *_work_lines(part, (*beside["asides"], *elsewhere))],
        "asides": beside["asides"],
        "shape": beside["shape"],
    }


def shared_rows(rows: Sequence[Record], beside: Mapping[str, Record]) -> list[Record]:
    """Return the lines of the parts table of which pieces that are sawn alike, from alike boards, share one."""
    alike: dict[str, list[Record]] = {}
    for row in rows:
        alike.setdefault(_told_of_piece(row, beside.get(row["mark"], PLAIN)["piece"]), []).append(row)
    return [some[0] if len(some) == 1 else _shared(some, beside) for some in alike.values()]


def _told_of_piece(row: Record, piece: Record | None) -> str:
    """Return what a line says beside mark and place; a part that is no piece of a row is alone in its line."""
    if piece is None:
        return str(row["mark"])
    told = {key: value for key, value in row.items() if key not in OWN}
    return repr((sorted(told.items()), piece["form"]))


def _shared(some: Sequence[Record], beside: Mapping[str, Record]) -> Record:
    marks = [row["mark"] for row in some]
    lines = mark_lines(marks)
    pieces = [beside[mark]["piece"] for mark in marks]
    shape = some[0]["shape"] if len({one["ends"] for one in pieces}) == 1 else pieces[0]["shape"]
    position = places_words([one["place"] for one in pieces])
    shared = {"mark": " ".join(lines), "mark_lines": lines, "marks": marks, "position": position, "shape": shape}
    return {**some[0], **shared}


def member_rows(part: Record, beside: Mapping[str, Record]) -> list[Record]:
    """Return the lines of the stiles, rails and panels of a jamb; those that are sawn alike share one."""
    rows: list[Record] = []
    for member in part.get("members", ()):
        row = part_row(member, beside.get(member["mark"], PLAIN))
        other = next((one for one in rows if all(one[key] == row[key] for key in TOLD_ALIKE)), None)
        if other is None:
            rows.append(row)
        else:
            other["mark"] += f", {row['mark'][-1]}"
            other["position"] += f" and {row['position'].rsplit(', ', 1)[-1]}"
    return rows


def _work_lines(part: Record, elsewhere: Collection[str]) -> list[str]:
    return [*(one for one in part["work"] if one not in (*elsewhere, FROM_SQUARE)), *_glue_line(part)]


def _taper_row(taper: Record | None) -> list[Record] | None:
    """Return the widths at both ends as the eye meets them: left before right, top over bottom."""
    if taper is None:
        return None
    ends = [{"width": taper[f"{end}_width"]["text"], "at": taper[end]} for end in ("start", "finish")]
    return sorted(ends, key=lambda one: one["at"] in (BoardEnd.RIGHT.value, BoardEnd.BOTTOM.value))


def _glue_line(part: Record) -> list[str]:
    return [part["glue_up"]["text"]] if "glue_up" in part else []
