"""Changing the user's own files: one value at a time, everything else kept to the byte.

A job file, a schedule and a table of measures belong to their user: comments, order, spelling of lengths, line ends.
An edit is data (``edits.py``); it is carried out on the text (``edit_yaml.py``, ``csv_cells.py``, ``xlsx_cells.py``),
read again, and refused unless exactly what was asked for is another. What was changed and not saved is data too
(``history.py``). Nothing here writes to a disk.
"""
