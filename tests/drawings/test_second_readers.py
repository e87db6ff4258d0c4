"""Files opened by programs that share no code with the writer: a CAD program and a geodata library.

They are found where the distribution's packages ``librecad`` and ``gdal-bin`` are installed, as in ``.ci/run``.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from collections import Counter
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader
from samples import drawn

import jambs
from jambs.drawings import Drawing, write_dxf, write_flat_dxf

EXAMPLES = Path(__file__).parents[2] / "examples"
OPENINGS = ("hillside-house/F4", "gable-house/G4", "quarry-loft/L6")
"""A measured metric one, one with a slope, doors under a transom light with returns."""


def run(program: str, package: str, *words: str, home: Path) -> str:
    """Run a program without a screen; skip the test, with a sentence, where it is not installed."""
    if not shutil.which(program):
        pytest.skip(f"{program} is not installed: apt-get install {package} lets it open the drawings")
    quiet = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "HOME": str(home), "XDG_RUNTIME_DIR": str(home)}
    done = subprocess.run([program, *words], env=quiet, capture_output=True, text=True, timeout=60, check=True)
    return done.stdout


@cache
def of_example(name: str) -> Drawing:
    """Draw an opening of an example: ``house/mark``."""
    example, mark = name.split("/")
    job = jambs.read_job(EXAMPLES / example)
    return jambs.draw(next(kit for kit in jambs.make_kits(job) if kit.mark == mark), job)


@pytest.mark.parametrize("name", ["metric", *OPENINGS])
def test_a_cad_program_prints_both_files(name: str, tmp_path: Path) -> None:
    drawing = of_example(name) if name in OPENINGS else drawn(name)
    for write, file in ((write_dxf, "full"), (write_flat_dxf, "flat")):
        write(drawing, tmp_path / f"{file}.dxf")
        pdf = tmp_path / f"{file}.pdf"
        run("librecad", "librecad", "dxf2pdf", "-a", "-o", str(pdf), str(tmp_path / f"{file}.dxf"), home=tmp_path)
        (page,) = PdfReader(pdf).pages
        strokes = len(re.findall(rb"\bl\b", page.get_contents().get_data()))  # type: ignore[union-attr]
        assert strokes > 1000, file  # dimensions, outlines and letters are there, not a frame alone


def plain(words: str) -> str:
    """Put one sign for what is no ASCII: the library takes UTF-8 for the code page that old releases name."""
    return re.sub(r"[^ -~]+", "?", words)


@pytest.mark.parametrize("name", ["stool", "metric", *OPENINGS])
def test_a_geodata_library_reads_every_text_of_the_flat_file(name: str, tmp_path: Path) -> None:
    drawing = of_example(name) if name in OPENINGS else drawn(name)
    write_flat_dxf(drawing, tmp_path / "flat.dxf")
    listed = run("ogrinfo", "gdal-bin", "-al", str(tmp_path / "flat.dxf"), home=tmp_path)
    said = Counter(plain(text) for text in re.findall(r"^  Text \(String\) = (.*)$", listed, re.MULTILINE))
    wanted = Counter(plain(line) for view in drawing.views for text in view.lettering for line in text.lines)
    assert not [line for line in (wanted - said) if not line.startswith("Scale ")]
    outlines = len(re.findall(r"^  SubClasses \(String\) = .*AcDbPolyline", listed, re.MULTILINE))
    assert outlines == sum(1 for view in drawing.views for shape in view.shapes) + sum(
        1 for view in drawing.views for leader in (*view.leaders, *(d.leader for d in view.dimensions)) if leader
    )
