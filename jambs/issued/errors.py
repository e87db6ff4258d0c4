"""Faults of the record, each a whole sentence."""

from __future__ import annotations


class RecordError(Exception):
    """The record cannot be read or written, or the folder is another job's; the message says what to do."""


class Unreadable(Exception):
    """One file of the record is no good; the message says in a few words why, like *cut short*."""
