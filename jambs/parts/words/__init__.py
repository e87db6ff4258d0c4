"""A part told in words: its ends, edges, cuts and saw settings."""
