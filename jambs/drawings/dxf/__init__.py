"""Placed views as DXF entities, and pictures made from the same entities."""
