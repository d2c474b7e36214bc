"""Stands here so that pytest puts this folder on the path: tests write `from support.x import y`."""
