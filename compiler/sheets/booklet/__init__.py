"""Pages for a class: foundations, paper pieces, steps, and the booklet that binds them."""
