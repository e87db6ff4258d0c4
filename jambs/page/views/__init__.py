"""The views: one file for each, its routes in ``ROUTES`` and the data it shows."""
