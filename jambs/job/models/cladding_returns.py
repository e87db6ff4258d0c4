"""Cladding that turns round the corner of the wall and runs back through the reveal to the frame, over furring."""

from __future__ import annotations

from enum import StrEnum

from pydantic import model_validator

from jambs.job.models.fields import BoardWidth, Model, Reveal, Text, Thickness, fault


class ReturnLaid(StrEnum):
    """How the cladding lies at the sides of the reveal: boards that run along them, or short pieces in courses."""

    ALONG = "along the side"
    COURSES = "in courses"


class OutsideCorner(StrEnum):
    """How cladding of wall and reveal meet: both stop at corner boards, or are mitered at the sides."""

    BOARDS = "corner boards"
    MITERED = "mitered"


class CornerBoardEntry(Model):
    """The leg of a corner board in the reveal [in]; its leg on the wall is the casing.

    ``gap``: cut end of the cladding → corner board, for sealant and movement.
    """

    width: BoardWidth
    thickness: Thickness
    stock: Text
    gap: Reveal


class ReturnFurringEntry(Model):
    """Strips behind the return [in]: one along the corner and one along the frame, where the reveal has room for it.

    ``thickness``: the cavity behind the return; ``width``: of each strip, at most.
    """

    thickness: Thickness
    width: BoardWidth
    stock: Text


class CladdingReturnsEntry(Model):
    """Cladding in the reveal [in], in the place of exterior jambs.

    ``gap_at_sill``: top of the sill → feet of all that stands over it, so that they drain and dry.
    """

    thickness: Thickness
    stock: Text
    laid: ReturnLaid
    corner: OutsideCorner
    gap_at_sill: Reveal
    furring: ReturnFurringEntry
    corner_board: CornerBoardEntry | None = None

    @property
    def is_mitered(self) -> bool:
        """Say whether wall and reveal are mitered, so that no corner board and no casing covers their edges."""
        return self.corner is OutsideCorner.MITERED

    @property
    def back(self) -> float:
        """Face of the return → back of the furring [in]."""
        return self.thickness + self.furring.thickness

    @model_validator(mode="after")
    def _corner_is_made(self) -> CladdingReturnsEntry:
        if self.is_mitered:
            if self.corner_board:
                raise fault("is mitered and also gives corner_board; remove it, or write corner: corner boards")
            return self
        if self.corner_board is None:
            raise fault(
                "has corner boards and gives no corner_board; write corner_board: {width: …, thickness: …, stock: …, "
                "gap: …} for the leg in the reveal (casing is the leg on the wall), or corner: mitered"
            )
        if self.corner_board.thickness < self.thickness:
            raise fault(
                "corner_board is thinner than the cladding, whose cut ends would stand out past it; write at least "
                "its thickness"
            )
        return self
