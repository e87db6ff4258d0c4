"""Every finding of a house, the grave ones first."""

import sys

import jambs
from jambs.findings import Severity

job = jambs.read_job(sys.argv[1])
kits = jambs.make_kits(job)
for severity in reversed(Severity):
    for kit in kits:
        for finding in kit.findings:
            if finding.severity is severity:
                print(f"{severity.value}: {kit.mark}: {finding.sentence(job.units)}")
