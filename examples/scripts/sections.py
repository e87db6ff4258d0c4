"""The wall beside a window as material regions: the layers that a section through the jamb cuts."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
kit = jambs.make_kits(job)[0]
for section in jambs.cut_sections(kit):
    print(section.cut.value, len(section.regions), "regions;", job.units.text(section.depths["trim plane"]), "deep")
