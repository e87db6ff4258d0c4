"""The widest interior extension jamb of a house: the board that everything else can be ripped from."""

import sys

import jambs
from jambs.parts.board.kinds import PartKind

job = jambs.read_job(sys.argv[1])
boards = [part for kit in jambs.make_kits(job) for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB]
widest = max(boards, key=lambda part: part.width)
print(widest.mark, job.units.text(widest.width))
