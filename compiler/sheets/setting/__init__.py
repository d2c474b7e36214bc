"""Setters: what chapters say, set as PDF pages and as HTML."""
