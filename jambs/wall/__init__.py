"""A layer stack becomes planes."""
