"""Cut and sewn again from what would be printed."""
