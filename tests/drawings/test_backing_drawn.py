"""The screws of what stands behind returns and bare jambs in a section: furring, nailers, the boards of returns."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import jambs
from jambs.drawings.elements.view import Ink, View
from jambs.drawings.views.sections import section_view
from jambs.outside.fastener_line import Fastened
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.section.cut import sections_to_draw
from jambs.section.region import SectionCut

LOFT = Path(__file__).parents[2] / "examples" / "quarry-loft"


def cut(mark: str, where: SectionCut) -> tuple[jambs.Kit, jambs.Job, View]:
    job = jambs.read_job(LOFT)
    kit = next(one for one in jambs.make_kits(job) if one.mark == mark)
    section = next(one for one in sections_to_draw(kit) if one.cut is where)
    return kit, job, section_view(section, kit, job)


def shanks(view: View) -> list[float]:
    """Lengths of the fasteners that go into the wall; every second line is a head."""
    drawn = [shape.points for shape in view.shapes if shape.ink is Ink.FASTENER][::2]
    return sorted(math.dist(*points) for points in drawn if points[0][0] == points[1][0])


def lengths(kit: jambs.Kit, job: jambs.Job, kind: Fastened, side: SectionCut) -> set[float]:
    lines = [one for one in trim_fasteners(kit, job) if one.kind is kind]
    return {one.length for one in lines if one.length and (not one.sides or side.side in one.sides)}


@pytest.mark.parametrize("where", [SectionCut.HEAD, SectionCut.JAMB])
def test_two_screws_hold_the_furring_and_one_the_board_of_a_return(where: SectionCut) -> None:
    kit, job, view = cut("L1", where)
    (furring,), (board,) = (lengths(kit, job, kind, where) for kind in (Fastened.FURRING, Fastened.RETURN))
    assert shanks(view) == pytest.approx(sorted([board, furring, furring]))


def test_under_a_stool_the_furring_has_its_own_shorter_screws_and_no_board_is_screwed() -> None:
    kit, job, view = cut("L1", SectionCut.SILL)
    (furring,) = lengths(kit, job, Fastened.FURRING, SectionCut.SILL)
    assert shanks(view) == pytest.approx([furring, furring])


def test_a_screw_holds_each_nailer_and_there_is_none_without_one() -> None:
    """Beside a bare jamb's own screw at the jamb, which the head has not."""
    kit, job, view = cut("L4", SectionCut.HEAD)
    (length,) = lengths(kit, job, Fastened.NAILER, SectionCut.HEAD)
    assert shanks(view) == pytest.approx([length])
    assert lengths(*cut("L1", SectionCut.HEAD)[:2], Fastened.NAILER, SectionCut.HEAD) == set()
