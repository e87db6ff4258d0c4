"""What the study says of openings that are no rectangle, and by which lengths their heat goes."""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from arches import arched
from cases import changed, job_of
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Subject
from jambs.place.solve import place_windows
from jambs.section.region import SectionCut
from jambs.study import shape_findings
from jambs.study.at_position import edge_lengths
from jambs.study.placement_study import of_shapes

RAKED = {"openings__0__rough_opening": None, "openings__0__shape": {"kind": "raked", "left": "30", "right": "48"}}


def case(**paths: Any) -> Case:
    return lambda: list(of_shapes(place_windows(job_of(changed(openings__0__frame="24 x 48", **paths)))))


ROWS = [
    Row(
        code="studied-by-its-box",
        appears=case(**RAKED),
        quiet=case(openings__0__rough_opening="25 x 49"),
        inch="W1 (raked): its heat goes by the length of its edges; its sun and daylight go by the rectangle round its "
        "frame, and come out too large.",
        severity=Severity.NOTE,
        about=Subject.opening("W1"),
    ),
    Row(
        code="studied-by-its-box",
        appears=lambda: list(of_shapes([arched().kit.placement])),
        quiet=case(openings__0__rough_opening="25 x 49"),
        inch="W1 (half round): its heat goes by the length of its edges; its sun and daylight go by the rectangle "
        "round its frame, and come out too large. At the head the section through its crown is computed, for all of "
        "the arc.",
        severity=Severity.NOTE,
        about=Subject.opening("W1"),
    ),
]


@each(ROWS)
def test_it_is_said_of_shapes_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(shape_findings) == {row.code for row in ROWS}


def test_the_heat_of_a_rake_goes_by_its_edges() -> None:
    """Legs of 30 and 48, a head of 30 along 3-4-5, a sill of 24."""
    (opening,) = job_of(changed(openings__0__frame="24 x 48", **RAKED)).openings
    lengths = edge_lengths(opening)
    assert lengths == pytest.approx({SectionCut.JAMB: 78.0, SectionCut.HEAD: 30.0, SectionCut.SILL: 24.0})
