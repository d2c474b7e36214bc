"""What blocks are found by, and which of them are meant."""
