"""Measured drafts: readings off a washed block to the measures it was drafted by.

readings.py   a block's tree to its readings, each with where it starts and which way it goes
grids.py      readings to the grids they most likely lie on
shrinkage.py  readings and drafted lengths to one change in washing for each direction
fractions.py  a length to the simplest drafting fraction that fits it
restore.py    the passes above in order: a washed block's tree to the tree of the block as drafted
written.py    the drafted block as text to keep, with its readings
"""
