"""One part: its kind, its blank, its cuts, its seat, and how it is sawn."""
