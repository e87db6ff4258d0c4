"""Extension jambs: square, flared, stacked, along shapes, and the box they make."""
