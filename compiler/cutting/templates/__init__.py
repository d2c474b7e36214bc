"""Pieces to templates: allowance, trimmed points, dots, marks, grain, counts."""
