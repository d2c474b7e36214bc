"""A picture catalogue of blocks: as one HTML page that can be searched, and as sheets to print."""
