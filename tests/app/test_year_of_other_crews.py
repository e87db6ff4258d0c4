"""What the drywall crew and the siding crew make, over a year: it is told, bought and counted, and has no labels.

Three openings of the quarry loft in millimeters, lined with gypsum board; and the base window in inches, its cladding
returned in courses to corner boards.
"""

from __future__ import annotations

import csv
import json
import re
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed
from clad import DEEP, clad
from click.testing import CliRunner
from pypdf import PdfReader
from quick_papers import quick

from jambs.commands.command_line import main

LOFT = Path(__file__).parents[2] / "examples" / "quarry-loft"
WOODS = (("poplar", "3/4"), ("cedar", "1"), ("cedar", "1 1/2"), ("spruce", "1 1/2"))
RACK = [
    *({"stock": stock, "thickness": thick, "width": "9 1/4", "lengths": ["144"]} for stock, thick in WOODS),
    *(
        {"stock": "siding", "thickness": "3/4", "width": width, "nominal": f"siding {width}", "lengths": ["96"]}
        for width in ("5", "7")
    ),
    {"stock": "spruce", "thickness": "1/2", "width": "2", "nominal": "1/2x2", "lengths": ["96"]},
]


class House:
    """A job that is changed, and its papers."""

    def __init__(self, folder: Path) -> None:
        self.job, self.papers = folder / "job.yaml", folder / "papers"

    def change(self, old: str, new: str) -> None:
        text = self.job.read_text(encoding="utf-8")
        assert text.count(old) == 1
        self.job.write_text(text.replace(old, new), encoding="utf-8")

    def run(self, verb: str, *words: str) -> str:
        words = (verb, str(self.job), "--out", str(self.papers), *words)
        done = CliRunner().invoke(main, words, catch_exceptions=False)
        assert done.exit_code == 0, done.output
        return done.stdout

    def build(self) -> str:
        return self.run("build", "--without-solids")

    def stale(self) -> set[str]:
        """The verbs whose papers are called stale."""
        return set(re.findall(r"^stale .*run `jambs (\w+)", self.run("check"), re.M))

    def text(self, path: str) -> str:
        file = self.papers / path
        return "\n".join(page.extract_text() for page in PdfReader(file).pages) if file.exists() else ""

    def parts(self) -> dict[str, dict[str, Any]]:
        printed = json.loads((self.papers / "parts.json").read_text(encoding="utf-8"))["openings"]
        return {part["mark"]: part for opening in printed for part in opening["parts"]}

    def pieces(self) -> dict[str, list[str]]:
        """The pieces of courses on the cut list, by their part."""
        found: dict[str, list[str]] = {}
        with (self.papers / "cut list.csv").open(encoding="utf-8-sig", newline="") as table:
            for row in csv.DictReader(table):
                part = self.parts()[row["mark"].rstrip("abcdefghijklmnopqrstuvwxyz")]
                if "courses" in part:
                    found.setdefault(part["mark"], []).append(row["width text"])
        return found


@pytest.fixture
def loft(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> House:
    quick(monkeypatch, drawings=False)
    lines = (LOFT / "job.yaml").read_text(encoding="utf-8").splitlines(keepends=True)
    left_out = tuple(f"  - {{mark: {mark}," for mark in ("L3", "L4", "L5"))
    text = "".join(line for line in lines if not line.startswith(left_out))
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    return House(tmp_path)


@pytest.fixture
def courses(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> House:
    quick(monkeypatch, drawings=False)
    data = changed(**{**DEEP, "exterior_trim__outside": clad(laid="in courses"), "shop__boards": RACK})
    data["shop"]["planned_allowance"] = "1/8"
    said = {"kind": "clapboards", "widths": ["5"], "least_lap": "1", "greatest_lap": "1"}
    data["elevations"] = {
        "south": {"start_line": "0", "eave": "120", "width": "120", "faces": "south", "cladding": said}
    }
    data["openings"][0] |= {"faces": "south", "from_left": "24"}
    (tmp_path / "job.yaml").write_text(yaml.dump(data, sort_keys=False), encoding="utf-8")
    return House(tmp_path)


def test_board_of_another_crew_changes_and_no_label_with_it(loft: House) -> None:
    loft.build()
    loft.run("labels")
    loft.change("thickness: 12.5\n      corner_bead", "thickness: 15\n      corner_bead")
    assert loft.stale() == {"build"}
    assert "recut L1-1, L1-2, L1-3" in loft.build()
    assert loft.stale() == set()

    # L2 is lined by others altogether; of L1 the stool is the carpenter's, of L6 the mull casings.
    told = loft.text("old labels.pdf")
    assert re.findall(r"^(L\d) ", told, re.M) == ["L1", "L6"]
    assert re.findall(r"L\d-\d+", told) == ["L1-4", "L6-4", "L6-5"]

    loft.change("stool: {thickness: 27, stock: oak, horn: 30", "stool: {thickness: 27, stock: oak, horn: 40")
    assert loft.stale() == {"build", "labels"}


def test_other_courses_are_bought_and_recut_and_no_label_is_stale(courses: House) -> None:
    courses.run("buy", "--stages", "0")
    courses.build()
    courses.run("labels")
    assert courses.stale() == set()
    legs = {mark: part for mark, part in courses.parts().items() if "courses" in part}
    assert courses.pieces() == {mark: [one["text"] for one in part["courses"]] for mark, part in legs.items()}
    assert not any(mark in courses.text("site/labels.pdf") for mark in legs)

    courses.change("      - '5'\n      least_lap", "      - '7'\n      least_lap")
    assert courses.stale() == {"build", "buy"}
    said = courses.build()
    assert "W1: courses of the cladding changed" in said and "recut W1-10, W1-11" in said
    assert courses.stale() == {"buy"}
    assert not re.search(r"W1-1[01]\b", courses.text("old labels.pdf"))

    courses.run("buy", "--stages", "0")
    courses.build()
    assert courses.stale() == set()
    now = {
        mark: [one["text"] for one in part["courses"]] for mark, part in courses.parts().items() if "courses" in part
    }
    assert courses.pieces() == now and {one for some in now.values() for one in some} == {'7"'}
