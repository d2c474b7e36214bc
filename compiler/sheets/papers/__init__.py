"""Papers that blocks are sewn on or over, at true size."""
