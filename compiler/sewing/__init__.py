"""Drafts to an order of sewing, its proof, pressing, foundations and difficulty."""
