"""``jambs labels``: one label a part, on label stock given by its own measures."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from jambs.commands.job_argument import JOB

if TYPE_CHECKING:
    from jambs.face import LabelStock, Units

SIZES = {
    "label": ("width", "height"),
    "corner": ("left", "top"),
    "pitch": ("pitch_across", "pitch_down"),
}


@click.command(
    epilog="\b\nExamples:\n  jambs labels house\n  jambs labels house --by cutting --first 7\n"
    '  jambs labels house --count 2x6 --label "3 1/2 x 1 1/2" --corner "1/2 x 3/4" --pitch "4 x 1 5/8"'
)
@JOB
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), help="Output folder [output/<job>].")
@click.option("--by", type=click.Choice(["opening", "cutting"]), default="opening", show_default=True, help="Order.")
@click.option("--paper", type=click.Choice(["letter", "A4"]), help="Of the label stock [the shop's].")
@click.option("--count", metavar="ACROSSxDOWN", help="Labels on a sheet, like 3x10.")
@click.option("--label", metavar="SIZE", help="Width x height of a label.")
@click.option("--corner", metavar="SIZE", help="Margins to the first label: left x top.")
@click.option("--pitch", metavar="SIZE", help="From one label to the next: across x down.")
@click.option("--first", type=click.IntRange(1), default=1, show_default=True, help="First label still on the sheet.")
@click.option("--overwrite", is_flag=True, help="Overwrite sheets that were changed since they were written.")
def labels(
    job: Path,
    out: Path | None,
    by: str,
    paper: str | None,
    count: str | None,
    label: str | None,
    corner: str | None,
    pitch: str | None,
    first: int,
    overwrite: bool,
) -> None:
    """Print a label for every part of JOB."""
    from jambs.commands.errors import read, told
    from jambs.face import labels as write_labels
    from jambs.face import output_folder, usual_stock

    found = read(job)
    stock = _stock(usual_stock(found, paper), count, found.units, {"label": label, "corner": corner, "pitch": pitch})
    target = out or told(lambda: output_folder(job))
    written = told(
        lambda: write_labels(found, target, stock=stock, by_cutting=by == "cutting", first=first, overwrite=overwrite)
    )
    click.echo("\n".join([*map(str, written.files), f"{written.count} labels", *written.sentences]))


def _stock(stock: LabelStock, count: str | None, units: Units, sizes: dict[str, str | None]) -> LabelStock:
    from dataclasses import replace  # not needed for ``--help``

    changes: dict[str, float] = {}
    if count:
        changes |= dict(zip(("across", "down"), _count(count), strict=True))
    for option, names in SIZES.items():
        if text := sizes[option]:
            changes |= dict(zip(names, _size(text, option, units), strict=True))
    return replace(stock, **changes)  # type: ignore[arg-type]


def _count(text: str) -> tuple[int, int]:
    across, _, down = text.lower().partition("x")
    if not (across.strip().isdigit() and down.strip().isdigit() and int(across) and int(down)):
        raise click.BadParameter(f"{text!r} is not a count; write across x down, like 3x10", param_hint="'--count'")
    return int(across), int(down)


def _size(text: str, option: str, units: Units) -> tuple[float, float]:
    from jambs.face import LengthError, read_length

    try:
        halves = text.lower().replace("×", "x").split("x")
        one, other = (read_length(half, units=units, is_taped=False) for half in halves)
    except (LengthError, ValueError):
        message = f"{text!r} is not a size; write it like 2 5/8 x 1 or 70 mm x 36 mm"
        raise click.BadParameter(message, param_hint=f"'--{option}'") from None
    return one, other
