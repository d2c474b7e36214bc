"""The words of every diagnostic: a function each."""
