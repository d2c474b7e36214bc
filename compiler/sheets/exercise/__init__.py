"""How a block is drafted by hand."""
