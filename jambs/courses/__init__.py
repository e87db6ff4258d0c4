"""Cladding courses whose lines meet heads and sills, and the story pole they are marked from."""
