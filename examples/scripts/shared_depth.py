"""The identity of the trade: moving a window only moves depth from one side of the wall to the other."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
for kit in jambs.make_kits(job):
    place, window = kit.placement, kit.placement.opening.window
    both = place.interior_depth + place.exterior_depth
    wall = place.planes.trim_plane - window.jamb_depth - window.frame_projection
    print(kit.mark, job.units.text(both), "=", job.units.text(wall))
