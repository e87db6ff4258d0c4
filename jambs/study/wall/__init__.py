"""What a wall does by itself: resistance, damp, drying, a year of vapor."""
