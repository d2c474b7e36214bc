"""The only folder that prints and exits. It knows click, and of the compiler the door and the words."""
