"""Openings of one wall in one frame: do they leave each other, corners, floor, ceiling and eave their room?"""
