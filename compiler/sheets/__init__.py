"""What is printed: documents of chapters, which setters lay out as pages, and drawing turns into ink."""
