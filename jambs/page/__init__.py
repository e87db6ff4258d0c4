"""The page: the whole job in a browser, and the telephone at the opening.

Everything it shows comes from the functions that print; the browser draws polygons and texts that it is sent, and
computes nothing of the trade. Who reads the room reads it in this order:

``open_command.py``   the verb ``jambs open``; imports nothing heavy
``server.py``         listens, opens the browser, stops
``application.py``    all routes together; **a new view adds its module to ``VIEWS`` there**
``guard.py``          who may come in, what a request may be, what a browser may do; stands before every route
``keys.py``           tokens, cookies and the two roles, desk and telephone
``desk.py``           the job that is open: its file, the draft, what was made of it
``saving.py``         files of the user's written back, one writer at a time, only over what was seen
``answers.py``        templates and JSON
``telephone_door.py`` lets telephones of the network in and out again; ``listening.py`` where the page listens
``measuring.py``      readings that telephones send, written into the job's table of measures, each once
``photos.py``         photos of openings; ``codes.py`` the square code on a paper, read from a photo
``views/``            one file for each view: its routes and the data it shows
``templates/``        pages (jinja2, autoescaped)
``static/``           their ES modules, styles and marks, served by name from a table
"""
