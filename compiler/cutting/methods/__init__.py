"""How one shape is cut: recognised, given a rotary rule or a template, with the reason."""
