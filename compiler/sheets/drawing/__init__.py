"""Marks to PDF, SVG and PNG."""
