"""Kits and jobs made by hand, so that the papers are tested without the floors below."""

from __future__ import annotations

import datetime
from dataclasses import replace

from hand_parts import buck_parts, exterior_parts, interior_parts, tapered
from said import SaidFinding, SaidReason

from jambs.findings import Severity, Subject
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.fields import Size
from jambs.job.models.layers import BuckKind, Layer, Role, Wall
from jambs.job.models.openings import Assumed, Job, Measured, Opening, SideDepths
from jambs.job.models.position import PositionRule
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.windows import WindowType
from jambs.length import GRIDS, Units
from jambs.parts.board.part import Part
from jambs.parts.kit.cautions import Beside, Caution
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.place.placement import Buck, Placement, Sides, Swing
from jambs.place.swing import Obstacle
from jambs.sheets.pictures import Picture, SheetPictures
from jambs.sides import Side
from jambs.wall.planes import stack_wall

CONTEXT = {"units": Units.INCH}

WINDOW = WindowType.model_validate(
    {
        "jamb_depth": "4 9/16",
        "frame_projection": "1 1/4",
        "frame_face": {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3"},
        "nailing_flange": True,
        "flange_width": "1 1/4",
        "sash": "casement out",
        "sash_thickness": "1 3/4",
        "sash_set_back": "1/4",
        "glass": {"panes": 2, "pane_thickness": "1/8"},
    },
    context=CONTEXT,
)
INTERIOR = InteriorTrim.model_validate(
    {
        "style": "picture framed",
        "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "rabbet", "rabbet_depth": "3/8"},
        "frame_reveal": "1/8",
        "casing_reveal": "3/16",
        "casing": {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"},
    },
    context=CONTEXT,
)
EXTERIOR = ExteriorTrim.model_validate(
    {
        "jamb": {"thickness": "3/4", "stock": "cedar"},
        "frame_reveal": "1/4",
        "sealant_joint": "1/4",
        "casing_reveal": "1/4",
        "casing": {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "butt", "overhang": "1/2"},
        "sill": {
            "thickness": "1 1/2",
            "stock": "cedar",
            "slope": "10 deg",
            "nosing": "1 1/2",
            "horn": "1",
            "drip_kerf": {"width": "1/4", "depth": "1/4", "set_back": "1/2"},
        },
        "head_flashing": {"past_casing": "1/2", "upstand": "3", "drip": "1/2", "gap_to_cladding": "3/8"},
    },
    context=CONTEXT,
)
LAYERS = (
    ("gypsum board", Role.FINISH, 0.5),
    ("stud 2x6", Role.FRAMING, 5.5),
    ("plywood", Role.SHEATHING, 0.5),
    ("rigid insulation", Role.INSULATION, 2.0),
    ("rigid insulation", Role.INSULATION, 3.0),
    ("plywood", Role.COVER, 0.5),
    ("wood shingles", Role.CLADDING, 0.75),
)
WALL = Wall(
    name="main",
    layers=tuple(
        Layer(name=name, role=role, thickness=thickness, carries=role is Role.COVER) for name, role, thickness in LAYERS
    ),
)


def make_job(*, units: Units = Units.INCH, paper: str = "letter", **changes: object) -> Job:
    """Return a job by hand."""
    shop = Shop.model_validate(
        {
            "grid": "1/32" if units is Units.INCH else "0.5 mm",
            "kerf": '1/8"',
            "proud": '1/32"',
            "shim_space": '1/4"',
            "edge_allowance": '1/8"',
            "taper_tolerance": '1/32"',
            "paper": paper,
            "boards": [{"nominal": "1x6", "stock": "poplar"}],
        },
        context={"units": units},
    )
    job = Job(
        name="Harbour Lane 7",
        units=units,
        shop=shop,
        limits=Limits(),
        boards=(Board(stock="poplar", nominal="1x6", thickness=0.75, width=5.5),),
        openings=(),
        date=datetime.date(2026, 3, 2),
        assumed=(Assumed(what="greatest overhang", value='3"', why="common practice, no source"),),
    )
    return replace(job, **changes)  # type: ignore[arg-type]


def make_opening(mark: str = "W01", **changes: object) -> Opening:
    """Return an opening by hand."""
    opening = Opening(
        mark=mark,
        room="Kitchen",
        wall=WALL,
        window_name="casement",
        window=WINDOW,
        frame=Size(35.5, 47.5),
        rough_opening=Size(36.0, 48.0),
        sill_height=36.0,
        floor_below_frame=None,
        faces_deg=0.0,
        hinge="left",
        interior_name="picture",
        interior=INTERIOR,
        exterior_name="cedar",
        exterior=EXTERIOR,
        position=PositionRule.model_validate({"share": "1/2"}),
        position_is_own=False,
        escape=False,
        weight=None,
        elevation="north",
        from_left=None,
        measured=None,
        assumed=(Assumed(what="rough opening", value='36" × 48"', why="frame and shim space on both sides"),),
    )
    return replace(opening, **changes)  # type: ignore[arg-type]


def make_placement(opening: Opening, **changes: object) -> Placement:
    """Return the worked case of the brief: half of the added depth inside."""
    placement = Placement(
        opening=opening,
        planes=stack_wall(WALL, grid=GRIDS["1/64"]),
        flange_plane=9.25,
        interior_depth=4.6875,
        exterior_depth=1.5,
        share=0.5,
        buck=Buck(kind=BuckKind.OUTBOARD, inner=6.5, outer=9.25, thickness=1.5, stock="framing lumber", set_back=0.0),
        framing_opening=Size(36.0, 48.0),
        shims=Sides(left=0.25, right=0.25, head=0.25, sill=0.25),
        framing_sill=None if opening.sill_height is None else opening.sill_height - 0.25,
        weight=68.0,
        weight_is_assumed=True,
        swing=Swing(greatest_deg=90.0, stopped_by=Obstacle.FRAME, clear=Size(28.75, 41.5)),
        reasons=(
            SaidReason(text="Half of the added depth is taken inside, as the job asks (share 1/2)."),
            SaidReason(
                text="Next best: the flange on the outer sheathing; then the outside jamb goes away and the inside one "
                'is 7 7/16".'
            ),
        ),
        alternatives=(),
        findings=(
            SaidFinding(
                subject=Subject.opening(opening.mark),
                severity=Severity.CHECK,
                text='The frame hangs 2 3/4" past the framing with 68 lb; give the buck 5 screws a side.',
            ),
        ),
    )
    return replace(placement, **changes)  # type: ignore[arg-type]


MEASURED = Measured(
    date=datetime.date(2026, 3, 20),
    by="shop",
    interior_depth=SideDepths(
        head=(4 + 11 / 16, 4 + 3 / 4),
        sill=(4 + 5 / 8, 4 + 13 / 16),
        left=(4 + 5 / 8, 4 + 11 / 16),
        right=(4 + 13 / 16, 4 + 3 / 4),
    ),
)


ROOM = ClearOpening(left=2.375, right=33.125, bottom=2.375, top=44.625, frame_reveal=0.125)


def make_kit(
    mark: str = "W01", *, parts: list[Part] | None = None, measured: bool = False, **changes: object
) -> CutKit:
    """Return a whole kit by hand."""
    opening = make_opening(mark, measured=MEASURED if measured else None)
    whole = [*interior_parts(mark), *exterior_parts(mark), *buck_parts(mark)] if parts is None else parts
    kit = CutKit(
        placement=make_placement(opening),
        parts=tuple(whole),
        is_measured=measured,
        clear_width=30.75,
        room=ROOM,
        clear_height=42.25,
        figures=(
            Figure(kind=FigureKind.CLEAR_OPENING_WIDTH, value=30.75, note="between the faces of the jambs"),
            Figure(kind=FigureKind.CLEAR_OPENING_HEIGHT, value=42.25, note="between the faces of the jambs"),
            Figure(kind=FigureKind.JAMB_BOX_WIDTH, value=32.25, note="clear opening + 2 jambs"),
            Figure(kind=FigureKind.SHIM_SPACE_LEFT, value=1.875),
            Figure(kind=FigureKind.SHIM_SPACE_RIGHT, value=1.875),
            Figure(kind=FigureKind.CASING_OUTSIDE_WIDTH, value=38.125),
            Figure(kind=FigureKind.CASING_OUTSIDE_HEIGHT, value=49.625),
            Figure(kind=FigureKind.SILL_FALL, value=0.65625, note="over the whole board"),
        ),
        findings=(
            SaidFinding(
                subject=Subject.opening(mark),
                severity=Severity.NOTE,
                text="The jambs come out of 1x6 with one rip.",
            ),
        ),
        assumed=(Assumed(what="window weight", value="68 lb", why="from the glass make-up and the frame"),),
        cautions=(
            Caution(beside=Beside.SAW, words="Bench: dry-fit the jamb box before gluing."),
            Caution(beside=Beside.INSTALL, words="Reveals: cut casing after the jambs are in; check each first."),
        ),
        sides={name: FittedSide(start_depth=4.71875, finish_depth=4.71875, is_tapered=False) for name in Side},
    )
    return replace(kit, **changes)  # type: ignore[arg-type]


def measured_kit(mark: str = "W02") -> CutKit:
    """Return a measured, tapered kit of interior parts alone."""
    parts = interior_parts(mark)
    parts[0] = tapered(parts[0], 4.71875, 4.78125)
    parts[2] = tapered(parts[2], 4.84375, 4.78125)
    sides = {
        Side.HEAD: FittedSide(start_depth=4.71875, finish_depth=4.78125, is_tapered=True),
        Side.SILL: FittedSide(start_depth=4.65625, finish_depth=4.84375, is_tapered=True),
        Side.LEFT: FittedSide(start_depth=4.65625, finish_depth=4.71875, is_tapered=True),
        Side.RIGHT: FittedSide(start_depth=4.84375, finish_depth=4.78125, is_tapered=True),
    }
    return make_kit(mark, parts=parts, measured=True, sides=sides)


def box_svg(width: float, height: float) -> str:
    """Return a plain drawing of a size [in] on paper: a frame with a cross."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width * 25.4:.2f}mm" height="{height * 25.4:.2f}mm" '
        f'viewBox="0 0 {width} {height}"><g fill="none" stroke="black" stroke-width="0.01">'
        f'<rect x="0.01" y="0.01" width="{width - 0.02}" height="{height - 0.02}"/>'
        f'<path d="M0 0L{width} {height}M{width} 0L0 {height}"/></g></svg>'
    )


def make_pictures(
    *, elevation: tuple[float, float] = (2.9, 3.2), section: tuple[float, float] = (4.3, 3.2)
) -> SheetPictures:
    """Return two drawings of given sizes [in]."""
    return SheetPictures(
        elevation=Picture(title="Interior elevation", svg=box_svg(*elevation), scale='scale 3/4" = 1\'-0"'),
        section=Picture(title="Section at left jamb", svg=box_svg(*section), scale='scale 3" = 1\'-0"'),
    )
