"""The parts table and the notes, as views of lines and texts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from jambs.drawings.elements.boxes import Box, boxes_joined
from jambs.drawings.elements.lettering import text_width, wrapped
from jambs.drawings.elements.paper import (
    BOLD_IS_WIDER,
    DESCENDER,
    LINE_PITCH,
    MARK_HEIGHT,
    TEXT_HEIGHT,
    TITLE_HEIGHT,
    Scale,
)
from jambs.drawings.elements.placed import Align, Lettering, PlacedView, Rule
from jambs.drawings.elements.view import Ink, ViewKind
from jambs.drawings.views.details import is_told_in_words
from jambs.drawings.views.words import sawn_first
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.cuts import Miter
from jambs.parts.board.kinds import member_words, told_name
from jambs.parts.board.part import Part
from jambs.parts.words.alike_words import is_piece, mark_lines, piece_form, piece_place, places_words
from jambs.parts.words.cut_words import board_words, work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.glue_words import glue_words
from jambs.parts.words.panel_words import member_sizes, member_work_in_short
from jambs.parts.words.ply_words import strips_first
from jambs.sides import Side

WIDTHS = (1.16, 2.12, 1.2, 1.8, 0.5)
"""Greatest columns of the parts table, the first for the marks of two legs [in on paper]."""
LEGS = "legs"
"""Where two parts are that are cut alike, but for left and right."""
HEADS = ("mark", "part", "stock", "thick × wide × long", "ends")
SQUARE, DETAIL, BEVEL, MITER = "square", "detail", "bevel", "miter"
"""Both ends cut square off; see the detail of the part; an end cut through the thickness, or across the face."""
PAD = 0.04
"""Beside what stands in a cell [in on paper]."""
OVER = 0.03
"""Over and under it [in on paper]."""
NOTE_WIDTHS = (4.6, 3.1)
"""Of the notes [in on paper]: wide they are low, narrow they stand beside a section."""


@dataclass(frozen=True, slots=True)
class _Cell:
    lines: tuple[str, ...]
    bold: bool = False

    @property
    def width(self) -> float:
        """Width of its widest line [in on paper]."""
        return max((text_width(line, height=TEXT_HEIGHT, bold=self.bold) for line in self.lines), default=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """The parts of a row, their cells, and below them, across all columns but the first, what else is done to it."""

    of: tuple[Part, ...] = ()
    cells: tuple[_Cell, ...]
    more: _Cell = _Cell(())

    @property
    def told(self) -> tuple[tuple[str, ...], ...]:
        """What it says beside mark and place."""
        return (*(cell.lines for cell in self.cells[2:]), self.more.lines)

    @property
    def tall(self) -> float:
        """Its height [in on paper]."""
        return _tall(self.cells) + (_tall((self.more,)) if self.more.lines else 0.0)


def parts_tables(parts: Sequence[Part], *, grid: Grid, scale: Scale, tallest: float) -> list[PlacedView]:
    """Make the parts table, broken into as many pieces as the ``tallest`` height on paper asks for."""
    widths = _as_needed(_rows(parts, grid, WIDTHS))
    rows = _rows(parts, grid, widths)
    pieces: list[list[_Row]] = []
    free = 0.0
    for row in rows:
        if not pieces or free < row.tall:
            pieces.append([])
            free = tallest * TEXT_HEIGHT / scale.text - 0.75
        pieces[-1].append(row)
        free -= row.tall
    return [_table(piece, widths, number, len(pieces), scale) for number, piece in enumerate(pieces, start=1)]


def _as_needed(rows: Sequence[_Row]) -> tuple[float, ...]:
    """Return the width of each column that its widest word or line asks for, heads too [in on paper]."""
    columns = zip(_heads().cells, *(row.cells for row in rows), strict=True)
    return tuple(max(cell.width for cell in column) + 2 * PAD for column in columns)


def _heads() -> _Row:
    return _Row(cells=tuple(_Cell((head,), bold=True) for head in HEADS))


def _rows(parts: Sequence[Part], grid: Grid, widths: Sequence[float]) -> list[_Row]:
    """Make a row of each part; two legs that follow each other share one, and so do pieces round a shape."""
    rows: list[_Row] = []
    for some in _alike(parts, grid, widths):
        part, row = some[0], _row(some[0], grid, widths, others=some[1:])
        last = rows[-1].of[-1] if rows else None
        if last and len(rows[-1].of) == 1 and _are_legs(last, part) and rows[-1].told == row.told:
            row = _row(last, grid, widths, others=(part,))
            rows.pop()
        rows.append(row)
    return [*rows, *_member_rows(parts, grid, widths)]


def _alike(parts: Sequence[Part], grid: Grid, widths: Sequence[float]) -> list[list[Part]]:
    """Return the parts of each row: pieces round a shape that are sawn and told alike, any other part by itself."""
    rows: dict[object, list[Part]] = {}
    for part in parts:
        told = (piece_form(part), _row(part, grid, widths).told) if is_piece(part) else part.mark
        rows.setdefault(told, []).append(part)
    return list(rows.values())


def _member_rows(parts: Sequence[Part], grid: Grid, widths: Sequence[float]) -> list[_Row]:
    """Make a row of each kind of stile, rail and panel that is sawn alike; the last has the sizes of their joints."""
    alike: dict[tuple[str, ...], list[Part]] = {}
    for part in parts:
        for one in part.frame_members:
            told = (sawn_first(one, grid=grid), board_words(one, units=grid.units), *member_work_in_short(one))
            alike.setdefault((one.kind.words, *told), []).append(one)
    if not alike:
        return []
    rows = [_member_row(some, grid, widths) for some in alike.values()]
    sizes = {what: size for part in parts for what, size in member_sizes(part, grid).items()}
    joints = "; ".join(f"{what}: {size}" for what, size in sizes.items())
    last = _Cell((*rows[-1].more.lines, *wrapped(joints, width=_beside_mark(widths), height=TEXT_HEIGHT)))
    return [*rows[:-1], replace(rows[-1], more=last)]


def _member_row(some: Sequence[Part], grid: Grid, widths: Sequence[float]) -> _Row:
    """Make the row of members that are sawn alike: of a jamb's the letters alone follow its first one's mark."""
    one = some[0]
    marks = ", ".join(f"{jamb}{', '.join(part.mark[-1] for part in own)}" for jamb, own in groupby(some, _jamb_mark))
    places = dict.fromkeys(member_words(part.kind, part.member, part.members) for part in some)
    name, board = f"{one.kind.words}{''.join(places)}", board_words(one, units=grid.units)
    texts = (marks, name, board, sawn_first(one, grid=grid), SQUARE)
    work = "; ".join(member_work_in_short(one))
    lines = wrapped(work, width=_beside_mark(widths), height=TEXT_HEIGHT) if work else ()
    return _Row(of=tuple(some), cells=_cells(texts, widths), more=_Cell(tuple(lines)))


def _jamb_mark(member: Part) -> str:
    return member.mark[:-1]


def _cells(texts: Sequence[str], widths: Sequence[float]) -> tuple[_Cell, ...]:
    """Break the texts of a row for its columns; the first is bold."""
    return tuple(
        _Cell(tuple(wrapped(text, width=width - 2 * PAD + ROUND_OFF, height=TEXT_HEIGHT)), bold=number == 0)
        for number, (text, width) in enumerate(zip(texts, widths, strict=True))
    )


def _are_legs(one: Part, two: Part) -> bool:
    """Say whether two parts are the same board at the left and at the right."""
    sides = {one.side, two.side}
    is_same = (one.kind, one.where, one.member, one.runs) == (two.kind, two.where, two.member, two.runs)
    return sides == {Side.LEFT, Side.RIGHT} and is_same and one.runs is None and not one.kind.is_between_units


def _row(part: Part, grid: Grid, widths: Sequence[float], *, others: Sequence[Part] = ()) -> _Row:
    """Make the row of a part, or of several that are cut alike."""
    size = sawn_first(part, grid=grid)
    some = (part, *others)
    mark, told = ", ".join(one.mark for one in some), _told(some)
    if is_piece(part):
        mark = " ".join(mark_lines([one.mark for one in some]))
    texts = (mark, told, board_words(part, units=grid.units), size, _ends(part))
    # Of bent metal there is more to say than that its ends are square: end dams, miters in the flat.
    ends = [] if part.is_plain and not part.blank.is_metal else [ends_words(part, grid=grid)]
    done = [*ends, *work_words(part, grid=grid)] if is_told_in_words(part) else []
    strips = [strips_first(part, grid)] if part.is_laminated and part.strips else []
    words = "; ".join(filter(None, [*strips, *done, glue_words(part, grid=grid)]))
    lines = wrapped(words, width=_beside_mark(widths), height=TEXT_HEIGHT) if words else []
    return _Row(of=some, cells=_cells(texts, widths), more=_Cell(tuple(lines)))


def _told(some: Sequence[Part]) -> str:
    """Say what the parts of a row are and where: one, pieces round a shape, or two legs."""
    part = some[0]
    name = told_name(part.name, part.where.value)
    if len(some) == 1:
        return part.told
    if is_piece(part):
        return f"{name}, {places_words([piece_place(one) for one in some])}"
    return f"{name}, {LEGS}{member_words(part.kind, part.member, part.members)}"


def _ends(part: Part) -> str:
    """Say in a word how the ends of a part are cut, or that its detail shows it."""
    if not is_told_in_words(part):
        return DETAIL
    if part.is_plain:
        return SQUARE
    return MITER if any(isinstance(cut, Miter) for cut in part.cuts) else BEVEL


def _beside_mark(widths: Sequence[float]) -> float:
    """Width of all columns but the first, for words [in on paper]."""
    return sum(widths[1:]) - 2 * PAD


def _tall(row: Sequence[_Cell]) -> float:
    lines = max(len(cell.lines) for cell in row)
    return TEXT_HEIGHT * (1 + LINE_PITCH * (lines - 1) + DESCENDER) + 2 * OVER


def _table(rows: Sequence[_Row], widths: Sequence[float], number: int, count: int, scale: Scale) -> PlacedView:
    title = "Parts" if count == 1 else f"Parts {number} of {count}"
    texts = [_title(title)]
    width, top = sum(widths), -0.1
    edges = [sum(widths[:column]) for column in range(len(widths) + 1)]
    levels = [top]
    lines = []
    for row in (_heads(), *rows):
        level, low = levels[-1], levels[-1] - _tall(row.cells)
        texts += [_cell_text(cell, left + PAD, level - OVER) for cell, left in zip(row.cells, edges, strict=False)]
        levels.append(level - row.tall)
        lines += [((edge, level), (edge, low if row.more.lines else levels[-1])) for edge in edges[2:-1]]
        if row.more.lines:
            texts.append(_cell_text(row.more, edges[1] + PAD, low - OVER))
    lines += [((0.0, level), (width, level)) for level in levels]
    lines += [((edge, levels[0]), (edge, levels[-1])) for edge in (*edges[:2], edges[-1])]
    name = "parts" if number == 1 else f"parts {number}"
    return _sheet(ViewKind.PARTS, name, title, texts, lines, scale)


def _title(title: str) -> Lettering:
    return Lettering(
        lines=(title,), at=(0.0, TITLE_HEIGHT / 2), height=TITLE_HEIGHT, align=Align.LEFT, bold=True, ink=Ink.TITLE
    )


def _cell_text(cell: _Cell, left: float, top: float) -> Lettering:
    lines = cell.lines or ("",)
    tall = TEXT_HEIGHT * (1 + LINE_PITCH * (len(lines) - 1))
    return Lettering(lines=lines, at=(left, top - tall / 2), height=TEXT_HEIGHT, align=Align.LEFT, bold=cell.bold)


def notes_view(paragraphs: Sequence[str], *, warning: str, scale: Scale, width: float = NOTE_WIDTHS[0]) -> PlacedView:
    """Make the notes, so wide on paper: a warning in a frame where there is one, then one paragraph each."""
    texts = [_title("Notes")]
    lines = []
    level = -0.12
    if warning:
        said = tuple(wrapped(warning, width=(width - 4 * PAD) / BOLD_IS_WIDER, height=MARK_HEIGHT))
        box = Box(0.0, level - 0.34 - (len(said) - 1) * LINE_PITCH * MARK_HEIGHT, width, level)
        texts.append(Lettering(lines=said, at=box.center, height=MARK_HEIGHT, bold=True))
        corners = ((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top))
        lines = list(zip(corners, (*corners[1:], corners[0]), strict=True))
        level = box.bottom - 0.1
    for paragraph in paragraphs:
        cell = _Cell(tuple(wrapped(paragraph, width=width, height=TEXT_HEIGHT)))
        text = _cell_text(cell, 0.0, level)
        texts.append(text)
        level = text.at[1] - text.tall / 2 - 0.08
    return _sheet(ViewKind.NOTES, "notes", "Notes", texts, lines, scale)


def _sheet(
    kind: ViewKind,
    name: str,
    title: str,
    texts: Sequence[Lettering],
    lines: Sequence[tuple[tuple[float, float], tuple[float, float]]],
    scale: Scale,
) -> PlacedView:
    """Turn texts and lines in paper inches into a view at a scale; they grow with the lettering of its drawing."""
    factor = scale.factor * scale.text / TEXT_HEIGHT
    scaled = [
        Lettering(
            lines=text.lines,
            at=(text.at[0] * factor, text.at[1] * factor),
            height=text.height * factor,
            align=text.align,
            bold=text.bold,
            ink=text.ink,
        )
        for text in texts
        if any(text.lines)
    ]
    rules = [Rule(segment=((x0 * factor, y0 * factor), (x1 * factor, y1 * factor))) for (x0, y0), (x1, y1) in lines]
    boxes = [text.box for text in scaled] + [
        Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)) for ((x0, y0), (x1, y1)) in (r.segment for r in rules)
    ]
    return PlacedView(
        name=name,
        title=title,
        kind=kind,
        scale=scale,
        texts=tuple(scaled),
        rules=tuple(rules),
        box=boxes_joined(boxes).grown(0.05 * factor),
    )
