"""What a DXF file says of itself: styles, extents, first view, paper, layers, weights, hatches, scales."""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import pytest
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.entities.mtext import MText
from ezdxf.filemanagement import readfile
from samples import drawn

from jambs.drawings import write_dxf, write_flat_dxf
from jambs.drawings.dxf.document import LAYERS
from jambs.drawings.dxf.hatching import PATTERNS, pattern_lines
from jambs.drawings.elements.paper import scales_of
from jambs.drawings.elements.view import Hatch, Ink
from jambs.length import Units

FULL = ("stool", "metric")
BOTH = pytest.mark.parametrize("name", [*FULL, *(f"{name}, flat" for name in FULL)])
EACH = pytest.mark.parametrize("name", FULL)


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("drawings")
    paths = {}
    for name in FULL:
        paths[name], paths[f"{name}, flat"] = folder / f"{name}.dxf", folder / f"{name}-flat.dxf"
        write_dxf(drawn(name), paths[name])
        write_flat_dxf(drawn(name), paths[f"{name}, flat"])
    return paths


@EACH
def test_a_dimension_style_keeps_its_suffix_in_the_file(name: str, files: dict[str, Path]) -> None:
    """DIMPOST, group 3 of DIMSTYLE (DXF reference): read from the text of the file; one style for each scale."""
    document = readfile(files[name])
    styles = [style for style in document.dimstyles if style.dxf.name != "Standard"]
    suffix = '<>"' if document.header["$INSUNITS"] == 1 else "<>"
    assert {style.dxf.dimpost for style in styles} == {suffix}
    assert len(styles) == len({view.scale.factor for view in drawn(name).views})


@BOTH
def test_extents_and_first_view_are_those_of_what_is_drawn(name: str, files: dict[str, Path]) -> None:
    """$EXTMIN, $EXTMAX and *ACTIVE (DXF reference, HEADER, VPORT) hold every point of model space, and little more."""
    document = readfile(files[name])
    low, high = document.header["$EXTMIN"], document.header["$EXTMAX"]
    lines = [one for one in document.modelspace() if isinstance(one, LWPolyline)]
    points = [(float(point[0]), float(point[1])) for line in lines for point in line.get_points("xy")]
    assert all(low[0] <= x <= high[0] and low[1] <= y <= high[1] for x, y in points)
    assert high[0] - low[0] < 2 * (max(x for x, _ in points) - min(x for x, _ in points))
    (view,) = document.viewports.get_config("*Active")
    middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
    assert tuple(view.dxf.center)[:2] == pytest.approx(middle)
    assert view.dxf.height >= high[1] - low[1]


@BOTH
def test_every_space_has_paper_in_its_own_units(name: str, files: dict[str, Path]) -> None:
    """Plot units 0 inches, 1 millimeters (DXF reference, PLOTSETTINGS 72); no A3 of inches."""
    document = readfile(files[name])
    is_inch = document.header["$INSUNITS"] == 1
    for layout in document.layouts:
        settings = layout.dxf_layout.dxf
        assert settings.plot_paper_units == (0 if is_inch else 1)
        size = sorted((settings.paper_width, settings.paper_height))
        sizes = [(215.9, 279.4), (279.4, 431.8)] if is_inch else [(210, 297), (297, 420)]
        assert any(size == pytest.approx(one, abs=0.1) for one in sizes)
    longest = max(document.header["$LIMMAX"][0], document.header["$EXTMAX"][0])
    assert longest == pytest.approx(document.header["$EXTMAX"][0])


@BOTH
def test_no_layer_is_idle(name: str, files: dict[str, Path]) -> None:
    document = readfile(files[name])
    used = {entity.dxf.layer for entity in document.entitydb.values() if entity.dxf.hasattr("layer")}
    idle = {layer.dxf.name for layer in document.layers} - used - {"0", "Defpoints"}
    assert not idle


def test_a_drawing_opens_on_its_first_sheet(files: dict[str, Path]) -> None:
    """$TILEMODE 0: paper space (DXF reference, HEADER)."""
    document = readfile(files["stool"])
    assert document.header["$TILEMODE"] == 0
    assert document.active_layout().name == "LETTER 1"


def test_weights_fall_from_what_is_cut_to_hatches() -> None:
    """*Common practice, no source*: plotted in black the order is told by weight alone."""
    weight = {ink: LAYERS[ink][1] for ink in Ink}
    cut = [Ink.TRIM_INSIDE, Ink.TRIM_OUTSIDE, Ink.WINDOW, Ink.BUCK, Ink.FRAMING, Ink.LAYERS, Ink.INSULATION]
    seen = [Ink.SEEN_WINDOW, Ink.SEEN_INSIDE, Ink.SEEN_OUTSIDE]
    order = [cut, seen, [Ink.HIDDEN], [Ink.DIMENSION, Ink.NOTE], [Ink.HATCH_WALL, Ink.HATCH_TRIM]]
    for heavy, light in itertools.pairwise(order):
        assert min(weight[ink] for ink in heavy) > max(weight[ink] for ink in light)


def test_no_two_materials_share_a_hatch() -> None:
    patterns = [(one.name, one.angle_deg, one.spread) for one in PATTERNS.values()]
    assert len(set(patterns)) == len(patterns)
    rigid, frame = PATTERNS[Hatch.RIGID], PATTERNS[Hatch.FRAME]
    assert rigid.name != frame.name


def test_materials_that_lie_face_to_face_are_hatched_the_other_way() -> None:
    """Black on white, direction tells neighbors apart (ISO 128-3, sectional views, from memory; drafting practice)."""
    leans = {hatch: (PATTERNS[hatch].angle_deg + 45) % 180 for hatch in PATTERNS}
    beside = [(Hatch.SHEET, Hatch.TRIM_CROSSWISE), (Hatch.SHEET, Hatch.CLADDING), (Hatch.TRIM, Hatch.TRIM_CROSSWISE)]
    assert not [pair for pair in beside if leans[pair[0]] == leans[pair[1]]]


def test_insulation_is_not_the_loudest_thing_on_a_sheet() -> None:
    """Length of strokes on 50 x 50 mm of paper: layers that fill half a section have at most half of what wood has."""
    square = [[(0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0)]]
    ink = {
        hatch: sum(math.dist(start, end) for start, end in pattern_lines(hatch, square, scale=1.0))
        for hatch in (Hatch.RIGID, Hatch.FIBER, Hatch.TRIM)
    }
    assert max(ink[Hatch.RIGID], ink[Hatch.FIBER]) < ink[Hatch.TRIM] / 2


@pytest.mark.parametrize("name", ["metric"])
def test_metric_scales_are_those_of_iso_5455(name: str) -> None:
    """ISO 5455:1979, table 1, reduction scales (from memory)."""
    listed = {2, 5, 10, 20, 50, 100, 200, 500, 1000}
    assert {scale.factor for scale in scales_of(Units.MM)} <= listed
    assert {view.scale.factor for view in drawn(name).views} <= listed


@pytest.mark.parametrize("name", FULL)
def test_a_flat_file_has_a_title_over_all_of_it_and_no_scale(name: str, files: dict[str, Path]) -> None:
    """A file at true size has no scale; what it is of stands over its views, its unit beside it."""
    document, drawing = readfile(files[f"{name}, flat"]), drawn(name)
    texts = {text.dxf.text: text for text in document.modelspace().query("TEXT")}
    assert not [word for word in texts if word.startswith("Scale ")]
    title = texts[f"{drawing.title.opening}  {drawing.title.room}"]
    assert max(text.dxf.insert.y for text in texts.values()) == title.dxf.insert.y
    unit = "inches" if drawing.units is Units.INCH else "millimeters"
    assert f"true size, dimensions in {unit}" in texts
    assert any(word.startswith(drawing.title.state) for word in texts)
    full = [text.text for text in readfile(files[name]).modelspace() if isinstance(text, MText)]
    assert any(word.startswith("Scale ") for word in full)  # on paper each view has one
