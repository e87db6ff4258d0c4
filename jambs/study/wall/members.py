"""How much of a layer its studs, straps or battens take up: stated, else by their width and spacing, else usual."""

from __future__ import annotations

from jambs.job.models.layers import USUAL_SPACING, Layer, Role
from jambs.job.models.openings import Assumed
from jambs.length import Units
from jambs.parts.kit.backing import MEMBER
from jambs.section.wall_regions import STRAP
from jambs.study.wall.assumed_words import framing_share_assumed, member_share_assumed, no_battens_assumed

FRAMING_SHARES = ((18.0, 0.25), (float("inf"), 0.22))
"""Whole-wall share of framing up to a spacing of studs [in]: usual US values for 16 and 24 in, from memory."""
USUAL_WIDTH = {Role.STRAPPING: STRAP, Role.CAVITY: MEMBER}
"""Of straps and battens where the layer does not say [in]."""


def member_share(layer: Layer, assumed: list[Assumed], *, units: Units) -> float:
    """Share of a layer's area that its members take up, 0 to 1; what nobody stated goes to ``assumed``."""
    if layer.framing_share is not None:
        return layer.framing_share
    if layer.role is Role.FRAMING:
        return _framing(layer, assumed, units)
    if layer.role in USUAL_WIDTH:
        return _battens(layer, assumed, units)
    return 0.0


def _framing(layer: Layer, assumed: list[Assumed], units: Units) -> float:
    spacing = layer.spacing or USUAL_SPACING[units]
    share = next(share for limit, share in FRAMING_SHARES if spacing <= limit)
    assumed.append(framing_share_assumed(layer.name, share, spacing, units))
    return share


def _battens(layer: Layer, assumed: list[Assumed], units: Units) -> float:
    if layer.role is Role.CAVITY and layer.spacing is None:
        assumed.append(no_battens_assumed(layer.name))
        return 0.0
    width, spacing = layer.member_width or USUAL_WIDTH[layer.role], layer.spacing or USUAL_SPACING[units]
    if layer.member_width is None or layer.spacing is None:
        assumed.append(member_share_assumed(layer.name, width, spacing, units))
    return width / spacing
