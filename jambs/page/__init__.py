"""The page: the whole job in a browser, and the telephone at the opening.

Everything it shows comes from the functions that print; the browser draws polygons and texts that it is sent, and
computes nothing of the trade. Who reads the room reads it in this order:

``open_command.py``   the verb ``jambs open``; imports nothing heavy
``server.py``         listens, opens the browser, stops
``application.py``    all routes together; **a new view adds its module to ``VIEWS`` there**
``guard.py``          who may come in, what a request may be, what a browser may do; stands before every route
``keys.py``           tokens, cookies and the two roles, desk and telephone
``open_job.py``       the open job of a request; all that is shown of it comes from ``jambs.face.screen``
``answers.py``        templates and JSON
``telephone_door.py`` lets telephones of the network in and out again; ``listening.py`` where the page listens,
                      ``connections.py`` to how many at once
``photos.py``         photos of openings; ``codes.py`` the square code on a paper, read from a photo
``views/``            one file for each view: its routes and the data it shows
``templates/``        pages (jinja2, autoescaped)
``static/``           their ES modules, styles and marks, served by name from a table
"""
