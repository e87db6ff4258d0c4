"""The parts of one opening: mark, what it is, thickness × width × length."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
kit = jambs.make_kits(job)[0]
for part in kit.parts:
    sizes = " × ".join(job.units.text(size) for size in (part.thickness, part.width, part.length))
    print(f"{part.mark}: {part.name}, {part.position}: {sizes}")
