"""Prove the bounds of a house's plan with whole numbers: `python -m jambs.stock.check_file plan.json`."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from jambs.stock.checker import check_certificate


def check_house(record: dict[str, Any]) -> list[tuple[str, int, int, int]]:
    """Return for each lot its title, the cents proved, the cents the file claims, and the cents of the plan.

    Raises:
        ValueError: the prices of a lot prove nothing.
    """
    return [
        (
            lot["title"],
            check_certificate(lot["plan"]),
            int(lot["plan"]["bound"]["certified_cents"]),
            int(lot["plan"]["cost_cents"]),
        )
        for lot in record["lots"]
    ]


def main(path: str) -> int:
    """Print what is proved; return 1 where a lot claims more than that."""
    checked = check_house(json.loads(Path(path).read_text(encoding="utf-8")))
    for title, proved, claimed, cost in checked:
        verdict = "as claimed" if proved >= claimed else f"LESS than the {claimed / 100:.2f} claimed"
        print(f"{title}: no such plan costs less than {proved / 100:.2f}, {verdict}; this one costs {cost / 100:.2f}")
    return int(any(proved < claimed for _, proved, claimed, _ in checked))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
