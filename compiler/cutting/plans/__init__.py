"""How a whole quilt is cut from its cloth: strips, sub-cuts, scraps, and what to buy."""
