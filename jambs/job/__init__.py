"""The job file, the schedule of openings, and the catalog: read, check, complain."""

from jambs.job.models.openings import Job
from jambs.job.read import read_job
from jambs.job.reading.faults import Fault, JobFaults

__all__ = ["Fault", "Job", "JobFaults", "read_job"]
