"""Faults of the record; their findings say what is wrong."""

from __future__ import annotations

from jambs.findings import FindingsError


class RecordError(FindingsError):
    """The record cannot be read or written, or the folder is another job's; the findings say what to do."""


class Unreadable(FindingsError):
    """One file of the record is no good; the findings say in a few words why, like *cut short*."""
