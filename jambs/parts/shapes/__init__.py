"""The path of an opening, what its boards leave clear, and how they are cut along it."""
