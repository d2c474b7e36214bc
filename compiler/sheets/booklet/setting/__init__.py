"""A booklet set as PDF pages and as HTML."""
