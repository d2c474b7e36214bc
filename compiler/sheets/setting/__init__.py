"""Setters: what chapters say, set as PDF pages, as HTML and as a terminal's text."""
