"""The title block: a strip along the lower edge of a page, as a block with attributes."""

from __future__ import annotations

from dataclasses import dataclass

from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.layout import Paperspace

from jambs.drawings.drawing import Drawing, Sheet
from jambs.drawings.dxf.document import BOLD_STYLE, STYLE
from jambs.drawings.layout.boxes import Segment
from jambs.drawings.layout.lettering import text_width
from jambs.drawings.layout.packing import STRIP
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.placed import Align, Lettering
from jambs.drawings.views.view import Ink
from jambs.issue_stamp import IssueStamp
from jambs.length import Units

LABEL_HEIGHT = 0.07


@dataclass(frozen=True, slots=True, kw_only=True)
class TitleField:
    """A field of the title block: tag, label, share of the strip's width; height and level of its value on paper."""

    tag: str
    label: str
    share: float
    height: float = 0.12
    level: float = 0.26


FIELDS = (
    TitleField(tag="JOB", label="JOB", share=0.14),
    TitleField(tag="OPENING", label="OPENING", share=0.09, height=0.2),
    TitleField(tag="ROOM", label="ROOM", share=0.12),
    TitleField(tag="STATE", label="STATE OF THE DEPTHS", share=0.21),
    TitleField(tag="CAUTION", label="", share=0.0, height=0.08, level=0.1),
    TitleField(tag="SCALE", label="SCALE", share=0.07),
    TitleField(tag="UNITS", label="UNITS", share=0.06),
    TitleField(tag="SHEET", label="SHEET", share=0.06),
    TitleField(tag="ISSUE", label="ISSUE", share=0.09, height=0.2),
    TitleField(tag="REPLACES", label="", share=0.0, height=0.08, level=0.1),
    TitleField(tag="CODE", label="CODE", share=0.06),
    TitleField(tag="DATE", label="ISSUED", share=0.1),
    TitleField(tag="MEASURED", label="", share=0.0, height=0.08, level=0.1),
)


def block_name(page: Page) -> str:
    """Return the name of a page's title block."""
    return f"TITLE-{page.name}"


def _width(page: Page) -> float:
    return page.width - 2 * page.margin


def _lefts(page: Page) -> list[float]:
    """Return where each field starts; one without a share stands under the one before it."""
    lefts: list[float] = []
    left = 0.0
    for field in FIELDS:
        lefts.append(left if field.share else lefts[-1])
        left += field.share * _width(page)
    return lefts


def define_title_block(document: Document, page: Page, unit: float) -> None:
    """Define the block of one size of page: rules, labels, attributes."""
    block = document.blocks.new(block_name(page))
    lefts = _lefts(page)
    block.add_line((0, STRIP * unit), (_width(page) * unit, STRIP * unit), dxfattribs={"layer": Ink.TITLE})
    for left in sorted(set(lefts))[1:]:
        block.add_line((left * unit, 0), (left * unit, STRIP * unit), dxfattribs={"layer": Ink.TITLE})
    for field, left in zip(FIELDS, lefts, strict=True):
        label = block.add_text(field.label, height=LABEL_HEIGHT * unit, dxfattribs={"layer": Ink.TITLE, "style": STYLE})
        label.set_placement(((left + 0.08) * unit, (STRIP - 0.18) * unit))
        block.add_attdef(
            field.tag,
            dxfattribs={
                "prompt": field.label,
                "height": field.height * unit,
                "insert": ((left + 0.08) * unit, field.level * unit),
                "layer": Ink.TITLE,
                "style": BOLD_STYLE,
            },
        )


def values_of(drawing: Drawing, sheet: Sheet) -> dict[str, str]:
    """Return what the title block of a sheet says, by tag."""
    return {
        "JOB": drawing.title.job,
        "OPENING": drawing.title.opening,
        "ROOM": drawing.title.room,
        "STATE": drawing.title.state,
        "CAUTION": drawing.title.caution,
        "SCALE": "as noted",
        "UNITS": "inches" if drawing.units is Units.INCH else "mm",
        "SHEET": f"{sheet.number} of {sheet.count}",
        **_issue_values(drawing.title.issue),
    }


def _issue_values(issue: IssueStamp) -> dict[str, str]:
    return {
        "ISSUE": str(issue.number) if issue.number else "none",
        "REPLACES": "" if issue.replaces is None else f"replaces issue {issue.replaces}",
        "CODE": issue.code,
        "DATE": issue.day,
        "MEASURED": f"measured {issue.measured}" if issue.measured else "planned",
    }


def insert_title_block(layout: Paperspace, drawing: Drawing, sheet: Sheet, unit: float) -> None:
    """Put the title block onto a layout with its values; a value too wide for its field is set smaller."""
    page, lefts = sheet.page, _lefts(sheet.page)
    corner = (page.margin * unit, page.margin * unit)
    insert = layout.add_blockref(block_name(page), corner, dxfattribs={"layer": Ink.TITLE})
    values = values_of(drawing, sheet)
    for number, field in enumerate(FIELDS):
        share = field.share or FIELDS[number - 1].share
        height = fitting_height(values[field.tag], field, share * _width(page))
        at = ((page.margin + lefts[number] + 0.08) * unit, (page.margin + field.level) * unit)
        attribute = insert.add_attrib(
            field.tag, values[field.tag], dxfattribs={"layer": Ink.TITLE, "style": BOLD_STYLE, "height": height * unit}
        )
        attribute.set_placement(at, align=TextEntityAlignment.LEFT)


def fitting_height(text: str, field: TitleField, width: float) -> float:
    """Return the height at which a text fits its field, at most the field's own."""
    wide = text_width(text, height=1.0, bold=True) or 1.0
    return min(field.height, (width - 0.14) / wide)


def title_rules(page: Page) -> list[Segment]:
    """Return the lines of the title block on a page [in on paper]."""
    near, top = page.margin, page.margin + STRIP
    upright = [((near + left, near), (near + left, top)) for left in sorted(set(_lefts(page)))[1:]]
    return [((near, top), (page.width - near, top)), *upright]


def title_lettering(drawing: Drawing, sheet: Sheet) -> list[Lettering]:
    """Return labels and values of the title block of a sheet in their places [in on paper]."""
    page, values, texts = sheet.page, values_of(drawing, sheet), []
    for number, (field, left) in enumerate(zip(FIELDS, _lefts(page), strict=True)):
        share = field.share or FIELDS[number - 1].share
        height = fitting_height(values[field.tag], field, share * _width(page))
        x, y = page.margin + left + 0.08, page.margin
        label = (field.label, y + STRIP - 0.18, LABEL_HEIGHT, False)
        for words, level, tall, bold in (label, (values[field.tag], y + field.level, height, True)):
            if words:
                at = (x, level + tall / 2)
                texts.append(Lettering(lines=(words,), at=at, height=tall, align=Align.LEFT, bold=bold, ink=Ink.TITLE))
    return texts
