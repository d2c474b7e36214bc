"""Piecewright: a small language for patchwork blocks, compiled to true-size templates."""

__version__ = "0.1.0"
