"""The face: everything that the program does, as functions from one stage to the next.

``read_job → Job``, ``make_kits → Kit``; from kits ``cut_sections``, ``draw``, ``templates``, ``cut_files``,
``plan_stock``; from a job ``check`` and its papers: ``build``, ``buy``, ``compare``, ``measure``, ``labels``,
``issues``. Every stage is frozen, lengths are inches, depth grows outward from the finished face inside.

The command line is made of this room alone. Each name is loaded when it is first asked for, so that what loads slowly
(drawing, the heat study, the search of cutting plans) costs nothing where it is not needed.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from typing import TYPE_CHECKING, Any

__all__ = [
    "Asked",
    "Conflict",
    "CutKit",
    "Drawing",
    "Effort",
    "InTheWay",
    "IssueRecord",
    "Job",
    "JobFaults",
    "JobThen",
    "Kit",
    "LabelStock",
    "LengthError",
    "Lot",
    "LotProgress",
    "MeasureTable",
    "PaperFolder",
    "PlacementStudy",
    "PlannedLot",
    "Progress",
    "Question",
    "Record",
    "Section",
    "Spoiled",
    "Unbuildable",
    "Units",
    "UnknownMark",
    "WrittenLabels",
    "begun",
    "build",
    "buy",
    "catalog_text",
    "check",
    "compare",
    "comparison_text",
    "cut_files",
    "cut_sections",
    "draw",
    "issues",
    "job_file",
    "job_then",
    "keys_pdf",
    "keys_text",
    "labels",
    "left_out",
    "make_kits",
    "measure",
    "new_job_text",
    "openings_to_measure",
    "output_folder",
    "outside_summary",
    "place_of",
    "plan_stock",
    "plan_text",
    "questions",
    "read_job",
    "read_length",
    "readings_in_question",
    "remarked",
    "revisions_text",
    "schema",
    "spoiled_of",
    "stale",
    "stale_after_buying",
    "steps",
    "summary",
    "tell_issue",
    "templates",
    "unprintable",
    "usual_stock",
    "withdraw",
    "write_comparison",
    "write_measure_sheets",
    "write_measure_table",
    "write_papers",
    "write_whole",
    "wrong_with",
]

if TYPE_CHECKING:
    from jambs.app.build import Asked, UnknownMark
    from jambs.app.buy import plan_text, spoiled_of
    from jambs.app.chain import Unbuildable
    from jambs.app.in_the_way import InTheWay
    from jambs.app.issue_text import revisions_text
    from jambs.app.key_text import keys_text
    from jambs.app.labels import WrittenLabels, usual_stock
    from jambs.app.lists import catalog_text
    from jambs.app.measure import (
        MeasureTable,
        openings_to_measure,
        readings_in_question,
        write_measure_sheets,
        write_measure_table,
    )
    from jambs.app.output_folder import output_folder
    from jambs.app.positions import comparison_text
    from jambs.app.revisions import JobThen, issues, job_then, tell_issue, withdraw
    from jambs.app.solid_papers import left_out
    from jambs.app.whole_file import write_whole
    from jambs.app.writing import PaperFolder, place_of
    from jambs.drawings.drawing import Drawing
    from jambs.face.papers import (
        build,
        buy,
        check,
        labels,
        measure,
        outside_summary,
        remarked,
        stale,
        stale_after_buying,
        steps,
        summary,
        write_comparison,
        write_papers,
    )
    from jambs.face.stages import compare, cut_files, cut_sections, draw, make_kits, plan_stock, templates
    from jambs.issued.findings import Conflict
    from jambs.issued.record import Record as IssueRecord
    from jambs.job import Job, JobFaults, read_job
    from jambs.job.models.job_file import schema
    from jambs.job.questions import Question, begun, questions, wrong_with
    from jambs.job.read import job_file
    from jambs.job.starter import new_job_text
    from jambs.length import LengthError, Units, read_length
    from jambs.parts.kit.cut_kit import CutKit
    from jambs.parts.kit.kit import Kit
    from jambs.section.region import Section
    from jambs.sheets.cutting_rest import Spoiled
    from jambs.sheets.key_sheet import keys_pdf
    from jambs.sheets.labels import LabelStock
    from jambs.sheets.letters import unprintable
    from jambs.stock.house.house_plan import Effort, LotProgress, PlannedLot
    from jambs.stock.house.lots import Lot
    from jambs.stock.planner import Progress
    from jambs.study.placement_study import PlacementStudy
    from jambs.values import Record

WHERE: Mapping[str, str] = {
    "Asked": "app.build",
    "Conflict": "issued.findings",
    "CutKit": "parts.kit.cut_kit",
    "Drawing": "drawings.drawing",
    "Effort": "stock.house.house_plan",
    "InTheWay": "app.in_the_way",
    "IssueRecord": "issued.record",
    "Job": "job",
    "JobFaults": "job",
    "JobThen": "app.revisions",
    "Kit": "parts.kit.kit",
    "LabelStock": "sheets.labels",
    "LengthError": "length",
    "Lot": "stock.house.lots",
    "LotProgress": "stock.house.house_plan",
    "MeasureTable": "app.measure",
    "PaperFolder": "app.writing",
    "PlacementStudy": "study.placement_study",
    "PlannedLot": "stock.house.house_plan",
    "Progress": "stock.planner",
    "Question": "job.questions",
    "Record": "values",
    "Section": "section.region",
    "Spoiled": "sheets.cutting_rest",
    "Unbuildable": "app.chain",
    "Units": "length",
    "UnknownMark": "app.build",
    "WrittenLabels": "app.labels",
    "begun": "job.questions",
    "build": "face.papers",
    "buy": "face.papers",
    "catalog_text": "app.lists",
    "check": "face.papers",
    "compare": "face.stages",
    "comparison_text": "app.positions",
    "cut_files": "face.stages",
    "cut_sections": "face.stages",
    "draw": "face.stages",
    "issues": "app.revisions",
    "job_file": "job.read",
    "job_then": "app.revisions",
    "keys_pdf": "sheets.key_sheet",
    "keys_text": "app.key_text",
    "labels": "face.papers",
    "left_out": "app.solid_papers",
    "make_kits": "face.stages",
    "measure": "face.papers",
    "new_job_text": "job.starter",
    "openings_to_measure": "app.measure",
    "output_folder": "app.output_folder",
    "outside_summary": "face.papers",
    "place_of": "app.writing",
    "plan_stock": "face.stages",
    "plan_text": "app.buy",
    "questions": "job.questions",
    "read_job": "job",
    "read_length": "length",
    "readings_in_question": "app.measure",
    "remarked": "face.papers",
    "revisions_text": "app.issue_text",
    "schema": "job.models.job_file",
    "spoiled_of": "app.buy",
    "stale": "face.papers",
    "stale_after_buying": "face.papers",
    "steps": "face.papers",
    "summary": "face.papers",
    "tell_issue": "app.revisions",
    "templates": "face.stages",
    "unprintable": "sheets.letters",
    "usual_stock": "app.labels",
    "withdraw": "app.revisions",
    "write_comparison": "face.papers",
    "write_measure_sheets": "app.measure",
    "write_measure_table": "app.measure",
    "write_papers": "face.papers",
    "write_whole": "app.whole_file",
    "wrong_with": "job.questions",
}
"""The file that each name is in."""
CALLED: Mapping[str, str] = {"IssueRecord": "Record"}
"""What a name is called there, where that is another."""


def __getattr__(name: str) -> Any:
    if name not in WHERE:
        raise AttributeError(f"the face of jambs has no {name!r}; it has {', '.join(WHERE)}")
    return getattr(import_module(f"jambs.{WHERE[name]}"), CALLED.get(name, name))
