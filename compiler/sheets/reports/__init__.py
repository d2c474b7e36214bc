"""What is told in words and numbers instead of pages, mostly for a terminal."""
