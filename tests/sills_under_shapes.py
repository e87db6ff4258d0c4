"""Kits of shapes without two legs that stand on an exterior sill, made for the tests."""

from __future__ import annotations

import copy
from typing import Any

from cases import BASE
from random_kits import RandomKit, kit_from
from rounds import round_changes

SILL = copy.deepcopy(BASE["exterior_trim"]["outside"]["sill"])


def on_sill(shape: Any, width: float, height: float, **more: Any) -> RandomKit:
    """Make a kit whose exterior jambs and casing stand on the sill of the plain job, or on another one."""
    return kit_from(round_changes(shape, width, height, **{"exterior_trim__outside__sill": SILL, **more}))
