"""Fasteners through the outboard layers: how long, how far apart, how many; what a published table says of them."""
