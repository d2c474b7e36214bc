"""Pieces to templates: allowance, trimmed points, dots, match marks, grain."""
