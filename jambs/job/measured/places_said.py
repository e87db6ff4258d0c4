"""Which place of an opening a row of its table is of: by what the row says was read there, before its number.

Numbers follow from the opening. A longer side has more places, an opening without exterior trim fewer, and all behind
them have other numbers by then; what a row says of its place (``what``) holds.
"""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.measured.measuring_points import measure_places, place_words
from jambs.job.models.openings import Opening

RowSaid = tuple[str, str]
"""What a row has as its place and as what is measured there."""


def places_said(opening: Opening, rows: Sequence[RowSaid]) -> list[str | None]:
    """Return the place of each row of an opening as it is numbered now; nothing where the opening has it no more.

    All the rows that the table has of the opening, filled in or not. Words of the user's own say nothing: where all
    rows have such, or as many are numbered as there are places, the number counts.
    """
    words = {place_words(one): str(one.number) for one in measure_places(opening)}
    numbered = {place for place, _ in rows if place.isdecimal()}
    is_other = len(numbered) != len(words) and any(what in words for _, what in rows)
    return [_now(place, what, words, is_other=is_other) for place, what in rows]


def _now(place: str, what: str, words: dict[str, str], *, is_other: bool) -> str | None:
    if not place.isdecimal() or not what:
        return place
    return words.get(what, None if is_other else place)
