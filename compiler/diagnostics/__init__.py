"""Spans, messages and carets. Passes return diagnostics; only the command line prints them."""
