"""Pages. Layout decides positions; drawing turns marks into ink."""
