"""What papers are made from: they hold until something is stated otherwise, not until a version has one key more."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of

from jambs.app.basis import basis_of
from jambs.issued.basis import HOUSE, SITE, Basis
from jambs.job.models.openings import Job
from jambs.job.models.shop import Limits, Shop


class LaterShop(Shop):
    """The shop of a later version, with a key that no job of today has."""

    sanding_belts: int = 3


class LaterLimits(Limits):
    """The limits of a later version."""

    most_views: int = 3


def house(job: Job) -> Basis:
    found = basis_of((), job, {"openings": (), "job": {"name": job.name}, "units": "", "grid": ""})
    return {name: found[name] for name in (HOUSE, SITE)}


def later(job: Job, **stated: Any) -> Job:
    shop = LaterShop.model_construct(**{**job.shop.__dict__, "sanding_belts": 3, **stated})
    return replace(job, shop=shop, limits=LaterLimits.model_construct(**job.limits.__dict__, most_views=3))


def test_a_later_version_with_more_keys_leaves_papers_as_they_are() -> None:
    job = job_of(changed())
    assert house(later(job)) == house(job)


@pytest.mark.parametrize("stated", [{"sanding_belts": 4}, {"large_drawings": True}])
def test_what_is_stated_counts(stated: dict[str, Any]) -> None:
    job = job_of(changed())
    assert house(later(job, **stated))[HOUSE] != house(job)[HOUSE]
    assert house(later(job, **stated))[SITE] == house(job)[SITE]
