"""What sheets and booklets say: a module a chapter."""
