"""What keeps parts from being made, and what the reader must know of them."""
