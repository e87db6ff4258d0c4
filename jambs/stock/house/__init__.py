"""The house side of stock: parts and boards become lots to plan, and plans become what a reader must know."""
