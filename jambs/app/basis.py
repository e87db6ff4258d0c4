"""What the papers of a job are made from at present, group by group, as ``issued/basis.py`` compares it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from jambs.drawings.views.key_plan import key_plan, side_of_house
from jambs.issued.basis import (
    AROUND,
    COMPARED,
    DIGITS,
    HOUSE,
    LABELS,
    PARTS,
    PLACES,
    SHAPES,
    SHEETS,
    SHOP,
    SITE,
    Basis,
    digest,
)
from jambs.issued.old_labels import is_of_crew
from jambs.issued.plan import opening_keys, shape_keys
from jambs.job import Job
from jambs.job.models.fields import Model
from jambs.job.models.openings import Opening
from jambs.length import Grid
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import marks_of_planned
from jambs.place.placement import Placement
from jambs.sheets.labels import label_data
from jambs.sheets.measure_sheet import planned_texts
from jambs.sheets.record import job_record
from jambs.values import Record, as_sawn

SAWN = ("width", "length", "taper", "strips", "cuts", "glue_up", "courses")
TOLD = ("mark", "name", "position", "stock", "thickness", "ends")
"""What a cutting plan saws of a part, and what it tells of it. Not its board: that one the plan decides."""
NO_PRICE: Record = {"prices": (), "price_per_foot": None, "source": ""}
OF_THE_JOB, BOARDS, SAW, PRICES = "settings of the job", "boards", "settings of the saw", "prices"


def placed_basis(placements: Sequence[Placement], job: Job) -> Basis:
    """Return the groups that are known as soon as the windows are placed."""
    return {
        PLACES: {one.opening.mark: digest(_place(one, job)) for one in placements},
        COMPARED: {one.opening.mark: digest(_compared(one)) for one in placements},
        SITE: {"site": digest([_stated(job.site), _stated(job.limits)])},
        SHOP: shop_basis(job),
    }


def basis_of(kits: Sequence[CutKit], job: Job, printed: Mapping[str, Any]) -> Basis:
    """Return the whole basis. ``printed``: what the sheets of all openings print."""
    openings, planned = printed["openings"], marks_of_planned(kits)
    labels = {
        part["mark"]: [
            label_data(each, room=one["room"], is_planned=part["mark"] in planned)
            for each in (part, *part.get("members", ()))
        ]
        for one, part in _parts(openings)
        if not is_of_crew(part)
    }
    return {
        **placed_basis([kit.placement for kit in kits], job),
        SHEETS: {mark: key[:DIGITS] for mark, key in opening_keys(printed).items()},
        SHAPES: {mark: key[:DIGITS] for mark, key in shape_keys(printed).items()},
        AROUND: {kit.mark: digest(_around(kit, job)) for kit in kits},
        HOUSE: {OF_THE_JOB: digest(_house(job))},
        PARTS: parts_basis(openings, planned, grid=job.shop.grid),
        LABELS: {mark: digest([job.name, *label]) for mark, label in labels.items()},
    }


def bought_basis(kits: Sequence[Kit], job: Job) -> Basis:
    """Return the groups that a cutting plan depends on; the outside, of which nothing is sawn, need not be planned."""
    cut = [as_cut(kit, PlannedForKit()) for kit in kits]
    openings = job_record(cut, job)["openings"]
    return {PARTS: parts_basis(openings, marks_of_planned(cut), grid=job.shop.grid), SHOP: shop_basis(job)}


def parts_basis(openings: Iterable[Record], planned: Collection[str], *, grid: Grid) -> Mapping[str, str]:
    """Return what a cutting plan takes from each wooden part, by its mark; ``planned``: those that may still change."""
    return {
        part["mark"]: digest(_sawn(part, grid, is_planned=part["mark"] in planned))
        for _, part in _parts(openings)
        if part["is_wood"] or "courses" in part
    }


def _parts(openings: Iterable[Record]) -> list[tuple[Record, Record]]:
    return [(one, part) for one in openings for part in one["parts"]]


def _sawn(part: Record, grid: Grid, *, is_planned: bool) -> Record:
    told: Record = {name: part[name] for name in TOLD if name in part}
    sawn = {name: as_sawn(part[name], grid=grid) for name in SAWN if name in part}
    if "members" in part:
        sawn["members"] = [_sawn(one, grid, is_planned=is_planned) for one in part["members"]]
    return {"planned": is_planned, **told, **sawn}


def _place(placement: Placement, job: Job) -> list[Any]:
    """What a measure sheet prints without the readings that are entered later."""
    opening = placement.opening
    planned = {str(number): text for number, text in planned_texts(placement, job).items()}
    return [job.name, opening.room, opening.window_name, opening.wall.name, planned]


def _around(kit: CutKit, job: Job) -> list[Any]:
    """What papers of an opening may show beside what they tell: more than they do, as no list of that is complete."""
    opening = kit.placement.opening
    trimmed = opening.run.marks if opening.run else (opening.mark,)
    shown = [_unread(one) for one in job.openings if one.mark in trimmed]
    return [*_settings(job), side_of_house(opening, job), repr(key_plan(opening, job, kit.run)), *shown]


def _compared(placement: Placement) -> str:
    return f"{_unread(placement.opening)} {placement.flange_plane!r}"


def _unread(opening: Opening) -> str:
    """An opening as it is stated, without what was read on site."""
    return repr(replace(opening, measured=None, readings=None))


def _house(job: Job) -> list[Any]:
    """What lists of the whole house print of the job beside its openings."""
    return [job.name, str(job.date), repr(job.units), repr(job.assumed), *_settings(job)]


def _settings(job: Job) -> list[str]:
    """Settings of the site, the outside and the shop, but what is bought and for how much."""
    shop = job.shop.model_copy(update={"boards": (), "on_hand": (), "spares": None, "currency": ""})
    return [_stated(one) for one in (job.site, job.outside, shop)]


def _stated(settings: Model | None) -> str:
    """Settings as far as they are stated, so that papers stay when a later version has a key more."""
    return repr(settings and settings.model_dump(exclude_defaults=True))


def shop_basis(job: Job) -> dict[str, str]:
    """What a cutting plan takes from the shop, told apart: boards that were bought stay, whatever they cost now."""
    shop = job.shop
    boards = [repr(one.model_copy(update=NO_PRICE)) for one in job.boards]
    saw = [shop.kerf, shop.rip_kerf, shop.edge_allowance, shop.far_edge_allowance, shop.end_trim, shop.least_strip]
    nested = ["head to tail"] if shop.head_to_tail else []  # where it is left out, plans from before it hold
    wanted = [shop.planned_allowance, shop.spares, repr(shop.least_drop), repr(shop.grid)]
    return {
        BOARDS: digest([*boards, repr(job.on_hand)]),
        SAW: digest([*saw, *wanted, *nested]),
        PRICES: digest([shop.currency, *(repr((one.prices, one.price_per_foot)) for one in job.boards)]),
    }
