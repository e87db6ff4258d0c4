"""What a screen shows and takes in, as plain data; who shows it, and over what wire, is no matter here.

Everything comes from the functions that print: shapes are those of the drawings, texts those of the sheets. Who reads
the room reads it in this order:

``desk.py``          the job that is open: its file, the draft, what was made of it; ``saving.py`` writes it back
``house_data.py``    the house: elevations, list, states; ``draft_data.py`` what is not saved
``in_hand.py``       an opening that is taken hold of; ``placing.py`` the places near the hand
``opening_data.py``  its figures, limits, findings, parts
``shapes.py``        sections, chains, sash and parts as polygons; ``heat.py`` and ``heat_curves.py`` the study aside
``position_edits.py``  a place as a rule of the job file
``job_form.py``      the job as fields; ``job_edits.py`` what a field asks for, as edits
``spoken_keys.py``   keys in sentences, called as their fields are
``papers_data.py``   the papers by key, which hold no longer and why
``measuring.py``     readings that are sent in, written into the job's table of measures, each once;
                     ``named_table.py`` the line of the job file that the first of them writes
"""
