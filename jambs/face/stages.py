"""From one stage to the next: job, kits, sections, drawing, templates, cut files, cutting plan, comparison."""

from __future__ import annotations

import datetime
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from jambs.app.chain import Unbuildable, kits_as_cut
from jambs.issue_stamp import IssueStamp
from jambs.job import Job
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Kit

if TYPE_CHECKING:
    from jambs.drawings.drawing import Drawing
    from jambs.section.region import Section
    from jambs.stock.house.house_plan import PlannedLot
    from jambs.study.placement_study import PlacementStudy


def make_kits(job: Job, *, papers: str | Path | None = None) -> tuple[CutKit, ...]:
    """Place every window of a job and make its parts, as the cut sheets have them.

    ``papers``: the folder that ``build`` writes into; its record has given marks and knows what readings were taken of.
    Without it marks count from 1 and every reading is believed.

    One kit for each opening, in the order of the job. ``kit.placement``: where the window stands [in from the finished
    face]; ``kit.parts``: every board, its kind, sizes and cuts [in]; ``kit.findings``: what to look out for.

    Raises:
        Unbuildable: some opening cannot be placed or made; ``sentences`` has one for each.
    """
    if papers is None:
        return kits_as_cut(job)
    from jambs.face.papers import check

    return check(job, papers).kits


def cut_sections(kit: Kit) -> tuple[Section, ...]:
    """Cut a kit in its wall through head, jamb and sill (a door on the floor has no sill cut).

    Each section is a list of named material regions with outlines [in]: what the shop drawing shows and the heat study
    computes.
    """
    from jambs.section.cut import cut_sections as cut

    return cut(kit)


def draw(kit: CutKit, job: Job, *, day: datetime.date | None = None) -> Drawing:
    """Draw one opening: elevations, sections, details, parts table, laid out on both sizes of paper.

    ``day``: the date in the title block, which says that it is not issued; the job's, else today's.
    ``jambs.drawings`` writes it as DXF (``write_dxf``, ``write_flat_dxf``) or shows a page as SVG (``page_svg``).
    """
    from jambs.drawings import draw_opening
    from jambs.section.cut import sections_to_draw

    dated = day or job.date or datetime.date.today()
    return draw_opening(kit, sections_to_draw(kit), job, issue=IssueStamp(number=0, day=dated.isoformat(), code=""))


def plan_stock(kits: Iterable[Kit], job: Job, *, seconds: float = 10.0) -> tuple[PlannedLot, ...]:
    """Plan what to buy and how to cut it, for all wooden parts of some kits.

    One lot for each material and way of cutting; ``lot.plan`` has its boards, its cost in cents and a bound that no
    plan can be under. ``seconds``: time to search, for the whole house [s].

    Raises:
        Unbuildable: a part fits no board, or the supply of boards runs out.
    """
    from jambs.stock.house.house_plan import Effort, plan_house
    from jambs.stock.house.lot_faults import lot_faults
    from jambs.stock.house.lots import house_lots
    from jambs.stock.problem import StockFault

    lots = house_lots(kits, job)
    if faults := lot_faults(lots, job.units):
        raise Unbuildable(*(one.sentence(job.units) for one in faults))
    try:
        return plan_house(lots, Effort(seconds=seconds))
    except StockFault as fault:
        raise Unbuildable(*fault.sentences(job.units)) from None


def compare(job: Job) -> PlacementStudy:
    """Compare the positions the windows of a job could have: depths [in], heat [W/K, W/mK], condensation, sun.

    ``windows`` has one comparison for each window type in each wall, with its candidates side by side; no score.

    Raises:
        Unbuildable: some window cannot be placed.
    """
    from jambs.app.chain import placed
    from jambs.study.placement_study import least_heat_loss, study_placements

    return study_placements(placed(job, least_heat_loss(job)), job)


def templates(kit: CutKit, job: Job, path: str | Path) -> Path | None:
    """Write the full-scale templates of an opening (horns, notches, arcs, sill ends) as a PDF, and return its path.

    Nothing where no part of it needs one. The paper is the shop's; a bar on each page shows whether it was printed 1:1.
    """
    from jambs.sheets.template_pages import write_templates

    write_templates(kit, job, Path(path))
    return Path(path) if Path(path).exists() else None


def cut_files(kit: CutKit, job: Job, folder: str | Path, *, all_parts: bool = False) -> tuple[Path, ...]:
    """Write the cut files (DXF, 1:1, in the job's units) of an opening into ``folder/cut files``; return their paths.

    Of the parts that have a shape; ``all_parts``: of all parts of wood.
    """
    from jambs.app.cut_file_papers import FOLDER, write_cut_files

    place = Path(folder) / FOLDER
    before = {*place.glob("*.dxf")}
    write_cut_files(kit, job, Path(folder), all_parts=all_parts)
    return tuple(sorted({*place.glob("*.dxf")} - before))
