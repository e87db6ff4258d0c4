"""What was issued of a house so far, and why."""

import sys

import jambs

job = jambs.read_job(sys.argv[1])
jambs.build(job, "papers", only=[job.openings[0].mark], with_solids=False)
for number, issue in jambs.issues(job, "papers").issues.items():
    print(f"issue {number}: {', '.join(issue.changed)}")
