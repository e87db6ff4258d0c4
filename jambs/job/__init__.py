"""The job file, the schedule of openings, and the catalog: read, check, complain."""

from jambs.job.models.openings import Job
from jambs.job.reading.faults import Fault, JobFaults
from jambs.job.reading.read import read_job

__all__ = ["Fault", "Job", "JobFaults", "read_job"]
