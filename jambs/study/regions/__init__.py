"""What a cut is made of: rectangles of material and of air, their conductivities, the lines of the grid over them."""
