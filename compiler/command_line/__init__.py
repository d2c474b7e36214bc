"""The only folder that prints, exits, reads or writes files."""
