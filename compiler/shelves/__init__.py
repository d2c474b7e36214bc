"""Folders of blocks: what they hold, which are found first, what is pinned."""
