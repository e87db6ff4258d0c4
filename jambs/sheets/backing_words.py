"""What has to stand before the drywall crew comes, in words and as ``parts.json`` has it."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.length import Grid, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.backing import Backing, BackingKind, backing_of
from jambs.parts.kit.cut_kit import CutKit
from jambs.sides import Side
from jambs.values import Record, size


def backing_words(backing: Sequence[Backing], grid: Grid) -> str:
    """Say what lumber goes where, each kind once; an empty text where none is needed."""
    return "; ".join(
        _words(kind, some, grid) for kind in BackingKind if (some := [one for one in backing if one.kind is kind])
    )


def _words(kind: BackingKind, backing: Sequence[Backing], grid: Grid) -> str:
    sides = ", ".join(f"{grid.text(one.width)} {place_words(one)}" for one in backing)
    depth = max(one.depth for one in backing)
    if kind is BackingKind.NAILER:
        return (
            f"solid nailers {sides}, from the edge of the rough opening in, {grid.text(depth)} deep, flush with the "
            "room face of the framing: the edge of the wall board and its bead are fastened to them"
        )
    lying = "".join(f", {LIES[one.under]} lies on it" for one in backing if one.under)
    return (
        f"furring {sides}, from the edge of the rough opening in, {grid.text(depth)} deep from the back of the wall "
        f"board to the frame, straight and square: the returns are screwed to it{lying}"
    )


LIES = {PartKind.STOOL: "the stool", PartKind.TILE_SILL: "the bed of the tile"}
"""What lies on furring at the sill."""


def place_words(one: Backing) -> str:
    """Return where backing lies: ``at the left``, ``at the bottom`` where a board returns it, ``under the stool``."""
    if one.under:
        return f"under {LIES[one.under]}"
    side = one.side
    return f"at the {side.words if side.is_leg or side is Side.HEAD else side.board_words}"


def backing_records(kit: CutKit, *, units: Units) -> list[Record]:
    """Return every piece of backing of an opening."""
    return [
        {
            "kind": one.kind.value,
            "side": one.side.words,
            "width": size(one.width, units=units),
            "depth": size(one.depth, units=units),
        }
        for one in backing_of(kit)
    ]
