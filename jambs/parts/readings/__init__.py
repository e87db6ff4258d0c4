"""What was read at the opening: where it holds, what it was measured against, how parts follow it."""
