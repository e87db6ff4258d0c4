"""What was issued: each build's sheets and files kept for good, what changed between two, how to go back."""
