"""Habits of good pattern files, looked after: named checks, each to be silenced alone, some with a mend."""
