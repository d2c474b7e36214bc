"""What stands where on the pages of a block and its templates, and the furniture of every page.
No module here knows cairo or SVG."""
