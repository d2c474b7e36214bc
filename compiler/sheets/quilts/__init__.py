"""A quilt's pages: picture, supplies, counts, cutting chart, cutting pictures, templates."""
