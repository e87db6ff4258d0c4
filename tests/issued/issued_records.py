"""Records of issues made by hand from a small job, and a folder of papers to issue."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from cases import changed, job_of, strips

from jambs.app.chain import make_kits
from jambs.sheets.record import job_record


def record_of(**paths: Any) -> dict[str, Any]:
    job = job_of(changed(**paths))
    return job_record(strips(make_kits(job)), job)


def opening_of(**paths: Any) -> dict[str, Any]:
    return record_of(**paths)["openings"][0]  # type: ignore[no-any-return]


def measured(*corners: str) -> dict[str, Any]:
    names = ("head_left", "head_right", "sill_left", "sill_right")
    return {"openings__0__measured": {"date": "2026-06-01", "interior_depth": dict(zip(names, corners, strict=True))}}


def papers(folder: Path, **files: str) -> Path:
    """Write papers by name, ``W1`` is its cut sheet."""
    for name, text in files.items():
        path = folder / ("cut sheets" if name != "lists" else "") / f"{name}.pdf"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder
