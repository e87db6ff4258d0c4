"""Cut files of every part of wood, and full-scale templates of those that have a shape."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
for kit in jambs.make_kits(job):
    files = jambs.cut_files(kit, job, "router", all_parts=True)
    sheet = jambs.templates(kit, job, f"router/{kit.mark} templates.pdf")
    print(kit.mark, len(files), "cut files, the first:", files[0].name, "· templates:", sheet is not None)
