"""Measure sheets for the site, and the table to fill in, which stands beside the job file."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
sheets, table, questions = jambs.measure(job, "papers")
print(", ".join(sheet.name for sheet in sheets))
print("fill in", table.file.name, "· is new:", table.is_new, "· asked:", len(questions))
