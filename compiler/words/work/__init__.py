"""Sentences about the work itself: cuts, cloth, steps, pressing. Each is made of a record and of how the
reader is spoken to."""
