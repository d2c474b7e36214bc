"""Whole quilts: settings, borders, counts."""
