"""Every code explained, a module for each folder that makes diagnostics."""
