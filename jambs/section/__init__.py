"""The same parts and layers as named material regions of a cut."""
