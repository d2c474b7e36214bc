"""The foundations of a booklet: their chapter, their papers, and how they are sewn."""
