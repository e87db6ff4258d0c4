"""What every drawing is made of: what a view asks for, what is placed of it, boxes, letters, sizes on paper."""
