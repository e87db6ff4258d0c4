"""Wood that moves: the moisture it comes to, the boards that move most, and what every joint has to take."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from jambs.job.models.openings import Job
from jambs.job.models.outside import Air, ClimateEntry
from jambs.length import Grid, Units, decimal_text
from jambs.movement.boards import LINEAR, BoardMovement
from jambs.movement.findings import JointMoves
from jambs.movement.joint_words import joint_name, joint_words
from jambs.movement.joints import JointMovement
from jambs.movement.plan import KitMovement
from jambs.movement.wood_words import assumed_of
from jambs.outside.register import Paper, Register, Registered
from jambs.parts.board.kinds import told_name
from jambs.parts.wood.moisture import equilibrium_moisture
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.marks import part_runs
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records
from jambs.sheets.told import told
from jambs.values import Record

AIRS = (
    ("shop", "shop"),
    ("inside_winter", "inside, winter"),
    ("inside_summer", "inside, summer"),
    ("outside_winter", "outside, winter"),
    ("outside_summer", "outside, summer"),
)

STANDING = ("check", "note", "OK")
"""How a joint stands to what it has to take, the worst first."""


def write_movement_sheet(
    movements: Sequence[KitMovement],
    climate: ClimateEntry,
    register: Register,
    job: Job,
    path: Path,
    *,
    stamp: str = "",
) -> None:
    """Write the page about wood that moves as PDF."""
    path.write_bytes(press("movement", stamped(movement_data(movements, climate, register, job), stamp)))


def movement_data(movements: Sequence[KitMovement], climate: ClimateEntry, register: Register, job: Job) -> Record:
    """Return what the page about wood that moves prints."""
    return {
        **page_data(job),
        "airs": [_air(words, getattr(climate, key), job.units) for key, words in AIRS],
        "boards": _boards(movements, job.shop.grid),
        "joints": _joints(movements, job.shop.grid, job.units),
        "findings": told(_not_of_joints(register)),
        "assumed": assumed_records(assumed for one in movements for assumed in assumed_of(one)),
        "linear": f"{LINEAR[0]:g} to {LINEAR[1]:g} %",
    }


def _not_of_joints(register: Register) -> list[Registered]:
    """Return what is to be known beside the joints, which have a table of their own."""
    return [one for one in register.on(Paper.MOVEMENT) if not isinstance(one.finding, JointMoves)]


def _air(words: str, air: Air, units: Units) -> Record:
    degrees = f"{decimal_text(air.temperature, 0)} °F"
    if units is Units.MM:
        degrees = f"{decimal_text((air.temperature - 32) * 5 / 9, 0)} °C"
    return {
        "where": words,
        "air": f"{degrees}, {decimal_text(air.humidity, 0)} %",
        "moisture": f"{decimal_text(equilibrium_moisture(air), 1)} %",
    }


def _boards(movements: Sequence[KitMovement], grid: Grid) -> list[Record]:
    """Return boards that move alike in one row: same part, width, wood and movement, as printed."""
    rows: dict[tuple[str, ...], list[str]] = {}
    boards = [board for movement in movements for board in movement.boards]
    for board in sorted(boards, key=lambda one: (_board_name(one), grid.fine.count(one.part.width))):
        rows.setdefault(_board_key(board, grid), []).append(board.part.mark)
    names = ("name", "wood", "width", "winter", "summer")
    return [{**dict(zip(names, key, strict=True)), "marks": some, "told": _runs(some)} for key, some in rows.items()]


def _runs(marks: Sequence[str]) -> str:
    """Tell marks in a row by their ends, ``W1-1 to W1-4``; stiles, rails and panels, ``W1-5a``, one by one."""
    members = [mark for mark in marks if not mark[-1].isdigit()]
    return ", ".join(filter(None, (part_runs(set(marks) - set(members)), *members)))


def _board_name(board: BoardMovement) -> str:
    """Return what a board is called on its label."""
    return told_name(board.part.kind.words, board.part.where.value)


def _board_key(board: BoardMovement, grid: Grid) -> tuple[str, ...]:
    fine = grid.fine
    return (
        _board_name(board),
        f"{board.wood.wood.species}, {board.wood.sawn.value} sawn",
        grid.text(board.part.width),
        *(_change(fine.count(change), fine.text(abs(change))) for change in (board.winter, board.summer)),
    )


def _change(steps: int, text: str) -> str:
    return "none" if not steps else f"{text} {'wider' if steps > 0 else 'narrower'}"


def _joints(movements: Iterable[KitMovement], grid: Grid, units: Units) -> list[Record]:
    """Return joints of which the same is said in one row, those that fail first, those that take it last."""
    rows: dict[tuple[int, str, str], list[str]] = {}
    for movement in movements:
        for joint in movement.joints:
            rows.setdefault(_joint_key(joint, grid, units), []).append(movement.mark)
    return [
        {
            "standing": STANDING[key[0]],
            "name": key[1],
            "words": key[2],
            "marks": list(dict.fromkeys(some)),
        }
        for key, some in sorted(rows.items(), key=lambda row: row[0][:2])
    ]


def _joint_key(joint: JointMovement, grid: Grid, units: Units) -> tuple[int, str, str]:
    standing = STANDING.index("check" if joint.fails else "OK" if joint.takes_it else "note")
    return standing, joint_name(joint), joint_words(joint, units)
