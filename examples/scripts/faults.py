"""What is wrong with a job file: all of it at once, each with its line."""

import sys
import tempfile
from pathlib import Path

import jambs

text = (Path(sys.argv[1]) / "job.yaml").read_text(encoding="utf-8")
with tempfile.TemporaryDirectory() as folder:
    file = Path(folder) / "job.yaml"
    file.write_text(text.replace("jamb_depth", "jam_depth"), encoding="utf-8")
    try:
        jambs.read_job(file)
    except jambs.JobFaults as error:
        print(len(error.faults), "faults; the first:", str(error.faults[0]).partition("job.yaml")[2])
