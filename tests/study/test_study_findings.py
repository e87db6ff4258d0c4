"""What keeps the heat study from giving a position, or from telling of one."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache

import finding_rows
import pytest
from cases import changed, job_of
from finding_rows import Row, codes_in, each
from refused import refused
from test_drawn_sections import STRAPPED, case_of

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.job import Job
from jambs.job.models.site import Site
from jambs.place.placement import Placement
from jambs.place.solve import place_windows
from jambs.study import findings
from jambs.study.at_position import study_at, subject_of
from jambs.study.placement_study import least_heat_loss, study_placements
from jambs.study.sweep import Studied, _refuse_jumps, least_plane

NARROW = {"windows__fixed__frame_face": "1/2"}
"""A frame 12.7 mm wide cannot hold a glazing that is 15 mm deep in its rebate."""
WHY = (
    'frame 5 13/16" deep with a face of 1/2": glazing 3/4" thick, set back 2 17/32", must lie inside its depth, and '
    "the face be over 19/32\". Check the frame's depth and the glazing's thickness."
)
WHY_MM = (
    "frame 147.6 mm deep with a face of 12.7 mm: glazing 19.1 mm thick, set back 64.3 mm, must lie inside its depth, "
    "and the face be over 15 mm. Check the frame's depth and the glazing's thickness."
)
SHALLOW = {"limits": {"least_interior_depth": "11"}}
"""No position of the wall has that much depth inside."""
PROUD = {"walls__main__layers": STRAPPED}


def said(rule: str) -> list[Statement]:
    job = job_of(changed(position=rule, **NARROW))
    try:
        return list(place_windows(job, least_heat_loss=least_heat_loss(job))[0].findings)
    except FindingsError as error:
        return list(error.findings)


def compared(**paths: str) -> Iterable[Statement]:
    """What a comparison leaves out; windows are made ready and not computed."""
    job = job_of(changed(**paths))

    def ready(group: Sequence[Placement], job: Job, site: Site) -> None:
        subject_of(group[0].opening, group[0].planes, job)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("jambs.study.placement_study._compared", ready)
        return study_placements(place_windows(job), job).left_out


@cache
def studied() -> Studied:
    return Studied(case_of(PROUD))


def at(plane: float, *, least: float) -> object:
    """Study one position where psi-values under a least one [W/mK] are not plausible."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("jambs.study.heat.cut.PLAUSIBLE", (least, 0.30))
        patch.setattr("jambs.study.at_position.PLAUSIBLE", (least, 0.30))
        return study_at(studied().subject, plane)


def jumping(most: float) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("jambs.study.sweep.JUMP", most)
        _refuse_jumps(studied(), (studied().count(8.0), studied().count(9.0)))


ROWS = [
    Row(
        code="position-not-studied",
        appears=lambda: said("least heat loss"),
        quiet=lambda: said("equal depths"),
        inch=f"wall 'main': least_heat_loss: {WHY}",
        mm=f"wall 'main': least_heat_loss: {WHY_MM}",
        severity=Severity.STOP,
        about=Subject.wall("main"),
    ),
    Row(
        code="window-not-studied",
        appears=lambda: compared(**NARROW),
        quiet=lambda: compared(windows__fixed__frame_face="5/8"),
        inch=f"fixed in wall main: {WHY}",
        mm=f"fixed in wall main: {WHY_MM}",
        severity=Severity.CHECK,
        about=Subject.wall("main"),
    ),
    Row(
        code="no-position-to-study",
        appears=refused(lambda: least_plane(Studied(case_of(SHALLOW)), 7.5, 8.0)),
        quiet=refused(lambda: least_plane(studied(), 8.0, 8.0)),
        inch="W1: it can be built at no position between these planes. Check its limits.",
        about=Subject.opening("W1"),
    ),
    Row(
        code="transmittance-not-to-be-trusted",
        appears=refused(lambda: at(8.0, least=0.05)),
        quiet=refused(lambda: at(8.0, least=-0.05)),
        inch='with the flange plane at 8" the head would have a linear thermal transmittance of -0.007 W/mK, outside '
        "0.05 to 0.3: it is not printed, and no position is chosen by it. Look at the section there",
        mm="with the flange plane at 203.2 mm the head would have a linear thermal transmittance of -0.007 W/mK, "
        "outside 0.05 to 0.3: it is not printed, and no position is chosen by it. Look at the section there",
        about=Subject.opening("W1"),
    ),
    Row(
        code="curve-jumps",
        appears=refused(lambda: jumping(0.0001)),
        quiet=refused(lambda: jumping(0.03)),
        inch="W1: the linear thermal transmittance of the head jumps from -0.007 to 0.007 W/mK between the flange "
        'planes 8" and 9"; a curve that jumps is not printed, and no position is chosen by it. Look at both sections.',
        mm="W1: the linear thermal transmittance of the head jumps from -0.007 to 0.007 W/mK between the flange "
        "planes 203.2 mm and 228.6 mm; a curve that jumps is not printed, and no position is "
        "chosen by it. Look at both sections.",
        about=Subject.opening("W1"),
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
