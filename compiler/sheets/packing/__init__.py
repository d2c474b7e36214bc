"""Where things lie on pages: packed without overlap, or tiled over several."""
