"""A small house over a year: what people do to it, and what its papers then say, read from the papers alone.

``assert_true`` holds for any house at any time: no two papers that hold say different sizes for one mark, no mark ever
means two parts, what holds no longer is named, and an old label is told what it means now.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from click.testing import CliRunner
from ezdxf.filemanagement import readfile
from pypdf import PdfReader

from jambs.app.label_issues import NOT_ISSUED
from jambs.commands.command_line import main

JOB = """job: Year
units: inch
date: 2026-03-02
shop:
  grid: 1/32
  kerf: 1/8
  proud: 1/32
  shim_space: 1/4
  edge_allowance: 1/8
  taper_tolerance: 1/32
  boards:
    - {nominal: 1x4, stock: poplar}
    - {nominal: 1x6, stock: poplar}
    - {nominal: 1x8, stock: poplar}
    - {nominal: 1x6, stock: cedar}
    - {nominal: 2x8, stock: cedar}
walls:
  main:
    layers:
      - gypsum board 1/2
@lining
      - {material: stud 2x6, spacing: 16}
      - plywood 1/2
      - {material: EPS, thickness: @foam}
      - {material: plywood 1/2, role: outer sheathing}
    buck: {kind: outboard, thickness: 1 1/2, stock: cedar}
windows:
  fixed:
    {jamb_depth: @depth, frame_projection: 1 1/4, frame_face: 2 1/2, nailing_flange: yes, flange_width: 1 1/4,
     sash: fixed, weight: 60 lb}
interior_trim:
  picture:
    style: picture framed
    jamb: {thickness: 3/4, stock: poplar, joint: rabbet, rabbet_depth: 3/8}
    frame_reveal: 1/8
    casing_reveal: @reveal
    casing: {width: 3 1/2, thickness: 3/4, stock: poplar, corner: miter}
    mull_casing: {thickness: 3/4, stock: poplar}
exterior_trim:
  outside:
    jamb: {thickness: 3/4, stock: cedar}
    frame_reveal: 1/4
    sealant_joint: 1/4
    casing_reveal: 1/4
    casing: {width: @casing, thickness: 3/4, stock: cedar, corner: butt, overhang: 1/2}
    sill:
      {thickness: 1 1/2, stock: cedar, slope: 10 deg, nosing: 1 1/4, horn: 1,
       drip_kerf: {width: 1/4, depth: 1/4, set_back: 1/2}}
    mull_casing: {thickness: 3/4, stock: cedar}
    head_flashing: {past_casing: 1/2, upstand: 3, drip: 1/2, gap_to_cladding: 3/8}
position: {exterior_depth: 1 1/2}
openings:
"""
OPENINGS = {
    "kitchen": "{mark: @mark, room: Kitchen, frame: 23 1/2 x 35 1/2, rough_opening: 24 x 36@more}",
    "bath": "{mark: @mark, room: Bath, frame: 19 1/2 x 23 1/2, rough_opening: 20 x 24@more}",
    "pantry": "{mark: @mark, room: Pantry, frame: 17 1/2 x 35 1/2, rough_opening: 18 x 36@more}",
}
"""Windows by their room, whatever their marks are; the pantry's comes later, beside the kitchen's."""
METAL = """{like: outside, jamb: none, casing: none, sill: none, mull_casing: none, returns:
     {material: coil aluminum, thickness: 0.032, bend_radius: 1/32, frame_leg: 3/4, face_leg: 1 1/2, hem: 1/2,
      corner_lap: 1, cladding: behind the leg, sill: {slope: 10 deg, nosing: 1, front: 1 1/2, back_leg: 3/4}},
     head_flashing: {past_casing: 1/2, upstand: 3, drip: 1, gap_to_cladding: 3/8}}"""
FORMS = {
    "plain": OPENINGS["kitchen"],
    "ganged": """{mark: @mark, room: Kitchen, rough_opening: 48 x 36, mull: {gap: 1/2},
     units: [{window: fixed, frame: 23 1/2 x 35 1/2}, {window: fixed, frame: 23 1/2 x 35 1/2}],
     interior_trim: {like: picture, mull_casing: {thickness: 3/4, stock: poplar}},
     exterior_trim: {like: outside, mull_casing: {thickness: 3/4, stock: cedar}}@more}""",
    "raked": "{mark: @mark, room: Kitchen, frame: 23 1/2 x 35 1/2, shape: {kind: raked, left: 30, right: 35 1/2}}",
    "arched": """{mark: @mark, room: Kitchen, frame: 23 1/2 x 35 1/2, shape: {kind: segment arch, rise: 6},
     position: on the sheathing,
     interior_trim: {like: picture, jamb: {thickness: 3/4, stock: poplar, joint: rabbet, rabbet_depth: 3/8,
     curved: bent laminations}},
     exterior_trim: {like: outside, jamb: {thickness: 3/4, stock: cedar, curved: sawn segments}}}""",
    "flared": OPENINGS["kitchen"].replace("@more", ", interior_trim: {like: picture, flare: {sides: 10 deg}}@more"),
    "lined": OPENINGS["kitchen"].replace("@more", f", exterior_trim: {METAL}@more"),
    "flared outside": OPENINGS["kitchen"].replace(
        "@more", ", exterior_trim: {like: outside, flare: {sides: 15 deg, head: 8 deg}}@more"
    ),
    "stacked": OPENINGS["kitchen"].replace("@more", ", interior_trim: {like: picture, stack: 2}@more"),
}
"""What the kitchen's window may be; shapes stand where they are planned and have no readings."""
INSIDE = "interior_depth: {head_left: @one, head_right: @one, sill_left: @two, sill_right: @two}"
READ = f", measured: {{date: @day, {INSIDE}}}"
OUTSIDE = INSIDE.replace("interior", "exterior")
LINING = "      - {material: plywood 1/2, role: inside finish}\n"
SIZE = re.compile(r'(?:\d+ )?\d+/\d+"|\d+(?:\.\d+)?"')
ISSUE = r"issue (\d+) · (\S+)(?: · ([0-9A-F]{4}))?"
Sizes = Mapping[str, tuple[str, ...]]
"""Thickness, width and length as printed, by the mark of the part."""


@dataclass
class Wishes:
    """What the job file says. ``marks``: by room; ``more``: what is said of an opening beside that.

    ``form``: what the kitchen's window is; ``inside``, ``outside``: what was read there, on that ``day``. ``foam``: how
    thick a layer of the wall is; ``casing``: how wide, outside; ``jamb_depth``: of the window. ``is_joined``: the
    pantry's window is trimmed as one with the kitchen's, where that is a plain one.
    """

    marks: dict[str, str] = field(default_factory=lambda: {"kitchen": "K1", "bath": "F2"})
    more: dict[str, str] = field(default_factory=dict)
    form: str = "plain"
    inside: str = ""
    outside: str = ""
    reveal: str = "3/16"
    lining: str = ""
    foam: str = "4"
    casing: str = "4 1/2"
    jamb_depth: str = "4 9/16"
    day: str = "2026-06-01"
    is_joined: bool = False

    @property
    def text(self) -> str:
        """The job file."""
        head = JOB.replace("@reveal", self.reveal).replace("@lining\n", self.lining)
        for name, said in (("foam", self.foam), ("casing", self.casing), ("depth", self.jamb_depth)):
            head = head.replace(f"@{name}", said)
        read = ", ".join(one for one in (self.inside, self.outside) if one)
        measured = {"kitchen": f", measured: {{date: {self.day}, {read}}}" if read else ""}
        rows = (
            (FORMS[self.form] if room == "kitchen" else OPENINGS[room])
            .replace("@mark", mark)
            .replace("@more", self._more(room) + measured.get(room, ""))
            for room, mark in self.marks.items()
        )
        return head + "".join(f"  - {row}\n" for row in rows)

    def _more(self, room: str) -> str:
        """Say what is said of an opening; one that is trimmed with the kitchen's stands as deep as that."""
        has_neighbor = self.form == "plain" and "kitchen" in self.marks
        if room != "pantry" or not self.is_joined or not has_neighbor:
            return self.more.get(room, "")
        beside = f"{{right_of: {self.marks['kitchen']}, wall: 5 1/2}}"
        return f"{self.more.get('kitchen', '')}, trim_with: {beside}"


def depths(where: str, one: str, two: str) -> str:
    """Say in a job file what was read inside or outside: at the head, at the sill."""
    return where.replace("@one", one).replace("@two", two)


def reading(day: str, one: str, two: str) -> str:
    """Say in a job file what was read inside: at the head, at the sill."""
    return READ.replace("@day", day).replace("@one", one).replace("@two", two)


class House:
    """A house with its papers; it remembers every label that was printed, as a shop does."""

    def __init__(self, folder: Path) -> None:
        self.folder, self.papers, self.wishes = folder, folder / "papers", Wishes()
        self.meant: dict[str, str] = {}
        self.labeled: dict[tuple[str, tuple[str, ...]], None] = {}
        self.issued: dict[int, Wishes] = {}
        folder.mkdir(parents=True, exist_ok=True)

    def run(self, verb: str, *words: str) -> str:
        """Write the job file as it is wished and run a verb; return what it said."""
        job = self.folder / "job.yaml"
        job.write_text(self.wishes.text, encoding="utf-8")
        done = CliRunner().invoke(main, [verb, str(job), "--out", str(self.papers), *words], catch_exceptions=False)
        assert done.exit_code == 0, done.output
        if verb == "labels":
            issues = self.label_issues()  # a label that says *not issued* never was one to keep
            self.labeled |= {one: None for one in self.labels().items() if issues[one[0]].startswith("issue")}
        return done.stdout

    def build(self) -> str:
        """Build without solids."""
        said = self.run("build", "--without-solids")
        self.issued.setdefault(self.last_issue(), deepcopy(self.wishes))
        return said

    def back(self, issue: int, *, job_file: bool = False) -> None:
        """Go back to an issue, with its job file or without."""
        self.run("revisions", "--withdraw-to", str(issue), *(("--job-file", "over") if job_file else ()))
        if job_file:
            self.wishes = deepcopy(self.issued[issue])
            assert (self.folder / "job.yaml").read_text(encoding="utf-8") == self.wishes.text
        self.issued.setdefault(self.last_issue(), deepcopy(self.issued[issue]))

    def last_issue(self) -> int:
        """The number of the last issue, from the list of issues."""
        return max(int(number) for number in re.findall(r"^issue +(\d+) ", self.run("revisions"), re.M))

    def spoil(self) -> str:
        """Spoil the first board of the cutting plan, if there is one; a plan that the job has left says so."""
        file = self.papers / "plan.json"
        if not file.exists():
            return ""
        board = json.loads(file.read_text(encoding="utf-8"))["lots"][0]["boards"][0]["mark"]
        words = ("buy", str(self.folder / "job.yaml"), "--out", str(self.papers), "--stages", "0", "--spoiled", board)
        done = CliRunner().invoke(main, words, catch_exceptions=False)
        assert done.exit_code == 0 or "since" in done.output, done.output
        return done.output

    def text(self, path: str) -> str:
        """The text of a paper, empty where it is not there."""
        file = self.papers / path
        return _read(file.read_bytes()) if file.exists() else ""

    # ---- what the papers say

    def index(self) -> dict[str, tuple[str, str]]:
        """The openings whose sheets hold, with issue and code, from the index."""
        rows = re.findall(r"^(\S+) \S+ (\d+) \d{4}-\d\d-\d\d ([0-9A-F]{4})\b", self.text("current sheets.pdf"), re.M)
        return {mark: (number, code) for mark, number, code in rows}

    def parts(self) -> Sizes:
        """The sizes of all parts, from ``parts.json``."""
        return {
            part["mark"]: tuple(part[name]["text"] for name in ("thickness", "width", "length"))
            for opening in self._printed()
            for part in opening["parts"]
        }

    def resawn(self) -> Sizes:
        """Width and length of the strips that bent parts are resawn from, which their rows lead with."""
        return {
            part["mark"]: (part["strips"][0]["text"], part["glue_up"]["strip_length"]["text"])
            for opening in self._printed()
            for part in opening["parts"]
            if "plies" in part.get("glue_up", {})
        }

    def meanings(self) -> dict[str, str]:
        """What each mark means, from ``parts.json``."""
        each = ((opening, part) for opening in self._printed() for part in opening["parts"])
        return {part["mark"]: f"{one['room']}: {part['where']} {part['name']} {part['position']}" for one, part in each}

    def _printed(self) -> list[dict[str, Any]]:
        return json.loads((self.papers / "parts.json").read_text(encoding="utf-8"))["openings"]  # type: ignore[no-any-return]

    def sheet(self, mark: str) -> Sizes:
        """The sizes of the parts of an opening, from its cut sheet; of a tapered one the width is left out."""
        body = self.text(f"cut sheets/{mark}.pdf")
        body = body[body.index("cut mark part, board") :]
        rows = re.split(rf"^(?={re.escape(mark)}-\d+\s)", body, flags=re.M)[1:]
        return {row.split(None, 1)[0]: tuple(SIZE.findall(row)[:3]) for row in rows}

    def labels(self) -> Sizes:
        """The sizes on the labels."""
        return {mark: sizes for mark, (sizes, _) in self._labels().items()}

    def label_issues(self) -> dict[str, str]:
        """The issue on each label."""
        return {mark: issue for mark, (_, issue) in self._labels().items()}

    def _labels(self) -> dict[str, tuple[tuple[str, ...], str]]:
        found = {}
        for row in re.split(r"^(?=\S+-\d+ (?:issue|not issued))", self.text("site/labels.pdf"), flags=re.M)[1:]:
            lines = row.splitlines()
            size = next(line for line in lines if " × " in line)
            issue = re.search(rf"{ISSUE}|not issued", row)
            assert issue
            found[lines[0].split(" ", 1)[0]] = (tuple(size.split(" × ")), issue[0])
        return found

    def cut_list(self) -> dict[str, tuple[str, str]]:
        """Width and length of each piece, from the cut list; those of strips are not the part's."""
        file = self.papers / "cut list.csv"
        if not file.exists():
            return {}
        with file.open(encoding="utf-8-sig", newline="") as table:
            return {row["mark"]: (row["width text"], row["length text"]) for row in csv.DictReader(table)}

    def is_bought_ahead(self) -> bool:
        """Say whether the cutting plan says of itself that its parts changed since the issue that holds."""
        return "changed since issue" in self.text("cutting plan.pdf")

    def title(self, mark: str) -> dict[str, str]:
        """The attributes of the title block of a drawing."""
        layout = readfile(self.papers / "drawings" / f"{mark}.dxf").layouts.get("LETTER 1")
        return {one.dxf.tag: one.dxf.text for block in layout.query("INSERT") for one in getattr(block, "attribs", ())}

    def stale(self) -> dict[str, str]:
        """What *check* says is stale, by the verb that makes it anew."""
        lines = [line for line in self.run("check").splitlines() if line.startswith("stale  ")]
        return {line.rpartition("`jambs ")[2].split(" ")[0]: line for line in lines}

    def stale_by_index(self) -> dict[str, str]:
        """What the index of an issue that came back says of later papers, by the verb that made them."""
        page = " ".join(self.text("current sheets.pdf").split())
        return {verb: page for verb in ("buy", "labels", "measure") if f"jambs {verb}, once" in page}

    def remembered(self) -> dict[str, str]:
        """What every mark meant that was ever printed."""
        for mark, meaning in self.meanings().items():
            assert self.meant.setdefault(mark, meaning) == meaning, f"{mark} meant {self.meant[mark]}, now {meaning}"
        return self.meant


@cache
def _read(paper: bytes) -> str:
    """The text of a paper; one that is as it was need not be read again."""
    return "\n".join(page.extract_text() for page in PdfReader(io.BytesIO(paper)).pages)


def assert_true(house: House) -> None:
    """See that the papers are of one issue and say the truth."""
    current, parts, stale = house.index(), house.parts(), house.stale()
    stale |= house.stale_by_index()
    house.remembered()
    assert {path.stem for path in (house.papers / "cut sheets").glob("*.pdf")} == set(current)
    for mark, (number, code) in current.items():
        foot = re.findall(rf"{re.escape(mark)} · .*{ISSUE}", house.text(f"cut sheets/{mark}.pdf"))
        assert {(one[0], one[2]) for one in foot} == {(number, code)}, mark
        printed = house.sheet(mark)
        assert set(printed) == {one for one in parts if one.startswith(f"{mark}-")}
        for one, sizes in printed.items():
            known = sizes == parts[one] or _is_tapered(sizes, parts[one]) or sizes[1:] == house.resawn().get(one)
            assert known, (one, sizes, parts[one])
    issues = house.label_issues()
    issued = {mark: sizes for mark, sizes in house.labels().items() if issues[mark] != NOT_ISSUED}
    _assert_named("labels", issued, parts, stale)
    listed = {mark: sizes for mark, sizes in house.cut_list().items() if not mark[-1].isalpha()}
    if not house.is_bought_ahead():
        _assert_named("buy", listed, {mark: sizes[1:] for mark, sizes in parts.items()}, stale)
    _assert_old_labels_told(house, parts)


def _is_tapered(sizes: tuple[str, ...], part: tuple[str, ...]) -> bool:
    """A tapered part has its two widths on the sheet, of which the larger is its width."""
    return sizes[0] == part[0] and part[1] in sizes[1:]


def _assert_named(verb: str, printed: Mapping[str, object], parts: Mapping[str, object], stale: dict[str, str]) -> None:
    """See that papers with another size, or a part that is gone, are named with the opening and what to run."""
    other = {mark for mark, sizes in printed.items() if parts.get(mark) != sizes}
    line = stale.get(verb, "")
    named = {mark for mark in other if mark in line or f"parts of {mark.rpartition('-')[0]}" in line}
    assert other == named or re.search(r"\d+ parts of \d+ openings", line), (verb, sorted(other - named), line)


def _assert_old_labels_told(house: House, parts: Sizes) -> None:
    """See that each label that was printed and is not right as it is stands on the page of old labels."""
    page = house.text("old labels.pdf")
    for mark, sizes in house.labeled:
        if parts.get(mark) != sizes:
            assert re.search(rf"^{re.escape(mark)} [\d, ]+", page, re.M), f"{mark} {sizes} is not on the page"
