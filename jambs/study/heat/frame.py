"""A window frame as a block of one conductivity, chosen so that it lets through what its rated transmittance says."""

from dataclasses import dataclass
from functools import lru_cache

from scipy.optimize import brentq

from jambs.study.heat.conduction import coupling
from jambs.study.heat_findings import FrameHoldsNoPanel, FrameMatchesNoBlock
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block, BlockKind, StudyError
from jambs.study.wall.stack import INSIDE_FILM, OUTSIDE_FILM

# Of ISO 10077-2 (from memory): the glazing is replaced by a panel of this conductivity [W/(m K)] and of the glazing's
# thickness, this deep in the rebate and this far in sight [m].
PANEL_CONDUCTIVITY = 0.035
PANEL_IN_REBATE = 0.015
PANEL_IN_SIGHT = 0.190

# Air is drawn this thick around a cut [m]; only its surface counts.
AIR_MARGIN = 0.001

# Conductivities between which a block is looked for that stands for a frame, and how near its own is found [W/(m K)].
BLOCK_CONDUCTIVITIES = (0.005, 20.0)
SAME_CONDUCTIVITY = 1e-7

# Fine enough that the mean of the limits errs by less than 0.00002 W/mK.
CALIBRATION = Fineness(first=0.0015, growth=1.5, largest=0.03)


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameBlock:
    """A window frame as the heat study sees it. [m]

    `depth` from its outside face to its inside face, along the depth axis; `face` from its outer edge to the edge of
    the glass; `transmittance` U_f [W/(m2 K)] as rated by ISO 10077-2; `panel_thickness` of the panel that stands for
    the glazing; `panel_setback` from the frame's outside face to the panel's, None for a panel in the middle.
    """

    depth: float
    face: float
    transmittance: float
    panel_thickness: float
    panel_setback: float | None = None

    def __post_init__(self) -> None:
        if not 0 <= self.panel_start <= self.depth - self.panel_thickness or self.face <= PANEL_IN_REBATE:
            raise StudyError(
                FrameHoldsNoPanel(
                    depth=self.depth,
                    face=self.face,
                    thickness=self.panel_thickness,
                    set_back=self.panel_start,
                    least_face=PANEL_IN_REBATE,
                )
            )

    @property
    def panel_start(self) -> float:
        """From the frame's outside face to the panel's. [m]"""
        if self.panel_setback is None:
            return (self.depth - self.panel_thickness) / 2
        return self.panel_setback

    @property
    def panel_transmittance(self) -> float:
        """Of the panel that stands for the glazing. [W/(m2 K)]"""
        return 1 / (INSIDE_FILM + OUTSIDE_FILM + self.panel_thickness / PANEL_CONDUCTIVITY)

    @property
    def sight(self) -> float:
        """From the frame's outer edge to the end of the panel. [m]"""
        return self.face + PANEL_IN_SIGHT

    @property
    def flow_alone(self) -> float:
        """Heat per degree through frame and panel with nothing lost at the outer edge. [W/(m K)]"""
        return self.transmittance * self.face + self.panel_transmittance * PANEL_IN_SIGHT

    @property
    def conductivity(self) -> float:
        """Of the block that lets through what `transmittance` says. [W/(m K)]"""
        return _calibrated(self)

    def blocks(self, outside_face: float, *, conductivity: float | None = None) -> list[Block]:
        """Frame and panel in a cut: x inward from `outside_face`, y from the outer edge toward the glass. [m]"""
        panel = outside_face + self.panel_start
        return [
            Block(
                name="frame",
                kind=BlockKind.FRAME,
                conductivity=self.conductivity if conductivity is None else conductivity,
                x0=outside_face,
                x1=outside_face + self.depth,
                y0=0.0,
                y1=self.face,
            ),
            Block(
                name="panel",
                kind=BlockKind.PANEL,
                conductivity=PANEL_CONDUCTIVITY,
                x0=panel,
                x1=panel + self.panel_thickness,
                y0=self.face - PANEL_IN_REBATE,
                y1=self.sight,
            ),
        ]


@lru_cache(maxsize=256)
def _calibrated(frame: FrameBlock) -> float:
    def excess(conductivity: float) -> float:
        blocks = frame.blocks(0.0, conductivity=conductivity)
        return coupling(blocks, airs_alone(frame), fineness=CALIBRATION).mean - frame.flow_alone

    low, high = BLOCK_CONDUCTIVITIES
    if excess(low) > 0 or excess(high) < 0:
        raise StudyError(FrameMatchesNoBlock(transmittance=frame.transmittance, depth=frame.depth, low=low, high=high))
    return float(brentq(excess, low, high, xtol=SAME_CONDUCTIVITY))


def airs_alone(frame: FrameBlock) -> list[AirRegion]:
    """Air on both sides of frame and panel, nothing at the frame's outer edge."""
    border = frame.panel_start + frame.panel_thickness
    return [
        AirRegion(
            name="outside",
            temperature=0.0,
            resistance=OUTSIDE_FILM,
            x0=-AIR_MARGIN,
            x1=border,
            y0=0.0,
            y1=frame.sight,
        ),
        AirRegion(
            name="inside",
            temperature=1.0,
            resistance=INSIDE_FILM,
            x0=border,
            x1=frame.depth + AIR_MARGIN,
            y0=0.0,
            y1=frame.sight,
        ),
    ]
