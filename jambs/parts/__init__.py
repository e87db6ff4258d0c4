"""A placed window becomes parts: outline, sizes, cuts."""
