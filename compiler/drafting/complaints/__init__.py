"""The words of every complaint that drafting makes, apart from the geometry that finds it."""
