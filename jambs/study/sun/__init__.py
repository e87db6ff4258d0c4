"""Where the sun stands, and what a deep reveal leaves of it."""
