"""What other programs, and the command line, ask of the compiler: see `work`, and grammar/API.md."""
