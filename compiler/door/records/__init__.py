"""What is known of blocks and quilts, as typed records: `explain --format json` is made from these.

Lengths are inches, x right, y down, from the top left of the block or the quilt. They are exact Fractions
where the drafting is exact, floats elsewhere. Outlines run clockwise as seen, without a closing repeat; arcs
are flattened in them to 0.001in, and given exactly beside them.
"""
