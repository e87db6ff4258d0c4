"""Where each window stands in the wall, and why."""
