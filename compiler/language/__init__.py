"""Text to tree. Parsing never raises; what is wrong comes back as diagnostics."""
