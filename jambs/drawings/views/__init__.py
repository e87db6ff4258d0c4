"""What each view of an opening shows: shapes, chains of dimensions, call-outs; nothing of DXF, nothing of paper."""
