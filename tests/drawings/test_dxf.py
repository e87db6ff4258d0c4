"""The DXF file: audited, read back by the library that wrote it and by a reader that shares no code with it."""

from __future__ import annotations

import hashlib
import math
import os
import re
import subprocess
import sys
from collections import Counter
from pathlib import Path

import dxfgrabber
import pytest
from ezdxf.entities.dimension import Dimension
from ezdxf.entities.insert import Insert
from ezdxf.entities.mtext import MText
from ezdxf.filemanagement import readfile
from ezdxf.layouts.layout import Paperspace
from group_codes import Entity, header, sections
from samples import DATE, SAMPLES, drawn, made

from jambs.drawings import write_dxf, write_flat_dxf
from jambs.drawings.drawing import Drawing
from jambs.length import MM_PER_INCH, Units

FULL = ["picture framed", "stool", "clad frame", "measured", "metric"]
SIMPLE = {"LINE", "LWPOLYLINE", "CIRCLE", "ARC", "SOLID", "TEXT"}
MOST_PLACES = 1e-6


def unit(drawing: Drawing) -> float:
    return 1.0 if drawing.units is Units.INCH else MM_PER_INCH


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("drawings")
    paths = {}
    for name in FULL:
        paths[name] = folder / f"{name}.dxf"
        write_dxf(drawn(name), paths[name])
        paths[f"{name}, flat"] = folder / f"{name}-flat.dxf"
        write_flat_dxf(drawn(name), paths[f"{name}, flat"])
    return paths


BOTH = pytest.mark.parametrize("name", [*FULL, *(f"{name}, flat" for name in FULL)])
EACH = pytest.mark.parametrize("name", FULL)


@BOTH
def test_the_audit_finds_nothing_and_fixes_nothing(name: str, files: dict[str, Path]) -> None:
    auditor = readfile(files[name]).audit()
    assert ([str(one) for one in auditor.errors], [str(one) for one in auditor.fixes]) == ([], [])


def dimensions(path: Path) -> list[Entity]:
    return [entity for entity in sections(path)["ENTITIES"] if entity.kind == "DIMENSION"]


@EACH
def test_dimensions_read_back_as_text_are_the_sizes_of_the_kit(name: str, files: dict[str, Path]) -> None:
    """Distance of the two measured points along the axis, from groups 13, 14, 23, 24, 50 (DXF reference, DIMENSION)."""
    drawing, found = drawn(name), dimensions(files[name])
    measured = []
    for one in found:
        along = math.radians(one.number(50))
        dx, dy = one.number(14) - one.number(13), one.number(24) - one.number(23)
        measured.append(abs(dx * math.cos(along) + dy * math.sin(along)))
        assert one.number(42) == pytest.approx(measured[-1], abs=MOST_PLACES)
        assert one.text(1) == "<>"
    sizes = [dimension.value * unit(drawing) for view in drawing.views for dimension in view.dimensions]
    assert sorted(measured) == pytest.approx(sorted(sizes), abs=MOST_PLACES)
    kit, _, _ = made(name)
    depth = 4 + 23 / 32 if name == "measured" else kit.placement.interior_depth  # mean of 4 11/16 and 4 3/4 at the head
    for wanted in (kit.clear_width, kit.clear_height, depth):
        assert min(abs(one - wanted * unit(drawing)) for one in measured) < MOST_PLACES


@EACH
def test_the_library_measures_the_same(name: str, files: dict[str, Path]) -> None:
    document = readfile(files[name])
    for one in document.modelspace().query("DIMENSION"):
        assert isinstance(one, Dimension)
        assert one.get_measurement() == pytest.approx(one.dxf.actual_measurement, abs=MOST_PLACES)


@EACH
def test_the_picture_of_a_dimension_says_its_value(name: str, files: dict[str, Path]) -> None:
    """The text in the block that a reader shows is the measured length, printed on the grid of the shop."""
    units, grid = drawn(name).units, made(name)[2].shop.grid
    document = readfile(files[name])
    for one in document.modelspace().query("DIMENSION"):
        (text,) = document.blocks.get(one.dxf.geometry).query("MTEXT")
        assert isinstance(text, MText)
        inches = one.dxf.actual_measurement / (1.0 if units is Units.INCH else MM_PER_INCH)
        assert text.text == grid.text(inches, mark=units is Units.INCH)
        assert "\\" not in text.text


@EACH
def test_viewports_show_views_exactly_to_scale(name: str, files: dict[str, Path]) -> None:
    """Height seen over height on paper (groups 45 and 41, DXF reference, VIEWPORT), locked (group 90, 16384)."""
    drawing = drawn(name)
    document = readfile(files[name])
    for sheet in drawing.sheets:
        ports = [port for port in document.layouts.get(sheet.name).query("VIEWPORT") if port.dxf.id != 1]
        scales = sorted(port.dxf.view_height / port.dxf.height for port in ports)
        wanted = sorted(on_page.view.scale.factor for on_page in sheet.views)
        assert scales == pytest.approx(wanted, rel=1e-12)
        assert all(port.dxf.flags & 16384 for port in ports)


@EACH
def test_the_pages_are_the_pages_of_the_units(name: str, files: dict[str, Path]) -> None:
    """Letter 11 x 8.5 in, tabloid 17 x 11 in (ANSI Y14.1); A4 297 x 210 mm, A3 420 x 297 mm (ISO 216)."""
    sizes = {"LETTER": (11, 8.5), "TABLOID": (17, 11), "A4": (297, 210), "A3": (420, 297)}
    document = readfile(files[name])
    layouts = [layout for layout in document.layouts if layout.name != "Model"]
    kinds = {layout.name.split(" ")[0] for layout in layouts}
    assert kinds == ({"LETTER", "TABLOID"} if drawn(name).units is Units.INCH else {"A4", "A3"})
    for layout in layouts:
        assert isinstance(layout, Paperspace)
        (_, _), (width, height) = layout.get_paper_limits()
        assert (width, height) == pytest.approx(sizes[layout.name.split(" ")[0]], abs=1e-9)


@EACH
def test_the_title_block_has_its_attributes(name: str, files: dict[str, Path]) -> None:
    document = readfile(files[name])
    kit, _, job = made(name)
    for sheet in drawn(name).sheets:
        (block,) = document.layouts.get(sheet.name).query("INSERT")
        assert isinstance(block, Insert)
        said = {attribute.dxf.tag: attribute.dxf.text for attribute in block.attribs}
        assert (said["JOB"], said["OPENING"], said["ROOM"]) == (job.name, kit.mark, kit.placement.opening.room)
        assert said["STATE"] == ("INSIDE MEASURED 2026-05-18" if kit.is_measured else "PLANNED")
        assert said["SHEET"] == f"{sheet.number} of {sheet.count}"
        assert (said["ISSUE"], said["REPLACES"], said["CODE"]) == ("4", "replaces issue 2", "7F3A")
        assert (said["DATE"], said["MEASURED"]) == (DATE, "measured 2026-05-18")
        assert said["UNITS"] == ("inches" if job.units is Units.INCH else "dimensions in millimeters")


@EACH
def test_full_and_flat_file_carry_their_issue_among_their_properties(name: str, tmp_path: Path) -> None:
    """$CUSTOMPROPERTYTAG, $CUSTOMPROPERTY (DXF reference, HEADER); and in words among the notes."""
    for write in (write_dxf, write_flat_dxf):
        write(drawn(name), tmp_path / "drawing.dxf")
        document = readfile(tmp_path / "drawing.dxf")
        assert dict(document.header.custom_vars.properties) == {
            "issue": "4",
            "code": "7F3A",
            "date of issue": DATE,
            "date measured": "2026-05-18",
            "replaces issue": "2",
        }
    texts = " ".join(text.dxf.text for text in document.modelspace().query("TEXT"))
    assert "issue 4, 7F3A, of 2026-06-03" in texts


@BOTH
def test_the_header_names_the_units_and_the_main_dimension_style(name: str, files: dict[str, Path]) -> None:
    """$INSUNITS 1 inch, 4 millimeter; $MEASUREMENT 0 and 1 (DXF reference, HEADER)."""
    said = header(files[name])
    is_inch = drawn(name.split(",")[0]).units is Units.INCH
    assert said["$ACADVER"] == ["AC1024"]
    assert int(said["$INSUNITS"][0]) == (1 if is_inch else 4)
    assert int(said["$MEASUREMENT"][0]) == (0 if is_inch else 1)
    assert float(said["$DIMSCALE"][0]) == drawn(name.split(",")[0]).view("section head").scale.factor
    assert int(said["$DIMLUNIT"][0]) == (5 if is_inch else 2)
    assert int(said["$DIMFRAC"][0]) == 2
    assert float(said["$DIMTXT"][0]) == pytest.approx(3 / 32 if is_inch else 2.5, abs=1e-9)


@EACH
def test_hatches_come_first_then_a_point_nobody_needs(name: str, files: dict[str, Path]) -> None:
    """A simple reader loses the entity that follows a hatch (seen in FreeCAD 0.20)."""
    kinds = [one.kind for one in sections(files[name])["ENTITIES"] if not one.in_paper and one.text(8) != "VIEWPORTS"]
    first_other = next(index for index, kind in enumerate(kinds) if kind != "HATCH")
    assert first_other > 5
    assert "HATCH" not in kinds[first_other:]
    assert kinds[first_other] == "POINT"


@EACH
def test_only_entities_that_simple_readers_know_carry_words(name: str, files: dict[str, Path]) -> None:
    kinds = {one.kind for one in sections(files[name])["ENTITIES"]}
    assert kinds.isdisjoint({"LEADER", "MULTILEADER", "WIPEOUT", "ACAD_TABLE"})


@EACH
def test_the_flat_file_holds_simple_entities_and_all_texts(name: str, files: dict[str, Path]) -> None:
    entities = sections(files[f"{name}, flat"])["ENTITIES"]
    drawing = drawn(name)
    model = [one for one in entities if one.kind != "VIEWPORT"]
    assert {one.kind for one in model} <= SIMPLE
    said = Counter(one.text(1) for one in model if one.kind == "TEXT")
    lines = [line for view in drawing.views for text in view.lettering for line in text.lines]
    wanted = Counter(bare for line in lines if (bare := re.sub("^Scale [^;]*(; )?", "", line)))  # it is at true size
    title = said - wanted
    assert wanted - said == Counter()
    assert title.total() == 5 and f"{drawing.title.opening}  {drawing.title.room}" in title


@BOTH
def test_a_second_reader_finds_the_outlines(name: str, files: dict[str, Path]) -> None:
    """dxfgrabber knows no dimensions, but layers and outlines: as many as the views have shapes and leaders."""
    drawing = drawn(name.split(",")[0])
    read = dxfgrabber.readfile(str(files[name]))
    found = Counter(one.layer for one in read.modelspace() if one.dxftype == "LWPOLYLINE")
    wanted = Counter(str(shape.ink) for view in drawing.views for shape in view.shapes)
    for view in drawing.views:
        wanted.update(str(leader.ink) for leader in view.leaders)
        wanted.update(str(one.leader.ink) for one in view.dimensions if one.leader)
    assert found == wanted


@EACH
def test_broken_lines_are_scaled_to_their_view(name: str, files: dict[str, Path]) -> None:
    factors = {view.scale.factor for view in drawn(name).views}
    found = [one for one in sections(files[name])["ENTITIES"] if one.text(8) == "HIDDEN"]
    assert found
    assert {one.number(48) for one in found} <= factors


def hatch_spacing(path: Path, layer: str, factor: float) -> set[float]:
    """Distance between the lines of the first pattern family on paper [drawing units] (DXF reference, HATCH)."""
    spacings = set()
    for one in sections(path)["ENTITIES"]:
        if one.kind == "HATCH" and one.text(8) == layer and one.text(2) == "ANSI31":
            spacings.add(round(math.hypot(one.number(45), one.number(46)) / factor, 4))
    return spacings


def test_hatch_lines_are_as_far_apart_in_a_metric_drawing_as_in_an_inch_drawing(files: dict[str, Path]) -> None:
    """On paper, to 2 %: the metric pattern file has 3.175 mm for 1/8 in.

    Details drawn larger have the narrower spacings; the two widest are those of wood and frame in the sections. The
    narrowest is that of sealant in details at half size, where an inch on paper is two and not four in the drawing.
    """
    scale, scale_mm = (drawn(one).view("section head").scale.factor for one in ("picture framed", "metric"))
    inch = hatch_spacing(files["picture framed"], "HATCH-TRIM", scale)
    metric = {one / MM_PER_INCH for one in hatch_spacing(files["metric"], "HATCH-TRIM", scale_mm)}
    assert sorted(metric)[-2:] == pytest.approx(sorted(inch)[-2:], rel=0.02)
    assert 0.02 < min(inch) * scale / 2 < 0.15


def test_the_same_drawing_gives_the_same_bytes_whatever_the_seed(tmp_path: Path) -> None:
    code = (
        "import sys; sys.path[:0] = sys.argv[2:]\n"
        "from samples import drawn\n"
        "from jambs.drawings import write_dxf, write_flat_dxf\n"
        "write_dxf(drawn('stool'), sys.argv[1] + '.dxf'); write_flat_dxf(drawn('stool'), sys.argv[1] + '-flat.dxf')"
    )
    here = Path(__file__).parent
    digests = set()
    for seed in ("0", "1", "7"):
        base = str(tmp_path / seed)
        subprocess.run(
            [sys.executable, "-c", code, base, str(here), str(here.parent)],
            check=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        )
        digests.add(tuple(hashlib.sha256(Path(base + end).read_bytes()).hexdigest() for end in (".dxf", "-flat.dxf")))
    assert len(digests) == 1


@pytest.mark.parametrize("name", [name for name in SAMPLES if name not in FULL])
def test_every_sample_is_written_and_audited(name: str, tmp_path: Path) -> None:
    write_dxf(drawn(name), tmp_path / "one.dxf")
    auditor = readfile(tmp_path / "one.dxf").audit()
    assert (auditor.errors, auditor.fixes) == ([], [])
