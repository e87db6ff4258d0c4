"""The job file, the schedule of openings, and the catalogue: read, check, complain."""

from jambs.job.faults import Fault, JobFaults
from jambs.job.openings import Job
from jambs.job.read import read_job

__all__ = ["Fault", "Job", "JobFaults", "read_job"]
