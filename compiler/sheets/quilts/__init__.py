"""What several chapters, reports and tables say of a quilt: rows of cuts and counts, steps, tools, thread."""
