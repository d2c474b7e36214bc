"""The commands, a module each, loaded when asked for."""
