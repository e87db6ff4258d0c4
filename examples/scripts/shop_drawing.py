"""The shop drawing of one opening as DXF and its first page as SVG, in the current folder."""

import sys
from pathlib import Path

import jambs
from jambs.drawings import page_svgs, write_dxf

job = jambs.read_job(sys.argv[1])
kit = jambs.make_kits(job)[0]
drawing = jambs.draw(kit, job)
write_dxf(drawing, Path(f"{kit.mark}.dxf"))
pages = list(page_svgs(drawing))
print(f"{kit.mark}.dxf is written;", len(drawing.sheets), "sheets,", len(pages), "pictures of them")
