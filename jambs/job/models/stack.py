"""Stacked jamb frames: two or three narrow extension jambs, one behind the other, in place of one wide one."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BeforeValidator, model_validator

from jambs.job.models.fields import NUMBER, Amount, ModelOrText, Reveal, fault


class StackEntry(ModelOrText):
    """How many jamb frames stand one behind the other, and the step from each to the next toward the room.

    ``reveal``: face of a frame → face of the one nearer the room [in]; left out, it is the trim's ``frame_reveal``.
    """

    frames: Annotated[int, BeforeValidator(Amount(2, 3, whole=True)), NUMBER]
    reveal: Reveal | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_number(cls, value: Any) -> Any:
        """Read ``2`` as two frames."""
        return value if isinstance(value, dict | StackEntry) else {"frames": value}

    @model_validator(mode="after")
    def _is_seen(self) -> StackEntry:
        if self.reveal == 0:
            raise fault(
                "reveal is 0, so the joint of two frames shows as one that did not close; write a step that is seen, "
                "like 1/8 in or 3 mm"
            )
        return self
