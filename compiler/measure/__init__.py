"""Exact lengths, angles and the rounding rules of the trade. Lengths are inches, angles degrees."""
