"""The search itself, on folded whole numbers: patterns, prices, bounds."""
