"""What a caller is told of what was asked for, and of what is being done: sentences, no diagnostics."""
