"""What the kernel's STEP text lacks: a fixed head, fixed numbers and folds, and colors in one order.

The kernel stamps the time, counts occurrences on from file to file, and writes colors in the order of its memory.
Entities of color as in ISO 10303-214: styled item, surface style, fill area, color.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import count

from jambs.issue_stamp import IssueStamp
from jambs.solids.colors import Color

STAMP = "2000-01-01T00:00:00"
"""The time in the head of a file that is not issued: a file depends on what is in it and on nothing else."""
_FILE_DESCRIPTION = re.compile(r"FILE_DESCRIPTION\(.*?\);", re.DOTALL)
_FILE_NAME = re.compile(r"FILE_NAME\(.*?\);", re.DOTALL)
_OCCURRENCE = re.compile(r"(NEXT_ASSEMBLY_USAGE_OCCURRENCE\(')\d+('(?:'[^']*'|[^';])*;)")
_STRING_OR_FOLD = re.compile(r"('[^']*')|\n *")
_SOLID = re.compile(r"ADVANCED_BREP_SHAPE_REPRESENTATION\('[^']*',\s*\(#\d+,\s*#(\d+)\),\s*#(\d+)\);")
_END = "ENDSEC;\nEND-ISO-10303-21;"


def reproducible(text: str, *, name: str, colors: Sequence[Color], issue: IssueStamp | None = None) -> str:
    """Give a STEP text a fixed head with its issue, fixed numbers, and each of its solids a color, in file order.

    Raises:
        ValueError: there are not as many colors as solids.
    """
    time = f"{issue.day}T00:00:00" if issue and issue.day else STAMP
    head = f"FILE_NAME('{_plain(name)}','{time}',(''),(''),'','','');"
    text = _FILE_NAME.sub(lambda found: head, text, count=1)
    if issue:
        described = f"FILE_DESCRIPTION(('{_plain(issue.plain)}'),'2;1');"
        text = _FILE_DESCRIPTION.sub(lambda found: described, text, count=1)
    numbers = count(1)
    text = _OCCURRENCE.sub(lambda found: _unfolded(f"{found[1]}{next(numbers)}{found[2]}"), text)
    body, end, _ = text.rpartition(_END)
    return body + "".join(_styles(body, colors)) + end + "\n"


def _unfolded(entity: str) -> str:
    """Set an entity on one line: where the kernel folded it hangs on the digits of the number it counted to."""
    return _STRING_OR_FOLD.sub(lambda found: (found[1] or "").replace("\n", ""), entity)


def _plain(name: str) -> str:
    """A STEP string holds ASCII, an apostrophe is doubled."""
    return name.encode("ascii", "replace").decode().replace("'", "''")


def _styles(body: str, colors: Sequence[Color]) -> Iterator[str]:
    """Write one styled item for each solid; parts of one color share its style."""
    solids = _SOLID.findall(body)
    if len(solids) != len(colors):
        raise ValueError(f"the STEP text has {len(solids)} solids and {len(colors)} colors were given")
    free = count(int(body[body.rindex("\n#") + 2 :].split(" ", 1)[0]) + 1)
    styles: dict[Color, int] = {}
    for (solid, context), color in zip(solids, colors, strict=True):
        if color not in styles:
            styles[color] = next(free)
            yield from _style(styles[color], color, free)
        item = next(free)
        yield f"#{item} = STYLED_ITEM('color',(#{styles[color]}),#{solid});\n"
        holder = "MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION"
        yield f"#{next(free)} = {holder}('',(#{item}),#{context});\n"


def _style(number: int, color: Color, free: Iterator[int]) -> Iterator[str]:
    usage, side, fill, area, tone, rgb = (next(free) for _ in range(6))
    red, green, blue = color
    yield f"#{number} = PRESENTATION_STYLE_ASSIGNMENT((#{usage}));\n"
    yield f"#{usage} = SURFACE_STYLE_USAGE(.BOTH.,#{side});\n"
    yield f"#{side} = SURFACE_SIDE_STYLE('',(#{fill}));\n"
    yield f"#{fill} = SURFACE_STYLE_FILL_AREA(#{area});\n"
    yield f"#{area} = FILL_AREA_STYLE('',(#{tone}));\n"
    yield f"#{tone} = FILL_AREA_STYLE_COLOUR('',#{rgb});\n"
    yield f"#{rgb} = COLOUR_RGB('',{red:.6f},{green:.6f},{blue:.6f});\n"
