"""What can be sewn on paper foundations, in which sections and order."""
