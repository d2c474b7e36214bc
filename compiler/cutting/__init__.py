"""Pieces to templates, rules of the ruler for them, and a plan of the cloth for all that a quilt needs."""
