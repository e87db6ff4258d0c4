"""The verb ``new``: a commented job to change, or one made from ten answers."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from jambs.face import Question


@click.command(epilog="\b\nExamples:\n  jambs new house\n  jambs new house --ask\n  jambs new cabin --units mm")
@click.argument("folder", type=click.Path(file_okay=False, path_type=Path))
@click.option("--units", type=click.Choice(["inch", "mm"]), help="Units of the job [inch].")
@click.option("--ask", "is_asked", is_flag=True, help="Ask ten questions on the terminal, and write the job from them.")
def new(folder: Path, units: str | None, is_asked: bool) -> None:
    """Write a commented job.yaml into FOLDER, to change."""
    from jambs.commands.errors import stop, told
    from jambs.face import Units, new_job_text, write_whole

    file = folder / "job.yaml"
    if file.exists():
        stop([f"{file} is there already; name another folder, or remove it"])
    text = _asked(units) if is_asked else new_job_text(Units(units or Units.INCH))
    told(lambda: folder.mkdir(parents=True, exist_ok=True))
    told(lambda: write_whole(file, text.encode()))
    click.echo(f"{file} is written. Change what differs on your house, then: jambs check {folder}")


def _asked(units: str | None) -> str:
    """Ask the ten questions; each again until its answer can be read."""
    from jambs.face import Units, begun, questions

    count = len(questions(Units.INCH)) + 2
    click.echo(
        f"{count} questions; Ctrl-C stops, and nothing is written. An answer that cannot be read is asked for again.\n"
    )
    name = _prompt(1, count, "What is the job called?", "As printed on every sheet", default="My first house")
    either = click.Choice(["inch", "mm"])
    chosen = Units(units or click.prompt(f"\n2/{count}  Inches or millimeters?", type=either, default="inch"))
    text = begun(name, chosen)
    for number, question in enumerate(questions(chosen), start=3):
        text = _answered(text, question, number, count)
    return text


def _answered(text: str, question: Question, number: int, count: int) -> str:
    from jambs.face import wrong_with

    while True:
        answer = _prompt(number, count, question.ask, question.help)
        written = question.fill(text, answer)
        wrong = wrong_with(written)
        if not wrong:
            return written
        click.echo("\n".join(f"  {sentence}" for sentence in wrong))


def _prompt(number: int, count: int, ask: str, help_text: str, default: str | None = None) -> str:
    lines = textwrap.wrap(help_text, 94)
    click.echo("\n      ".join([f"\n{number}/{count}  {ask}", *lines]))
    usual = default or ""
    while not (
        said := str(click.prompt("     ", prompt_suffix=" > ", default=usual, show_default=bool(usual))).strip()
    ):
        click.echo("      An answer is needed: nothing usual can stand in for it.")
    return said
