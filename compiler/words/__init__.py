"""Every word that a person reads; how numbers, lengths and lists are put into them."""
