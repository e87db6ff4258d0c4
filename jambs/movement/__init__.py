"""Wood that moves: the moisture it comes to, how much wider and narrower boards get, and what their joints take."""
