"""A place for a window as edits of the job file: in the opening itself, in its wall, or at the top."""

from __future__ import annotations

from typing import Any

from jambs.job.editing.edits import Edit, InsertKey, SetValue
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.yaml_nodes import nodes_of
from jambs.job.reading.tree import grown
from jambs.screen.placing import HeldWindow, Named, Rule, rule_text

POSITION = "position"


def position_edits(file: FileText, hand: HeldWindow, plane: float, named: Named | None, *, alone: bool) -> list[Edit]:
    """Return what puts a window at a plane [in], by the name of the place or by its interior depth.

    ``alone``: this opening gets a position of its own; else its wall gets one, or the job where it has one wall only.

    Raises:
        EditRefused: the opening is a row of a table, or one of several under one entry.
    """
    piece, _ = grown(nodes_of(file), file.name)
    rule: Rule = named.rule if named else {"interior_depth": rule_text(hand.depth(plane), hand.job)}
    if alone:
        return [_put(piece.root, ("openings", _place_of(piece.root, hand.opening.mark, file)), rule)]
    walls = piece.root.get("walls")
    wall = hand.opening.wall.name
    if isinstance(walls, dict) and len(walls) > 1 and isinstance(walls.get(wall), dict):
        return [_put(piece.root, ("walls", wall), rule)]
    if isinstance(walls, dict) and isinstance(walls.get(wall), dict) and POSITION in walls[wall]:
        return [_put(piece.root, ("walls", wall), rule)]
    return [_put(piece.root, (), rule)]


def _put(root: Any, path: tuple[str | int, ...], rule: Rule) -> Edit:
    keys = root
    for step in path:
        keys = keys[step]
    if POSITION in keys:
        return SetValue(path=(*path, POSITION), value=rule)
    return InsertKey(path=path, key=POSITION, value=rule)


def _place_of(root: Any, mark: str, file: FileText) -> int:
    listed = root.get("openings")
    for place, one in enumerate(listed if isinstance(listed, list) else ()):
        if isinstance(one, dict) and one.get("mark") == mark:
            return place
    sentence = f"{mark} is a row of a table, or one of several under one entry; write its position there"
    raise refused(file.name, f"{sentence}, or move all windows of its wall")
