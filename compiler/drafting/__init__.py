"""Tree to planar model: points, seams, pieces and their shapes."""
