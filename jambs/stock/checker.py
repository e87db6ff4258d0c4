"""Prove the bound of a plan file with whole numbers only: `python -m jambs.stock.checker plan.json`.

Every piece has a price. If no board of endless supply can be filled with pieces worth more than the board
costs, then all pieces together cannot cost less than the sum of their prices. A board of limited supply may
be worth more; what it is worth beyond its cost is taken off once for each board there is.
"""

from __future__ import annotations

import json
import math
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

STEPS = 1_000_000  # steps of price in a cent


def fill(things: list[tuple[int, int, int]], top: int) -> list[int]:
    """Most worth that each room 0 .. top holds, of things (size, worth, how many)."""
    best = [0] * (top + 1)
    for size, worth, count in things:
        count, bundle = min(count, top // size), 1
        while count > 0:
            bundle = min(bundle, count)
            room, more = size * bundle, worth * bundle
            best[room:] = [max(old, new + more) for old, new in zip(best[room:], best, strict=False)]
            count, bundle = count - bundle, 2 * bundle
    return best


def blanks(problem: dict[str, Any]) -> Iterator[tuple[int, int, int]]:
    """Yield width, sawn length and count of what is crosscut: pieces, and pairs of them head to tail or side by side.

    Raises:
        ValueError: two pieces of a pair are not alike, or no whole kerf lies between them.
    """
    known = {piece.get("mark"): piece for piece in problem["pieces"]}
    for pair in problem.get("pairs", []):
        first, second = known[pair["first"]], known[pair["second"]]
        if pair.get("across"):
            yield beside(first, second, pair, problem["saw"]["rip_kerf"])
            continue
        run = -first["slants"][0] if pair["is_first_turned"] else first["slants"][1]
        start = -second["slants"][1] if pair["is_second_turned"] else second["slants"][0]
        width, gap = first["width"], abs(run) - pair["lap"]
        is_one_cut = run != 0 and start == -run and width == second["width"]
        has_kerf = gap > 0 and (gap * width) ** 2 >= problem["saw"]["crosscut_kerf"] ** 2 * (width**2 + run**2)
        if not (is_one_cut and has_kerf and first["count"] == second["count"] == 1):
            raise ValueError(f"no one cut parts {pair['first']} from {pair['second']}, head to tail")
        yield width, first["length"] - pair["lap"] + second["length"] + second["miter_allowance"], 1
    marks = [pair[place] for pair in problem.get("pairs", []) for place in ("first", "second")]
    if len(marks) != len(set(marks)):
        raise ValueError("a piece lies in two pairs")
    for piece in problem["pieces"]:
        if piece.get("mark") not in marks:
            yield piece["width"], piece["length"] + piece["miter_allowance"], piece["count"]


def beside(first: dict[str, Any], second: dict[str, Any], pair: dict[str, Any], kerf: int) -> tuple[int, int, int]:
    """Width, length and count of a strip in which two pieces that taper lie side by side.

    Raises:
        ValueError: they are not of one length, or the strip does not hold both and a kerf.
    """
    ends = second["ends"] if pair["is_second_over"] else second["ends"][::-1]
    length = first["length"]
    for one, other in zip(first["ends"], ends, strict=True):
        room = pair["across"] - one - other
        for piece in (first, second):
            run = piece["ends"][0] - piece["ends"][1]
            if room < 0 or (room * length) ** 2 < kerf**2 * (length**2 + run**2):
                raise ValueError(f"no rip parts {pair['first']} from {pair['second']}, side by side")
    sawn = [piece["length"] + piece["miter_allowance"] for piece in (first, second)]
    if sawn[0] != sawn[1] or first["count"] != 1 or second["count"] != 1:
        raise ValueError(f"{pair['first']} and {pair['second']} are not of one length, side by side")
    return pair["across"], sawn[0], 1


def check_certificate(plan: dict[str, Any]) -> int:
    """Cents that the prices in a plan file prove no plan can go below.

    Raises:
        ValueError: a board can be filled with more than it costs, so the prices prove nothing; or two pieces cannot
            lie head to tail as the file has them.
    """
    problem, saw = plan["problem"], plan["problem"]["saw"]
    ripped, kerf = problem["kind"] != "lengths", saw["crosscut_kerf"]
    price = {(entry["width"], entry["length"]): entry["price"] for entry in plan["bound"]["prices"]}
    wanted: dict[tuple[int, int], int] = {}
    for width, length, count in blanks(problem):
        size = (width if ripped else 0, length)
        wanted[size] = wanted.get(size, 0) + count
    step = math.gcd(*[length + kerf for _, length in wanted])
    rooms = [max(0, (stock["length"] - 2 * saw["end_trim"] + kerf) // step) for stock in problem["stock"]]
    worth: dict[int, list[int]] = {}
    for width in {width for width, _ in wanted}:
        things = [((b + kerf) // step, price.get((a, b), 0), n) for (a, b), n in wanted.items() if a == width]
        worth[width] = fill(things, max(rooms))
    proved = sum(max(0, price.get(size, 0)) * count for size, count in wanted.items())
    for stock, room in zip(problem["stock"], rooms, strict=True):
        across = stock["width"] - saw["edge_loss"] - saw["far_edge_loss"] + saw["rip_kerf"] if ripped else 1
        strips = [(a + saw["rip_kerf"] if ripped else 1, best[room], across) for a, best in worth.items()]
        excess = fill(strips, max(0, across))[-1] - stock["price_cents"] * STEPS
        if excess > 0 and stock["supply"] is None:
            raise ValueError(f"{stock['name']} can be filled with {excess} steps more than it costs")
        proved -= max(0, excess) * (stock["supply"] or 0)
    unit = math.gcd(*[stock["price_cents"] for stock in problem["stock"]]) or 1
    return int(max(0, -(-proved // (STEPS * unit)) * unit))


if __name__ == "__main__":
    plan_file = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    print(f"proved: no plan of this kind costs less than {check_certificate(plan_file)} cents")
