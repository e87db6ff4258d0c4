"""Heat through a cut, bracketed from below and above."""
