"""The depths of every window: what inside and outside extension jambs have to make up."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
for kit in jambs.make_kits(job):
    where = kit.placement
    print(kit.mark, job.units.text(where.interior_depth), job.units.text(where.exterior_depth))
