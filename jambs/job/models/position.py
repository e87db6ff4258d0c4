"""The position rule: where in the wall a window stands."""

from __future__ import annotations

import re
from typing import Any

from pydantic import model_validator

from jambs.job.models.fields import ModelOrText, Share, SignedDepth, Text, YesNo, fault

RULES = ("share", "equal_depths", "flange_on", "interior_depth", "exterior_depth", "choose", "least_heat_loss")


WORDS = {
    "equal depths": {"equal_depths": "yes"},
    "choose": {"choose": "yes"},
    "least heat loss": {"least_heat_loss": "yes"},
}
TWO_MEANINGS = {
    ("middle", "in the middle", "center", "centre", "centered", "centred", "half"): (
        "equal_depths (as deep inside as outside) or share (the part of the added depth that is taken inside)"
    ),
    ("outside", "flush", "flush outside", "outie"): (
        "flange_on: trim plane (the flange on the outermost sheet) or exterior_depth (frame → trim plane)"
    ),
    ("inside", "flush inside", "innie"): (
        "flange_on: sheathing (the flange on the sheathing) or interior_depth (finished face → frame)"
    ),
}
"""Words that builders use for two places, and what each would be."""


def read_words(text: str) -> dict[str, str]:
    """Read a rule in plain words; what is not a rule is the layer on whose outer face the flange lies."""
    plain = " ".join(text.replace("_", " ").split())
    if found := re.fullmatch(rf"({'|'.join(RULES)})\s*[:=\s]\s*(.+)", text.strip()):
        return {found[1]: found[2]}
    if plain.lower() in WORDS:
        return WORDS[plain.lower()]
    for words, meanings in TWO_MEANINGS.items():
        if plain.lower() in words:
            raise fault(f"{text!r} can mean two places; write {meanings} (see `jambs keys position`)")
    if plain in (rule.replace("_", " ") for rule in RULES):
        raise fault(f"{text!r} has no value; write {plain.replace(' ', '_')}: and what it is (`jambs keys position`)")
    return {"flange_on": re.sub(r"^(flange )?(on )?(the )?", "", plain, flags=re.IGNORECASE)}


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
        """Read a rule in plain words, or a key and its value in one text, as a schedule's cell has it."""
        return read_words(value) if isinstance(value, str) else value

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
