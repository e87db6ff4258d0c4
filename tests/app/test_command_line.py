"""The command line as it is used: what it prints, what it writes, its exit codes."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import csv
import json
import re
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest
from pypdf import PdfReader
from shops import Shop, built, papers, shop

from jambs import __version__

PAPERS = [
    "output/house/.written.json",
    "output/house/all cut sheets.pdf",
    "output/house/all drawings.pdf",
    "output/house/current sheets.pdf",
    "output/house/cut sheets/W01.pdf",
    "output/house/cut sheets/W02.pdf",
    "output/house/drawings/W01 flat.dxf",
    "output/house/drawings/W01.dxf",
    "output/house/drawings/W01.pdf",
    "output/house/drawings/W02 flat.dxf",
    "output/house/drawings/W02.dxf",
    "output/house/drawings/W02.pdf",
    "output/house/install sheets/W01.pdf",
    "output/house/install sheets/W02.pdf",
    "output/house/parts.csv",
    "output/house/parts.json",
    "output/house/rough openings.pdf",
    "output/house/summary.pdf",
    "output/house/window order.pdf",
]
ELSEWHERE = ("output/house/issued/", "output/house/solids/", "output/house/cut files/")
"""What is kept of every issue, the solids, which need a library of their own, and cut files have their own tests."""


def papers_of(shop: Shop) -> list[str]:
    return [name for name in shop.files() if not name.startswith(ELSEWHERE)]


def columns(line: str) -> list[str]:
    return re.split(r"  +", line.strip())


def test_help_comes_before_anything_heavy() -> None:
    heavy = "{'ezdxf', 'numpy', 'scipy', 'pydantic', 'yaml', 'typst', 'openpyxl', 'PIL'}"
    code = (
        "import sys\nfrom jambs.commands.command_line import main\n"
        "try:\n    main(['--help'])\n"
        f"except SystemExit as end:\n    print('code', end.code, sorted({heavy} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "code 0 []"
    for verb in ("new", "check", "build", "measure", "labels", "revisions", "schema", "catalog"):
        assert f"jambs {verb}" in done.stdout or f"  {verb} " in done.stdout


@pytest.mark.parametrize("verb", ["new", "check", "build", "measure", "labels", "revisions", "schema", "catalog"])
def test_every_verb_has_help_with_an_example(verb: str, shop: Shop) -> None:
    result = shop.run(verb, "--help")
    assert result.exit_code == 0
    assert re.search(rf"Examples?:\n +jambs {verb}", result.output)


def test_the_version(shop: Shop) -> None:
    assert shop.run("--version").output == f"jambs, version {__version__}\n"


@pytest.mark.parametrize("units", ["inch", "mm"])
def test_a_new_job_can_be_checked_at_once(units: str, shop: Shop) -> None:
    result = shop.run("new", "hut", "--units", units)
    assert result.exit_code == 0
    assert result.output.endswith("Change what differs on your house, then: jambs check hut\n")
    assert f"units: {units}\n" in (shop.folder / "hut" / "job.yaml").read_text(encoding="utf-8")
    assert shop.run("check", "hut").exit_code == 0


def test_a_new_job_never_takes_the_place_of_another(shop: Shop) -> None:
    before = shop.job.read_bytes()
    result = shop.run("new", "house")
    assert result.exit_code == 1
    assert result.stderr == "house/job.yaml is there already; name another folder, or remove it\n"
    assert shop.job.read_bytes() == before


def test_check_prints_the_worked_case_and_writes_nothing(shop: Shop) -> None:
    """By hand (brief): gypsum 1/2, stud 5-1/2, plywood 1/2; boards 2 + 3, cover 1/2; J 4-9/16, s 1-1/4, share 1/2.

    d_s 6-1/2, d_t 12, d_F 9-1/4; interior 9-1/4 - 4-9/16 = 4-11/16; exterior 12 - 9-1/4 - 1-1/4 = 1-1/2; rip 4-23/32.
    """
    result = shop.run("check", "house")
    assert result.exit_code == 0
    lines = result.stdout.splitlines()
    assert columns(lines[0])[:6] == [
        "mark",
        "room",
        "state",
        "interior depth",
        "exterior depth",
        "jamb rip",
    ]
    assert columns(lines[2])[:6] == ["W01", "Kitchen", "planned", '4 11/16"', '1 1/2"', '4 23/32"']
    assert columns(lines[3])[:6] == ["W02", "Bath", "planned", '4 11/16"', '1 1/2"', '4 23/32"']
    assert "2 openings; 2 planned: measure before cutting" in result.stdout
    assert shop.files() == []


def test_a_job_may_be_named_by_its_file_or_its_folder(shop: Shop) -> None:
    assert shop.run("check", "house").stdout == shop.run("check", "house/job.yaml").stdout


@pytest.mark.parametrize("verb", ["check", "build"])
def test_faults_are_told_in_one_go_and_nothing_is_written(verb: str, shop: Shop) -> None:
    shop.change("kerf: 1/8", "kerf: 3")
    shop.change("sash: fixed", "sash: fixt")
    result = shop.run(verb, "house")
    assert result.exit_code == 1
    assert result.stdout == ""
    assert result.stderr == (
        'job.yaml:6: shop: kerf: is 3"; write a length from 0" to 1/2", or 3 mm if millimeters are meant\n'
        "job.yaml:31: windows.fixed: sash: 'fixt' is not allowed; did you mean fixed? Write one of fixed, "
        "casement out, casement in, awning, hopper, double hung, slider, door out, door in, tilt and turn\n"
    )
    assert shop.files() == []


@pytest.mark.parametrize("verb", ["check", "build"])
def test_windows_that_cannot_stand_there_are_told(verb: str, shop: Shop) -> None:
    """Nothing carries a flange 2-3/4 outside the sheathing once the buck is gone (5-1/2 added, half of it)."""
    shop.change("    buck: {kind: outboard, thickness: 1 1/2, stock: spruce}\n", "")
    result = shop.run(verb, "house")
    assert result.exit_code == 1
    assert result.stdout == ""
    told = result.stderr.splitlines()
    assert [line.split(":")[0] for line in told] == ["W01", "W02"]
    assert 'the flange stands 2 3/4" outside the sheathing and nothing carries it' in told[0]
    assert shop.files() == []


def test_wrong_use_is_code_2(shop: Shop) -> None:
    for words in (["chekc", "house"], ["xyzzy"], ["check"], ["check", "nowhere"], ["build", "house", "--onyl", "W01"]):
        result = shop.run(*words)
        assert (result.exit_code, result.stdout) == (2, ""), words
    assert shop.files() == []


def test_a_mark_nobody_has_is_wrong_use(shop: Shop) -> None:
    result = shop.run("build", "house", "--only", "W03")
    assert result.exit_code == 2
    said = "Error: Invalid value for '--only': no opening has the mark 'W03'; write one of W01, W02"
    assert result.stderr.splitlines()[-1] == said
    assert shop.files() == []


def test_a_build_writes_every_paper(built: Shop) -> None:
    assert papers_of(built) == PAPERS


def test_what_is_written_is_what_it_says(papers: Path) -> None:
    """PDF by pypdf, JSON by jsonschema against its own schema, CSV by csv."""
    for mark, room in (("W01", "Kitchen"), ("W02", "Bath")):
        text = PdfReader(papers / "cut sheets" / f"{mark}.pdf").pages[0].extract_text()
        assert mark in text and room in text and '4 23/32"' in text
    pages = PdfReader(papers / "all cut sheets.pdf").pages
    assert len(pages) == sum(len(PdfReader(one).pages) for one in (papers / "cut sheets").iterdir())
    record = json.loads((papers / "parts.json").read_text(encoding="utf-8"))
    assert [opening["mark"] for opening in record["openings"]] == ["W01", "W02"]
    with (papers / "parts.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.reader(file))
    assert len(rows) - 1 == sum(len(opening["parts"]) for opening in record["openings"])


def test_one_opening_leaves_the_lists_alone(built: Shop) -> None:
    before = {name: (built.folder / name).read_bytes() for name in PAPERS}
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    result = built.run("build", "house", "--only", "w01")
    assert result.exit_code == 0, result.stderr
    assert "build without --only to renew them" in result.stdout
    changed = {name for name in PAPERS if (built.folder / name).read_bytes() != before[name]}
    of_w01 = {name for name in PAPERS if "W01" in name}
    assert changed == of_w01 | {"output/house/.written.json", "output/house/current sheets.pdf"}
    new = {
        f"output/house/{name}.pdf" for name in ("changes", "changed cut sheets", "changed install sheets", "old labels")
    }
    assert set(papers_of(built)) == set(PAPERS) | new


def test_papers_may_go_elsewhere(shop: Shop) -> None:
    result = shop.run("build", "house", "--only", "W02", "--out", "elsewhere/papers")
    assert result.exit_code == 0
    assert {name.split("/")[0] for name in shop.files()} == {"elsewhere"}
    assert "elsewhere/papers/cut sheets/W02.pdf" in shop.files()


def test_the_schema_is_printed_or_written(shop: Shop) -> None:
    printed = json.loads(shop.run("schema").stdout)
    jsonschema.Draft202012Validator.check_schema(printed)
    assert shop.run("schema", "job.schema.json").exit_code == 0
    assert json.loads((shop.folder / "job.schema.json").read_text(encoding="utf-8")) == printed


def test_the_catalog_is_listed(shop: Shop) -> None:
    """A stud 2x6 is 5-1/2 deep, a 1x6 board 3/4 x 5-1/2 (PS 20)."""
    lines = shop.run("catalog", "2x6").stdout.splitlines()
    assert [columns(line) for line in lines if "stud 2x6" in line] == [["stud 2x6", "framing", '5 1/2"', "0.115 W/mK"]]
    boards = shop.run("catalog", "1x6").stdout.splitlines()
    assert [columns(line) for line in boards[1:]] == [["1x6", '3/4" × 5 1/2"']]
    assert "PS 20" in shop.run("catalog", "1x6", "--sources").stdout
    assert "139.7 mm" in shop.run("catalog", "stud 2x6", "--units", "mm").stdout
    assert shop.run("catalog").stdout.count("\n") > 80


def test_the_catalog_says_when_it_has_nothing(shop: Shop) -> None:
    result = shop.run("catalog", "unobtainium")
    assert result.exit_code == 1
    assert result.stderr == ("nothing in the catalog has 'unobtainium' in its name; `jambs catalog` lists everything\n")
