"""Work that does not wait for each other: what keeps any of it from being made is told in one go."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from jambs.findings import Finding
from jambs.parts.board.cuts import CannotBeCut

Made = TypeVar("Made")


class Together:
    """Gathers what keeps parts from being made, each fault once, in the order in which it was met."""

    def __init__(self) -> None:
        self._faults: dict[Finding, None] = {}

    def tried(self, make: Callable[[], Made]) -> Made | None:
        """Return what is made, or nothing where it cannot be cut."""
        try:
            return make()
        except CannotBeCut as error:
            self._faults.update(dict.fromkeys(error.findings))
            return None

    def settle(self) -> None:
        """Let what needs all of the work go on.

        Raises:
            CannotBeCut: some of it could not be made.
        """
        if self._faults:
            raise CannotBeCut(*self._faults)
