"""Casings built up from several members: backband, rosettes, plinth blocks, a head of members one over the other."""

from __future__ import annotations

from enum import StrEnum
from itertools import pairwise
from typing import Annotated

from pydantic import BeforeValidator, model_validator

from jambs.job.models.fields import NUMBER, Amount, BoardWidth, Model, Small, Text, Thickness, fault


class MemberKind(StrEnum):
    """Members of a head, by their trade words: those that lie flat, and the board that stands between them."""

    FILLET = "fillet"
    FRIEZE = "frieze"
    CAP = "cap"

    @property
    def lies(self) -> bool:
        """Say whether its board lies flat, so that its thickness is its height."""
        return self is not MemberKind.FRIEZE


class HeadMember(Model):
    """One member of a head [in]: ``height`` up the wall, ``projection`` out from the back of the casing.

    ``overhang``: past the outer edges of the legs, at each end.
    """

    kind: MemberKind
    height: BoardWidth
    projection: Thickness
    overhang: Small
    stock: Text


class CrownEntry(Model):
    """A crown on the face of the frieze, under the cap, its ends returned to the wall [in].

    ``width``: across its face. ``spring_deg``: between its back and the wall.
    """

    width: BoardWidth
    thickness: Thickness
    spring_deg: Annotated[float, BeforeValidator(Amount(20, 70)), NUMBER]
    stock: Text


class BackbandEntry(Model):
    """A band round the outer edge of the casing [in]: ``width`` across the wall, ``thickness`` out from it."""

    width: Thickness
    thickness: Thickness
    stock: Text


class RosetteEntry(Model):
    """Square blocks in the corners of the casing, centered on it [in]."""

    size: BoardWidth
    thickness: Thickness
    stock: Text


class PlinthEntry(Model):
    """Blocks that the legs of a casing stand on at the floor [in]; their inner edges in line with the casing's."""

    width: BoardWidth
    height: BoardWidth
    thickness: Thickness
    stock: Text


class BuiltUpEntry(Model):
    """Members that stand with the boards of a casing; ``head`` from the bottom up, in place of a head casing."""

    backband: BackbandEntry | None = None
    rosettes: RosetteEntry | None = None
    plinths: PlinthEntry | None = None
    head: tuple[HeadMember, ...] = ()
    crown: CrownEntry | None = None

    @model_validator(mode="after")
    def _crown_has_its_place(self) -> BuiltUpEntry:
        kinds = [member.kind for member in self.head]
        if self.crown and (MemberKind.FRIEZE, MemberKind.CAP) not in pairwise(kinds):
            raise fault("crown stands on a frieze under a cap, and head has none on the other; give both in head")
        return self

    @model_validator(mode="after")
    def _go_together(self) -> BuiltUpEntry:
        if self.rosettes and (self.backband or self.head):
            raise fault("rosettes stand in the corners, where backband or head would cross them; keep one of both")
        if not (self.backband or self.rosettes or self.plinths or self.head):
            raise fault("built_up names no member; give backband, rosettes, plinths or head, or remove it")
        return self
