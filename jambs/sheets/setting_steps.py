"""How ganged units are set: posts and bars first, then the rows from below, each sealed to what is beside it.

Common practice, no source; what the makers of the units say goes first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jambs.job.models.gang import Gang, Mull, MullKind
from jambs.length import Grid
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.post_words import posts_words

JOINED = "joined as their maker's instructions say"
CARRIED = "joined and carried as their maker's instructions say"


def setting_steps(kit: CutKit, grid: Grid) -> list[str]:
    """Return the order in which ganged units are set, a sentence each; none of an opening that is one unit."""
    gang = kit.placement.opening.gang
    return [] if gang is None else list(_steps(kit, gang, grid))


def _steps(kit: CutKit, gang: Gang, grid: Grid) -> Iterator[str]:
    posts = posts_words(kit.placement, grid)
    if posts:
        yield f"First what stands between framing, plumb, level and in one plane: {posts}."
    for row in range(gang.rows):
        if row and gang.bars[row - 1].post is not None:
            yield _flashed(gang.bars[row - 1])
        yield _set(gang, row, grid)
    yield (
        "Seal over the whole length with backer and sealant, airtight inside, against rain outside, drains of the "
        f"frames left free: {'; '.join(_sealed(mull, grid) for mull in gang.mulls)}."
    )


def _flashed(bar: Mull) -> str:
    return (
        f"Flashing tape over the heads of {_units(bar.before)}, over their whole width: lapped up on the face of the "
        "transom bar, down onto the outside of the frames, so that water from above runs out in front of them."
    )


def _set(gang: Gang, row: int, grid: Grid) -> str:
    numbers = tuple(unit.number for unit in gang.row(row))
    beside = [_beside(mull, grid) for mull in gang.uprights if mull.row == row]
    if row == 0:
        return f"Set {'; '.join((_units(numbers), *beside))}."
    bar = gang.bars[row - 1]
    if bar.post is None:
        under = f"over {_units(bar.before)}, {grid.text(bar.between)} between frames, {CARRIED}"
    else:
        under = (
            f"on packers on the transom bar, a joint of {grid.text(bar.joint)} under the frame: the weight goes on "
            f"the bar, never on the heads of {_units(bar.before)}"
        )
    return f"Set {'; '.join((f'{_units(numbers)} {under}', *beside))}."


def _beside(mull: Mull, grid: Grid) -> str:
    units = " | ".join(map(str, (*mull.before, *mull.after)))
    if mull.post is None:
        return f"{grid.text(mull.between)} between frames {units}, {JOINED}"
    return f"a joint of {grid.text(mull.joint)} on each side of the post between {units}"


def _sealed(mull: Mull, grid: Grid) -> str:
    if mull.post is None:
        before, after = (" and ".join(map(str, numbers)) for numbers in (mull.before, mull.after))
        return f"the gap of {grid.text(mull.between)} between units {before} | {after}"
    what = mull.kind.value if mull.kind is MullKind.TRANSOM_BAR else f"post of units {mull.before[0]} | {mull.after[0]}"
    return f"both joints of {grid.text(mull.joint)} at the {what}"


def _units(numbers: Sequence[int]) -> str:
    *others, last = map(str, numbers)
    return f"units {', '.join(others)} and {last}" if others else f"unit {last}"
