"""Papers: cut sheets, schedules, order sheet, summary (PDF), parts as CSV and JSON. The only room that imports typst."""
