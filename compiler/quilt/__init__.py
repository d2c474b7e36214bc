"""Whole quilts: sets, sashing, borders, what is to be cut, and how the top goes together."""
