"""Tags of an elevation: where head, jambs and sill are cut, and which section shows it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Tag, View, ViewKind
from jambs.drawings.views.sash import sight_box
from jambs.parts.kit.kit import Kit
from jambs.section.region import SectionCut


def section_name(cut: SectionCut) -> str:
    """Return the name of the view of a section."""
    return f"section {cut.value}"


def with_tags(view: View, kit: Kit, cuts: Iterable[SectionCut]) -> View:
    """Return an elevation with a tag for each of its sections, at the edge of the opening that it cuts.

    Those at the jambs have fewer places beside the marks, so they come first.
    """
    from_outside = view.kind is ViewKind.EXTERIOR
    box = sight_box(kit.placement.opening, from_outside=from_outside)
    jambs_first = sorted(cuts, key=lambda cut: cut in (SectionCut.HEAD, SectionCut.SILL))
    return replace(view, tags=tuple(_tag(cut, box, from_outside=from_outside) for cut in jambs_first))


def _tag(cut: SectionCut, box: Box, *, from_outside: bool) -> Tag:
    """Left and right are as seen from inside."""
    name = section_name(cut)
    if cut is SectionCut.HEAD:
        return Tag(of=name, edge=((box.left, box.top), (box.right, box.top)), inward=(0.0, -1.0))
    if cut is SectionCut.SILL:
        return Tag(of=name, edge=((box.left, box.bottom), (box.right, box.bottom)), inward=(0.0, 1.0))
    is_left = (cut is SectionCut.LEFT_JAMB) is not from_outside
    x = box.left if is_left else box.right
    return Tag(of=name, edge=((x, box.bottom), (x, box.top)), inward=(1.0 if is_left else -1.0, 0.0))
