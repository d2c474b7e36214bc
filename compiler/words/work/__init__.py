"""The words of the work: what is cut, sewn and pressed, of what; functions of the passes' records."""
