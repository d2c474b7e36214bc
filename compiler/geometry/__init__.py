"""Places, edges and motions in the plane: one of each for the whole program."""
