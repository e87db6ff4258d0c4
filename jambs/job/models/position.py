"""The position rule: where in the wall a window stands."""

from __future__ import annotations

import re
from typing import Any

from pydantic import model_validator

from jambs.job.models.fields import ModelOrText, Share, SignedDepth, Text, YesNo, fault

RULES = ("share", "equal_depths", "flange_on", "interior_depth", "exterior_depth", "choose", "least_heat_loss")


class PositionRule(ModelOrText):
    """Where the window stands in the wall: exactly one of these keys.

    ``choose`` and ``least_heat_loss`` keep to every limit of the job.
    """

    share: Share | None = None
    equal_depths: YesNo = False
    flange_on: Text | None = None
    interior_depth: SignedDepth | None = None
    exterior_depth: SignedDepth | None = None
    choose: YesNo = False
    least_heat_loss: YesNo = False

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """Read a rule that is one word, or a key and its value in one text, as a schedule's cell has it."""
        if not isinstance(value, str):
            return value
        words = {
            "equal depths": {"equal_depths": "yes"},
            "choose": {"choose": "yes"},
            "least heat loss": {"least_heat_loss": "yes"},
        }
        text = value.strip()
        found = re.fullmatch(rf"({'|'.join(RULES)})\s*[:=\s]\s*(.+)", text)
        word = text.replace("_", " ")
        if not found and word not in words:
            raise fault(f"{value!r} is no rule; give one of {', '.join(RULES)} (see `jambs keys position`)")
        return {found[1]: found[2]} if found else words[word]

    @model_validator(mode="after")
    def _one_rule(self) -> PositionRule:
        if len(self._given) != 1:
            found = ", ".join(self._given) or "none"
            raise fault(f"names {found}; give exactly one of {', '.join(RULES)}")
        return self

    @property
    def _given(self) -> list[str]:
        """The rules that are given; a share or a depth of 0 is one."""
        values = ((name, getattr(self, name)) for name in RULES)
        return [name for name, value in values if value is not None and value is not False]

    @property
    def rule(self) -> str:
        """The name of the one rule that is given."""
        return self._given[0]
