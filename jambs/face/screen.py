"""What a screen shows and takes in, as plain data: the open job, its house, openings, fields, papers and readings.

The page is made of this and of the face beside it, and of nothing behind them. Points and depths are inches, texts are
as printed; what a screen sends back is what somebody typed, or where the hand is.
"""

from __future__ import annotations

from jambs.job.editing.file_text import EditRefused
from jambs.screen.carrying import carried_sentence
from jambs.screen.desk import CannotStand, Desk
from jambs.screen.draft_data import draft_record, take_up
from jambs.screen.form_keys import key_tables
from jambs.screen.house_data import house_data
from jambs.screen.in_hand import InHand, heat_record, in_hand, moved_record, opening_record_of, put
from jambs.screen.job_edits import asked_edits
from jambs.screen.job_form import form_record, key_pictures
from jambs.screen.measuring import Measuring
from jambs.screen.measuring_aside import MeasuringAside
from jambs.screen.paper_marks import OnPaper, opening_on_paper
from jambs.screen.papers_data import SHOWN, paper_file, papers_record
from jambs.screen.places_told import is_moved, is_told
from jambs.screen.saving import ChangedMeanwhile
from jambs.screen.sent_reading import Changed, NotTaken, ReadOtherwise, SentReading
from jambs.screen.shapes import part_records
from jambs.screen.telephone_data import list_data, measured_opening_data
from jambs.screen.unmade_data import unmade_record

__all__ = [
    "SHOWN",
    "CannotStand",
    "Changed",
    "ChangedMeanwhile",
    "Desk",
    "EditRefused",
    "InHand",
    "Measuring",
    "MeasuringAside",
    "NotTaken",
    "OnPaper",
    "ReadOtherwise",
    "SentReading",
    "asked_edits",
    "carried_sentence",
    "draft_record",
    "form_record",
    "heat_record",
    "house_data",
    "in_hand",
    "is_moved",
    "is_told",
    "key_pictures",
    "key_tables",
    "list_data",
    "measured_opening_data",
    "moved_record",
    "opening_on_paper",
    "opening_record_of",
    "paper_file",
    "papers_record",
    "part_records",
    "put",
    "take_up",
    "unmade_record",
]
