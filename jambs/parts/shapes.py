"""Outlines and profiles of boards, and the part made from them. Board coordinates (u, v) and (v, w) [in]."""

from __future__ import annotations

from jambs.job.models.openings import Job
from jambs.parts.boards import board_for
from jambs.parts.part import Cut, Part, Pocket, Point, Seat, Where


class CannotBeCut(ValueError):
    """A part that cannot be cut as asked; the message says what was found and what to do."""


Outline = tuple[Point, ...]


def plain(length: float, width: float) -> Outline:
    """Return a square-ended board's outline."""
    return ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))


def tapered(length: float, start_width: float, finish_width: float) -> Outline:
    """Return the outline of a square-ended board whose far edge runs from one width to another."""
    return ((0.0, 0.0), (length, 0.0), (length, finish_width), (0.0, start_width))


def trapezoid(near: tuple[float, float], far: tuple[float, float], width: float) -> Outline:
    """Return the outline of a board with angled ends: u of the start and finish on the near and on the far edge."""
    return ((near[0], 0.0), (near[1], 0.0), (far[1], width), (far[0], width))


def square_profile(width: float, thickness: float) -> Outline:
    """Return the profile of a board with square edges."""
    return ((0.0, 0.0), (width, 0.0), (width, thickness), (0.0, thickness))


def make_part(
    name: str,
    position: str,
    where: Where,
    *,
    job: Job,
    stock: str,
    thickness: float,
    outline: Outline,
    cuts: tuple[Cut, ...],
    ends: str,
    seat: Seat,
    work: tuple[str, ...] = (),
    profile: Outline | None = None,
    pockets: tuple[Pocket, ...] = (),
) -> Part:
    """Make a part from its outline; width, length and board follow. It gets its mark when the kit is complete."""
    width = max(v for _, v in outline)
    source = board_for(stock, thickness=thickness, width=width, job=job)
    return Part(
        mark="",
        name=name,
        position=position,
        where=where,
        stock=stock,
        board=source.board,
        thickness=thickness,
        width=width,
        length=max(u for u, _ in outline),
        outline=outline,
        profile=profile or square_profile(width, thickness),
        pockets=pockets,
        cuts=cuts,
        ends=ends,
        work=work,
        strips=source.strips,
        seat=seat,
    )
