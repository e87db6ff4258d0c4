"""Papers: cut sheets, schedules, order sheet, summary as PDF; parts as CSV and JSON. Only here: typst."""
