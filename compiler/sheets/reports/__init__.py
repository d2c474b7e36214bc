"""What is told in words and numbers instead of pages: text, JSON, CSV."""
