"""The drafting exercise: on a ruling, by ruler and compass, or along light lines."""
