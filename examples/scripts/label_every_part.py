"""Labels of all parts in the order of cutting, on a sheet of which six labels are gone."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
written = jambs.labels(job, "papers", by_cutting=True, first=7)
print(written.count, "labels are in", written.files[0].name)
