"""The argument JOB of every verb: a job file or its folder; left out, the folder one stands in."""

from __future__ import annotations

from pathlib import Path

import click

JOB_NAMES = ("*.yaml", "*.yml")


def _or_here(context: click.Context, parameter: click.Parameter, job: Path | None) -> Path:
    if job is not None:
        return job
    here = Path()
    if not any(file for pattern in JOB_NAMES for file in here.glob(pattern)):
        raise click.UsageError(
            f"No JOB is named, and this folder holds no job file. Name one, like: {context.command_path} house",
            ctx=context,
        )
    return here


JOB = click.argument("job", required=False, type=click.Path(exists=True, path_type=Path), callback=_or_here)
