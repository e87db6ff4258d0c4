"""The verb ``keys``: what every key of a job file means, on the terminal or on four pages with pictures."""

from __future__ import annotations

from pathlib import Path

import click


@click.command(
    epilog="\b\nExamples:\n  jambs keys\n  jambs keys windows\n  jambs keys depths        a picture of the depths\n"
    "  jambs keys --pdf keys.pdf"
)
@click.argument("word", required=False, default="")
@click.option("--pdf", type=click.Path(dir_okay=False, path_type=Path), help="Write keys and pictures, four pages.")
@click.option("--units", type=click.Choice(["inch", "mm"]), default="inch", show_default=True, help="Paper of the PDF.")
@click.option("--overwrite", is_flag=True, help="Overwrite a PDF that is there already.")
def keys(word: str, pdf: Path | None, units: str, overwrite: bool) -> None:
    """Print what the keys of a job file mean.

    With WORD, the keys and sections of that name; with depths, faces, heights, bent, clad or between, that picture.
    """
    from jambs.commands.errors import stop, told
    from jambs.face import Units, keys_text

    if pdf is not None:
        from jambs.face import keys_pdf, write_whole

        if pdf.exists() and not overwrite:
            stop([f"{pdf} is there already; name another file, or give --overwrite"])
        told(lambda: write_whole(pdf, keys_pdf(Units(units))))
        click.echo(f"{pdf} is written.")
        return
    text = keys_text(word)
    if not text:
        stop([f"no key and no section has {word!r} in its name; `jambs keys` lists all"])
    click.echo(text)
