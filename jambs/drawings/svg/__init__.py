"""The sheets of a drawing as pages for the press."""
