"""The program: the verbs of the command line and, beside them, the page.

``python -m jambs`` is the same as ``jambs``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from jambs.commands.start import run as start

if TYPE_CHECKING:
    import click


def program() -> click.Group:
    """Return all verbs; neither room of the top floor knows the other, so they meet here."""
    from jambs.commands.command_line import main
    from jambs.page.open_command import open_page

    main.add_command(open_page)
    return main


def run(called: str = "jambs") -> None:
    """Run with the words of the command line."""
    start(program, called)


if __name__ == "__main__":
    run("python -m jambs")
