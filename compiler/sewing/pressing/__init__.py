"""Which way the allowances of each seam are pressed."""
