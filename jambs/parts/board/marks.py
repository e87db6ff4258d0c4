"""The marks of parts: a mark belongs to its part for ever, and a number that was given once is never given to another.

A label stands on a board for as long as the board lasts. So a part that an opening still has keeps its number whatever
comes or goes beside it, a new part takes the next number that the opening never had, and a part that comes back takes
its old number.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from jambs.parts.board.part import PartIdentity


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkBook:
    """All numbers that were given.

    ``numbers``: of each part, within its opening. ``highest``: the highest ever given, by opening mark. ``under``:
    numbers that a part had under other marks of its opening, by that mark.
    """

    numbers: Mapping[PartIdentity, int] = field(default_factory=dict)
    highest: Mapping[str, int] = field(default_factory=dict)
    under: Mapping[PartIdentity, Mapping[str, int]] = field(default_factory=dict)

    def mark(self, part: PartIdentity) -> str:
        """Return the mark of a part that has a number: opening mark and number."""
        return f"{part.opening}-{self.numbers[part]}"

    def with_parts(self, parts: Iterable[PartIdentity]) -> MarkBook:
        """Return the book with a number for each of these parts, new ones in their order."""
        numbers, highest = dict(self.numbers), dict(self.highest)
        for part in parts:
            if part not in numbers:
                highest[part.opening] = numbers[part] = highest.get(part.opening, 0) + 1
        return replace(self, numbers=numbers, highest=highest)

    def moved(self, moves: Mapping[str, str]) -> MarkBook:
        """Return the book once openings have other marks, all at once: their parts keep their numbers where those are
        free there.

        Numbers of a former mark are never given again, also not to an opening that takes that mark.

        ``moves``: mark → the mark until now.
        """
        to = {old: new for new, old in moves.items()}
        moving = [part for part in self.numbers if part.opening in to]
        gone, highest = {*to} | {to[part.opening] for part in moving}, dict(self.highest)
        stay = {part: number for part, number in self.numbers.items() if part.opening not in gone}
        under = {part: numbers for part, numbers in self.under.items() if part.opening not in gone}
        for part in moving:
            new = to[part.opening]
            had, number, moved = self.under.get(part, {}), self.numbers[part], replace(part, opening=new)
            if new in had:
                stay[moved] = had[new]
            elif number > self.highest.get(new, 0):
                stay[moved] = number
                highest[new] = max(number, highest.get(new, 0))
            under[moved] = {**had, part.opening: number}
        book = MarkBook(numbers=stay, highest=highest, under=under)
        return book.with_parts(replace(part, opening=to[part.opening]) for part in moving)

    def back_at(self, earlier: MarkBook, openings: Iterable[str]) -> MarkBook:
        """Return the book once some openings are again as in an earlier one: their parts have their numbers of then."""
        then = {part: number for part, number in earlier.numbers.items() if part.opening in {*openings}}
        highest = {mark: max(self.highest.get(mark, 0), number) for mark, number in earlier.highest.items()}
        return replace(self, numbers={**self.numbers, **then}, highest={**self.highest, **highest})


NO_MARKS = MarkBook()
"""Nothing was ever marked: numbers run from 1."""
